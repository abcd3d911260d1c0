using System.ComponentModel;
using Catalogue.Domain.Products;
using Catalogue.Domain.Teardowns;

namespace Catalogue.Data.Teardowns;

/// <summary>What a draft says of the product and the sample as a whole.</summary>
public sealed class TeardownForm
{
    /// <summary>The title of the record, 1 to 200 characters.</summary>
    [Description("The title of the record, 1 to 200 characters.")]
    public string? Title { get; set; }

    /// <summary>The lead sentence of the page, at most 400 characters.</summary>
    [Description("The lead sentence of the page, at most 400 characters.")]
    public string? Standfirst { get; set; }

    /// <summary>The product's name as this revision prints it.</summary>
    [Description("The product's name as this revision prints it.")]
    public string? ProductName { get; set; }

    /// <summary>The model designation as this revision prints it.</summary>
    [Description("The model designation as this revision prints it.")]
    public string? Model { get; set; }

    /// <summary>The category as this revision prints it.</summary>
    [Description("The category as this revision prints it.")]
    public ProductCategory Category { get; set; }

    /// <summary>The year the product came out.</summary>
    [Description("The year the product came out.")]
    public int? Year { get; set; }

    /// <summary>Measured mass in kilograms.</summary>
    [Description("Measured mass in kilograms.")]
    public double? MassKg { get; set; }

    /// <summary>When the sample was taken apart.</summary>
    [Description("When the sample was taken apart.")]
    public DateOnly? TakenApartOn { get; set; }

    /// <summary>Who took it apart, as printed.</summary>
    [Description("Who took it apart, as printed.")]
    public string? TakenApartBy { get; set; }

    /// <summary>How the sample was obtained; disclosed on the page.</summary>
    [Description("How the sample was obtained; disclosed on the page.")]
    public SampleSource Obtained { get; set; }

    /// <summary>Words beside it.</summary>
    [Description("Words beside it.")]
    public string? ObtainedNote { get; set; }

    /// <summary>The condition of the sample.</summary>
    [Description("The condition of the sample.")]
    public string? Condition { get; set; }

    /// <summary>Firmware as shown by the unit.</summary>
    [Description("Firmware as shown by the unit.")]
    public string? Firmware { get; set; }

    /// <summary>The chemistry of its cells.</summary>
    [Description("The chemistry of its cells.")]
    public string? CellChemistry { get; set; }

    /// <summary>How the work was done, in Markdown.</summary>
    [Description("How the work was done, in Markdown.")]
    public string? MethodMarkdown { get; set; }
}
