using System.ComponentModel;
using Catalogue.Domain.Components;
using Catalogue.Domain.Quantities;

namespace Catalogue.Data.Components;

/// <summary>What is filled in for a rating: either text, or nominal with unit.</summary>
public sealed class RatingForm
{
    /// <summary>What the quantity speaks of.</summary>
    [Description("What the quantity speaks of.")]
    public RatingKind? Kind { get; set; }

    /// <summary>The quantity as typed, such as 35 A; instead of nominal and unit.</summary>
    [Description("The quantity as typed, such as 35 A; instead of nominal and unit.")]
    public string? Text { get; set; }

    /// <summary>The value in the unit given.</summary>
    [Description("The value in the unit given.")]
    public double? Nominal { get; set; }

    /// <summary>The lowest case; the value itself when not given.</summary>
    [Description("The lowest case; the value itself when not given.")]
    public double? Low { get; set; }

    /// <summary>The highest case; the value itself when not given.</summary>
    [Description("The highest case; the value itself when not given.")]
    public double? High { get; set; }

    /// <summary>The unit: A, V, W, F, H, ohm, degC, 1/degC or ratio, whichever the kind is measured in; may be left out with nominal.</summary>
    [Description("The unit: A, V, W, F, H, ohm, degC, 1/degC or ratio, whichever the kind is measured in; may be left out with nominal.")]
    public string? Unit { get; set; }

    /// <summary>The condition it holds under.</summary>
    [Description("The condition it holds under.")]
    public string? Condition { get; set; }

    /// <summary>How it is known; a guess when not given.</summary>
    [Description("How it is known; a guess when not given.")]
    public Evidence? Evidence { get; set; }

    /// <summary>Where it was found.</summary>
    [Description("Where it was found.")]
    public string? Source { get; set; }
}
