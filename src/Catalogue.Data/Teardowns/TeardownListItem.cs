using Catalogue.Domain.Figures;
using Catalogue.Domain.Products;
using Catalogue.Domain.Teardowns;

namespace Catalogue.Data.Teardowns;

/// <summary>A teardown in a list.</summary>
public sealed record TeardownListItem
{
    /// <summary>Its id.</summary>
    public required TeardownId Id { get; init; }

    /// <summary>Its address.</summary>
    public required string Slug { get; init; }

    /// <summary>Its running number.</summary>
    public required int Number { get; init; }

    /// <summary>The title.</summary>
    public required string Title { get; init; }

    /// <summary>The brand.</summary>
    public required string Brand { get; init; }

    /// <summary>The product's name.</summary>
    public required string ProductName { get; init; }

    /// <summary>The model designation.</summary>
    public required string Model { get; init; }

    /// <summary>The category.</summary>
    public required ProductCategory Category { get; init; }

    /// <summary>The lead sentence, or null.</summary>
    public required string? Standfirst { get; init; }

    /// <summary>The revision's number.</summary>
    public required int RevisionNumber { get; init; }

    /// <summary>Where the revision stands.</summary>
    public required RevisionState State { get; init; }

    /// <summary>When it was published, or null.</summary>
    public required DateTimeOffset? PublishedAt { get; init; }

    /// <summary>The SHA-256 of the lead picture and its width, or null without one.</summary>
    public LeadPicture? Lead { get; init; }

    /// <summary>How many figures stand at each verdict; those without any are left out.</summary>
    public IReadOnlyDictionary<Verdict, int> Tally { get; init; } = new Dictionary<Verdict, int>();

    /// <summary>A lead picture.</summary>
    /// <param name="Sha256">The original's SHA-256.</param>
    /// <param name="WidthPixels">Its width.</param>
    /// <param name="HeightPixels">Its height.</param>
    /// <param name="AltText">Words for readers who do not see it, or null.</param>
    public sealed record LeadPicture(string Sha256, int WidthPixels, int HeightPixels, string? AltText);
}
