using Catalogue.Domain.Components;
using Catalogue.Domain.Quantities;
using Catalogue.Domain.Rails;
using Catalogue.Domain.Teardowns;

namespace Catalogue.Domain.Figures;

/// <summary>A computed quantity of one component or rail in one revision, stored with its working.</summary>
public sealed class Figure : IRevisionContent
{
    /// <inheritdoc />
    public required RevisionId RevisionId { get; set; }

    /// <summary>Its id; made anew with every computation.</summary>
    public required FigureId Id { get; init; }

    /// <summary>The rule's code, such as <c>fuse_headroom</c>.</summary>
    public required string Rule { get; init; }

    /// <summary>The version of the rule that computed it.</summary>
    public required int RuleVersion { get; init; }

    /// <summary>The component it is about, or null for a figure of a rail.</summary>
    public ComponentId? ComponentId { get; init; }

    /// <summary>The rail it is about, or null for a figure of a component.</summary>
    public RailId? RailId { get; init; }

    /// <summary>The id of the component or the rail.</summary>
    public Guid Subject => ComponentId?.Value ?? RailId!.Value.Value;

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
    public IReadOnlyList<MissingInput> Missing { get; init; } = [];

    /// <summary>The sum.</summary>
    public required Working Working { get; init; }

    /// <summary>A figure row from a rule's result. Either a component or a rail is given.</summary>
    public static Figure Of(RevisionId revision, ComponentId? component, RailId? rail, FigureRule rule, FigureResult result)
    {
        ArgumentNullException.ThrowIfNull(rule);
        ArgumentNullException.ThrowIfNull(result);
        if (component is null == rail is null)
            throw new ArgumentException("A figure is of a component or of a rail.", nameof(component));
        var computed = result as FigureResult.Computed;
        return new Figure
        {
            RevisionId = revision,
            Id = FigureId.New(),
            Rule = rule.Code,
            RuleVersion = rule.Version,
            ComponentId = component,
            RailId = rail,
            Low = computed?.Value.Low,
            Nominal = computed?.Value.Nominal,
            High = computed?.Value.High,
            Unit = computed?.Unit ?? rule.Unit,
            Verdict = computed?.Verdict ?? Verdict.Unknown,
            StaticOnly = computed?.StaticOnly ?? false,
            Missing = (result as FigureResult.Unknown)?.Missing ?? [],
            Working = result.Working,
        };
    }
}
