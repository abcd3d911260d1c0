using Catalogue.Data.Figures;
using Catalogue.Domain.Components;
using Catalogue.Domain.Figures;
using Catalogue.Domain.Quantities;
using Catalogue.Domain.Rails;

namespace Catalogue.Site.Figures;

/// <summary>A figure as a page shows it, whether it was stored with the revision or computed since.</summary>
public sealed record FigureView
{
    /// <summary>The component, or null for a figure of a rail.</summary>
    public ComponentId? Component { get; init; }

    /// <summary>The rail, or null for a figure of a component.</summary>
    public RailId? Rail { get; init; }

    /// <summary>The id of the component or the rail.</summary>
    public Guid Subject => Component?.Value ?? Rail!.Value.Value;

    public required string Rule { get; init; }

    public required int RuleVersion { get; init; }

    public double? Low { get; init; }

    public double? Nominal { get; init; }

    public double? High { get; init; }

    public required Unit Unit { get; init; }

    public required Verdict Verdict { get; init; }

    public bool StaticOnly { get; init; }

    public required IReadOnlyList<MissingInput> Missing { get; init; }

    public required Working Working { get; init; }

    /// <summary>All three cases are there.</summary>
    public bool IsComputed => Low is not null && Nominal is not null && High is not null;

    public static FigureView Of(Figure figure)
    {
        ArgumentNullException.ThrowIfNull(figure);
        return new FigureView
        {
            Component = figure.ComponentId,
            Rail = figure.RailId,
            Rule = figure.Rule,
            RuleVersion = figure.RuleVersion,
            Low = figure.Low,
            Nominal = figure.Nominal,
            High = figure.High,
            Unit = figure.Unit,
            Verdict = figure.Verdict,
            StaticOnly = figure.StaticOnly,
            Missing = figure.Missing,
            Working = figure.Working,
        };
    }

    public static FigureView Of(CurrentFigure figure)
    {
        ArgumentNullException.ThrowIfNull(figure);
        return new FigureView
        {
            Component = figure.ComponentId,
            Rail = figure.RailId,
            Rule = figure.Rule,
            RuleVersion = figure.RuleVersion,
            Low = figure.Low,
            Nominal = figure.Nominal,
            High = figure.High,
            Unit = figure.Unit,
            Verdict = figure.Verdict,
            StaticOnly = figure.StaticOnly,
            Missing = figure.Missing,
            Working = figure.Working,
        };
    }

    /// <summary>True when the other one says the same, down to the version of the rule.</summary>
    public bool SaysTheSameAs(FigureView other)
    {
        ArgumentNullException.ThrowIfNull(other);
        return RuleVersion == other.RuleVersion && Verdict == other.Verdict && StaticOnly == other.StaticOnly
            && Same(Low, other.Low) && Same(Nominal, other.Nominal) && Same(High, other.High)
            && Missing.Select(missing => missing.Code).SequenceEqual(other.Missing.Select(missing => missing.Code));
    }

    /// <summary>The value as text: two decimals for a ratio, else with its unit.</summary>
    public string Text(double value) => Unit is Unit.Ratio ? QuantityText.TwoDecimals(value) : QuantityText.Of(value, Unit, 3);

    private static bool Same(double? one, double? other) =>
        one is { } a && other is { } b ? Math.Abs(a - b) <= 1e-9 * Math.Max(Math.Abs(a), Math.Abs(b)) : one is null && other is null;
}
