using Catalogue.Domain.Components;
using Catalogue.Domain.Figures;
using Catalogue.Domain.Quantities;
using Catalogue.Domain.Rails;
using Catalogue.Domain.Teardowns;

namespace Catalogue.Data.Figures;

/// <summary>
/// The figure of a published revision as the rules stand now. Questions read these; pages print what was published and say where the two
/// differ. Only the published revision of a teardown has rows here.
/// </summary>
public sealed class CurrentFigure
{
    /// <summary>Its id.</summary>
    public required FigureId Id { get; init; }

    /// <summary>The revision.</summary>
    public required RevisionId RevisionId { get; init; }

    /// <summary>The teardown.</summary>
    public required TeardownId TeardownId { get; init; }

    /// <summary>The component, or null for a figure of a rail.</summary>
    public ComponentId? ComponentId { get; init; }

    /// <summary>The rail, or null for a figure of a component.</summary>
    public RailId? RailId { get; init; }

    /// <summary>The rule's code.</summary>
    public required string Rule { get; init; }

    /// <summary>The version that computed it.</summary>
    public required int RuleVersion { get; init; }

    /// <summary>The lowest case, or null when unknown.</summary>
    public double? Low { get; init; }

    /// <summary>The value, or null when unknown.</summary>
    public double? Nominal { get; init; }

    /// <summary>The highest case, or null when unknown.</summary>
    public double? High { get; init; }

    /// <summary>The unit.</summary>
    public required Unit Unit { get; init; }

    /// <summary>The verdict.</summary>
    public required Verdict Verdict { get; init; }

    /// <summary>True when a stress known to exist there is left out.</summary>
    public bool StaticOnly { get; init; }

    /// <summary>What is missing; empty when computed.</summary>
    public required IReadOnlyList<MissingInput> Missing { get; init; }

    /// <summary>The sum.</summary>
    public required Working Working { get; init; }

    /// <summary>The current figure that equals a published one.</summary>
    public static CurrentFigure From(TeardownId teardown, Figure figure)
    {
        ArgumentNullException.ThrowIfNull(figure);
        return new CurrentFigure
        {
            Id = figure.Id,
            RevisionId = figure.RevisionId,
            TeardownId = teardown,
            ComponentId = figure.ComponentId,
            RailId = figure.RailId,
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
}
