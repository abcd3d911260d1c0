using Catalogue.Domain.Components;
using Catalogue.Domain.Families;
using Catalogue.Domain.Products;
using Catalogue.Domain.Publishing;
using Catalogue.Domain.Quantities;
using Catalogue.Domain.Teardowns;

namespace Catalogue.Data.Archives;

/// <summary>
/// The lines that have a form of their own. They name families by match key and makers by name, which mean the same in every catalogue; all other lines are the
/// records of a revision as they are.
/// </summary>
internal static class ArchiveLine
{
    /// <summary>A maker.</summary>
    public sealed record Maker
    {
        public required string Name { get; init; }

        public required string Slug { get; init; }

        /// <summary>Other names, in order.</summary>
        public required string[] Aliases { get; init; }
    }

    /// <summary>A part family with all that is known of it. Lists are in order of their content.</summary>
    public sealed record Family
    {
        public required string MatchKey { get; init; }

        public required string Name { get; init; }

        public required string Slug { get; init; }

        public FunctionClass? FunctionClass { get; init; }

        public string? DatasheetUrl { get; init; }

        public required string[] Packages { get; init; }

        public string? Note { get; init; }

        /// <summary>The match key of the family that it was merged into; that one is merged into none.</summary>
        public string? MergedInto { get; init; }

        /// <summary>Names of makers.</summary>
        public required string[] Makers { get; init; }

        public required IReadOnlyList<OtherName> Aliases { get; init; }

        public required IReadOnlyList<Code> TopMarks { get; init; }

        public required IReadOnlyList<TypicalRating> Ratings { get; init; }

        public required IReadOnlyList<Relation> Relations { get; init; }
    }

    /// <summary>Another number of a family.</summary>
    public sealed record OtherName(string Name, string MatchKey, FamilyNameKind Kind);

    /// <summary>A code printed in place of a family's number.</summary>
    public sealed record Code(string Text, string? Maker, string? Package, string? Source);

    /// <summary>A typical rating of a family.</summary>
    public sealed record TypicalRating(RatingKind Kind, double Low, double Nominal, double High, string? Condition, Evidence Evidence, string? Source);

    /// <summary>How a family stands to another one; it is written with the family whose match key comes first.</summary>
    public sealed record Relation(string Other, FamilyRelationKind Kind, string? Note, DateTimeOffset At, string? Who);

    /// <summary>A picture file.</summary>
    public sealed record PhotoFile
    {
        public required string Sha256 { get; init; }

        /// <summary><c>jpeg</c>, <c>png</c> or <c>webp</c>.</summary>
        public required string Format { get; init; }

        public required long Bytes { get; init; }

        public required int WidthPixels { get; init; }

        public required int HeightPixels { get; init; }

        public required DateTimeOffset ReceivedAt { get; init; }

        /// <summary>The entry that holds it, or null when the lab had lost it.</summary>
        public string? Entry { get; init; }
    }

    /// <summary>A teardown; the first line of its entry.</summary>
    public sealed record Teardown
    {
        public required TeardownId Id { get; init; }

        public required string Slug { get; init; }

        public required int Number { get; init; }

        public string? SerialNumber { get; init; }

        public required DateTimeOffset CreatedAt { get; init; }

        public required ProductName Product { get; init; }
    }

    /// <summary>What a teardown is a sample of.</summary>
    public sealed record ProductName(string Brand, string Name, string Model, ProductCategory Category);

    /// <summary>The family that a published component counts to since a split.</summary>
    public sealed record FamilyMove
    {
        public required ComponentId ComponentId { get; init; }
    }

    /// <summary>The act of publishing a revision.</summary>
    public sealed record Publication
    {
        public required PublicationId Id { get; init; }

        public required string Note { get; init; }

        public required DateTimeOffset PublishedAt { get; init; }

        public string? PublishedBy { get; init; }
    }
}
