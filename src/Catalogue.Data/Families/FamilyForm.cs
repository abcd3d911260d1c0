using System.ComponentModel;
using Catalogue.Domain.Components;
using Catalogue.Domain.Families;

namespace Catalogue.Data.Families;

/// <summary>What is filled in for a part family.</summary>
public sealed class FamilyForm
{
    /// <summary>The base number as it is shown; it may be spelt another way, but its match key stays.</summary>
    [Description("The base number as it is shown; it may be spelt another way, but what it joins stays the same.")]
    public string Name { get; set; } = "";

    /// <summary>What kind of part it is.</summary>
    [Description("What kind of part it is.")]
    public FunctionClass? FunctionClass { get; set; }

    /// <summary>The datasheet's address, http or https.</summary>
    [Description("The datasheet's address, http or https.")]
    public string? DatasheetUrl { get; set; }

    /// <summary>The packages it comes in, such as SOT-23-6.</summary>
    [Description("The packages it comes in, such as SOT-23-6; known spellings are put as the trade's name.")]
    public IReadOnlyList<string> Packages { get; set; } = [];

    /// <summary>What a reviewer should know about it.</summary>
    [Description("What a reviewer should know about it.")]
    public string? Note { get; set; }

    /// <summary>What stands now.</summary>
    public static FamilyForm Of(PartFamily family)
    {
        ArgumentNullException.ThrowIfNull(family);
        return new FamilyForm { Name = family.Name, FunctionClass = family.FunctionClass, DatasheetUrl = family.DatasheetUrl, Packages = family.Packages, Note = family.Note };
    }
}
