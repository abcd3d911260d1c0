using Catalogue.Domain.Components;
using Catalogue.Domain.Quantities;

namespace Catalogue.Domain.Figures;

/// <summary>The current through a place, from what is recorded of it or of its rail; each may be missing.</summary>
/// <remarks>
/// In line with the rail: the rail's current. One side of a push-pull primary: <c>I_needed / (2 · √D)</c>. One switch of a bridge that feeds
/// mains, on that mains rail: <c>I_needed / √2</c>. Anywhere else the current must be given: what the switches of a bridge carry follows from
/// what it drives, and is more than the current of the dc rail that feeds it. Source: rms of rectangular and sine waveforms.
/// </remarks>
public abstract record PlaceLoad : RailLoad
{
    /// <summary>Where the part stands, or null.</summary>
    public CircuitPosition? Position { get; init; }

    /// <summary>Current through the place, all parallel parts together, in ampere: rms for a switch, mean for a rectifier.</summary>
    public Given? Current { get; init; }

    /// <summary>Duty cycle of the part, 0 to 1.</summary>
    public Given? DutyCycle { get; init; }

    /// <summary>True where the mean current counts and not the rms.</summary>
    public bool IsMean { get; init; }

    /// <summary>The current, in ampere; what is missing for it is named on the sheet.</summary>
    /// <param name="sheet">The sheet.</param>
    /// <param name="part">What the part is called.</param>
    internal Term Through(Sheet sheet, string part)
    {
        var kind = IsMean ? "mean" : "rms";
        if (Current is not null)
            return sheet.Need(Current, IsMean ? "I_mean" : "I_rms", $"{kind} current through the place", Unit.Ampere, $"{kind}_current", $"the {kind} current through the {part}");
        switch (Position)
        {
            case CircuitPosition.InLine:
                return Needed(sheet, part);
            case CircuitPosition.PushPullPrimary when !IsMean:
                var duty = sheet.Need(DutyCycle, "D", "duty cycle of one side", Unit.Ratio, "duty_cycle", "the duty cycle of one side");
                return sheet.Step("I_rms", "rms current of one side", Unit.Ampere, Needed(sheet, part) / (Term.Number(2) * Term.SquareRoot(duty)));
            case CircuitPosition.Bridge when !IsMean && IsMains:
                return sheet.Step("I_rms", "rms current of one switch", Unit.Ampere, Needed(sheet, part) / Term.SquareRoot(Term.Number(2)));
            default:
                sheet.Miss($"{kind}_current", Position is null ? $"the {kind} current through the {part}, or where in the circuit it stands" : $"the {kind} current through the {part}");
                return Term.Number(1);
        }
    }

    /// <summary>The same with the facts of a part.</summary>
    /// <param name="facts">The part.</param>
    internal PlaceLoad With(PartFacts facts)
    {
        var mean = facts.Is(FunctionClass.Rectifier);
        return (PlaceLoad)(this with
        {
            Position = facts.Component.CircuitPosition ?? (facts.Is(FunctionClass.Connector) ? CircuitPosition.InLine : null),
            Current = facts.Best(mean ? RatingKind.MeanCurrent : RatingKind.RmsCurrent),
            DutyCycle = facts.Best(RatingKind.DutyCycle),
            IsMean = mean,
        }).With(facts.Rail);
    }
}
