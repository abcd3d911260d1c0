using Catalogue.Domain.Products;

namespace Catalogue.Domain.Teardowns;

/// <summary>
/// The unit of editing and publishing. It holds the product facts as they were, so that a page published years ago still says what it
/// said.
/// </summary>
public sealed class Revision
{
    /// <summary>Longest title and standfirst.</summary>
    public const int MaxTitleLength = 200;

    /// <summary>Longest lead sentence.</summary>
    public const int MaxStandfirstLength = 400;

    /// <summary>Its id.</summary>
    public required RevisionId Id { get; init; }

    /// <summary>The teardown.</summary>
    public required TeardownId TeardownId { get; init; }

    /// <summary>1 for the first; a draft already has the number it will be published under.</summary>
    public required int Number { get; init; }

    /// <summary>Where it stands.</summary>
    public RevisionState State { get; set; }

    /// <summary>The title of the record.</summary>
    public required string Title { get; set; }

    /// <summary>The lead sentence of the page, or null.</summary>
    public string? Standfirst { get; set; }

    /// <summary>The brand as it stood.</summary>
    public required string Brand { get; set; }

    /// <summary>The product's name as it stood.</summary>
    public required string ProductName { get; set; }

    /// <summary>The model designation as it stood.</summary>
    public required string Model { get; set; }

    /// <summary>The category as it stood.</summary>
    public required ProductCategory Category { get; set; }

    /// <summary>The year the product came out, or null when not known.</summary>
    public int? Year { get; set; }

    /// <summary>Measured mass in kilograms, or null.</summary>
    public double? MassKg { get; set; }

    /// <summary>When the sample was taken apart, or null.</summary>
    public DateOnly? TakenApartOn { get; set; }

    /// <summary>Who took it apart, as printed, or null.</summary>
    public string? TakenApartBy { get; set; }

    /// <summary>How the sample was obtained.</summary>
    public SampleSource Obtained { get; set; }

    /// <summary>Words beside it, such as where it was bought, or null.</summary>
    public string? ObtainedNote { get; set; }

    /// <summary>The sample's condition, or null.</summary>
    public string? Condition { get; set; }

    /// <summary>Firmware as shown by the unit, or null.</summary>
    public string? Firmware { get; set; }

    /// <summary>The chemistry of its cells, such as <c>lithium iron phosphate (LFP)</c>, or null when there are none or it is not known.</summary>
    public string? CellChemistry { get; set; }

    /// <summary>How the work was done, in Markdown, or null.</summary>
    public string? MethodMarkdown { get; set; }

    /// <summary>Who sent it for review, or null while nobody did.</summary>
    public string? SubmittedBy { get; set; }

    /// <summary>When the draft was opened.</summary>
    public required DateTimeOffset OpenedAt { get; init; }

    /// <summary>When it was published, or null.</summary>
    public DateTimeOffset? PublishedAt { get; set; }

    /// <summary>Changes with every save of the row.</summary>
    public uint Version { get; init; }
}
