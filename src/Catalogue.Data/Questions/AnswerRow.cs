using Catalogue.Domain.Components;
using Catalogue.Domain.Figures;
using Catalogue.Domain.Products;

namespace Catalogue.Data.Questions;

/// <summary>A row of an answer: a design, or one of its components with its figure.</summary>
public sealed record AnswerRow
{
    /// <summary>The teardown's address.</summary>
    public required string Teardown { get; init; }

    /// <summary>The product, brand first.</summary>
    public required string Product { get; init; }

    /// <summary>Its category.</summary>
    public required ProductCategory Category { get; init; }

    /// <summary>When the revision was published.</summary>
    public required DateTimeOffset PublishedAt { get; init; }

    /// <summary>The rank among ranked rows, from 1; ties (equal when rounded to two decimals) share one. Null where nothing is ranked.</summary>
    public int? Rank { get; init; }

    /// <summary>True when another row shares the rank.</summary>
    public bool IsTied { get; init; }

    /// <summary>The component, or null in a row for a design.</summary>
    public ComponentId? Component { get; init; }

    /// <summary>The component in words: designators, or role, or part number.</summary>
    public string? ComponentName { get; init; }

    /// <summary>The board's letter and name, or null in a row for a design.</summary>
    public string? Board { get; init; }

    /// <summary>The component's part family by its name, or null.</summary>
    public string? Family { get; init; }

    /// <summary>How many components of the family the design has; null unless a design was asked for by family.</summary>
    public int? Components { get; init; }

    /// <summary>The lowest case of the figure, or null.</summary>
    public double? Low { get; init; }

    /// <summary>The figure, or null.</summary>
    public double? Nominal { get; init; }

    /// <summary>The highest case of the figure, or null.</summary>
    public double? High { get; init; }

    /// <summary>The verdict, or null where no figure was asked for.</summary>
    public Verdict? Verdict { get; init; }

    /// <summary>True when a stress known to exist there is left out.</summary>
    public bool? StaticOnly { get; init; }

    /// <summary>The sum behind the figure, or null.</summary>
    public Working? Working { get; init; }
}
