using Catalogue.Domain.Components;
using Catalogue.Domain.Quantities;
using Catalogue.Domain.Teardowns;

namespace Catalogue.Domain.Figures;

/// <summary>A computed quantity of one component in one revision, stored with its working.</summary>
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

    /// <summary>The component it is about.</summary>
    public required ComponentId ComponentId { get; init; }

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

    /// <summary>A figure row from a rule's result.</summary>
    public static Figure From(RevisionId revision, ComponentId component, string rule, int version, FigureResult result) => result switch
    {
        FigureResult.Computed computed => new Figure
        {
            RevisionId = revision,
            Id = FigureId.New(),
            Rule = rule,
            RuleVersion = version,
            ComponentId = component,
            Low = computed.Value.Low,
            Nominal = computed.Value.Nominal,
            High = computed.Value.High,
            Unit = computed.Unit,
            Verdict = computed.Verdict,
            StaticOnly = computed.StaticOnly,
            Working = computed.Working,
        },
        FigureResult.Unknown unknown => new Figure
        {
            RevisionId = revision,
            Id = FigureId.New(),
            Rule = rule,
            RuleVersion = version,
            ComponentId = component,
            Unit = Unit.Ratio,
            Verdict = Verdict.Unknown,
            Missing = unknown.Missing,
            Working = unknown.Working,
        },
        _ => throw new ArgumentOutOfRangeException(nameof(result)),
    };
}
