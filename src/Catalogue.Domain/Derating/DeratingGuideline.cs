using Catalogue.Domain.Quantities;

namespace Catalogue.Domain.Derating;

/// <summary>One published line below a rating. A part above it is “above guideline”: it does not fail anything.</summary>
/// <param name="Source">Where it was published.</param>
/// <param name="Part">The class of parts.</param>
/// <param name="Parameter">What is derated.</param>
/// <param name="Value">The number, as <see cref="Measure"/> says.</param>
/// <param name="Mark">How well it is founded; a low one is listed and never used.</param>
/// <param name="Condition">When it holds, in words, or null.</param>
public sealed record DeratingGuideline(DeratingSource Source, DeratingPart Part, DeratingParameter Parameter, double Value, Confidence Mark, string? Condition = null)
{
    /// <summary>What <see cref="Value"/> is.</summary>
    public DeratingMeasure Measure { get; init; } = DeratingMeasure.Factor;

    /// <summary>How the factor falls with temperature, or null where it does not.</summary>
    public TemperatureLine? Line { get; init; }

    /// <summary>Highest temperature the guideline reaches to, in °C, or null where none is stated.</summary>
    public double? UpToDegC { get; init; }

    /// <summary>For a highest temperature: it must also lie so far below the part's rated one, in °C; else null.</summary>
    public double? AlsoDegCBelowRating { get; init; }

    /// <summary>The rated currents of fuses it holds for, in ampere, both ends included; null for all.</summary>
    public (double From, double To)? RatedAmpere { get; init; }

    /// <summary>True when it may be held against a part.</summary>
    public bool IsUsable => Mark is not Confidence.Low;

    /// <summary>The factor at a temperature, or null beyond the end of the line or of the guideline.</summary>
    /// <param name="degC">A finite temperature, in °C.</param>
    public double? FactorAt(double degC)
    {
        if (Line is not { } line)
            return degC > UpToDegC ? null : Value;
        if (degC > line.ToDegC)
            return null;
        return degC <= line.FromDegC ? Value : Value + ((line.FactorAtEnd - Value) * (degC - line.FromDegC) / (line.ToDegC - line.FromDegC));
    }

    /// <summary>The highest temperature that the guideline leaves of a rated one, in °C; null where the guideline is no temperature.</summary>
    /// <param name="ratedDegC">The part's rated temperature, in °C.</param>
    public double? HighestTemperature(double ratedDegC) => Measure switch
    {
        DeratingMeasure.HighestDegC => Math.Min(Value, ratedDegC - (AlsoDegCBelowRating ?? 0)),
        DeratingMeasure.DegCBelowRating => ratedDegC - Value,
        _ => null,
    };
}
