using System.ComponentModel;

namespace Catalogue.Data.Families;

/// <summary>What is filled in for a top mark.</summary>
public sealed class TopMarkForm
{
    /// <summary>The code as printed.</summary>
    [Description("The code as printed, at most 20 characters.")]
    public string? Code { get; set; }

    /// <summary>Whose code it is.</summary>
    [Description("Whose code it is.")]
    public string? Maker { get; set; }

    /// <summary>The package it stands on.</summary>
    [Description("The package it stands on.")]
    public string? Package { get; set; }

    /// <summary>Where it was found.</summary>
    [Description("Where it was found.")]
    public string? Source { get; set; }
}
