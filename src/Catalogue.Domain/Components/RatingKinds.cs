using Catalogue.Domain.Quantities;

namespace Catalogue.Domain.Components;

/// <summary>The unit and the range of each kind of rating.</summary>
public static class RatingKinds
{
    /// <summary>The one unit in which a kind is stored.</summary>
    public static Unit Unit(this RatingKind kind) => kind switch
    {
        RatingKind.RatedCurrent or RatingKind.BreakingCurrent or RatingKind.RmsCurrent or RatingKind.MeanCurrent => Quantities.Unit.Ampere,
        RatingKind.RatedVoltage or RatingKind.RatedVoltageAc or RatingKind.CellVoltage or RatingKind.PeakVoltage or RatingKind.RippleVoltage or RatingKind.SpikeVoltage or RatingKind.OutputVoltage or RatingKind.ForwardVoltage => Quantities.Unit.Volt,
        RatingKind.RatedLife => Quantities.Unit.Second,
        RatingKind.CellCapacity => Quantities.Unit.AmpereHour,
        RatingKind.ThermalResistance => Quantities.Unit.DegreeCelsiusPerWatt,
        RatingKind.Capacitance => Quantities.Unit.Farad,
        RatingKind.Resistance or RatingKind.OnResistance or RatingKind.CellResistance => Quantities.Unit.Ohm,
        RatingKind.Inductance => Quantities.Unit.Henry,
        RatingKind.RatedPower => Quantities.Unit.Watt,
        RatingKind.MaxTemperature or RatingKind.AmbientTemperature or RatingKind.PartTemperature => Quantities.Unit.DegreeCelsius,
        RatingKind.TemperatureSlope or RatingKind.TemperatureCoefficient => Quantities.Unit.PerDegreeCelsius,
        _ => Quantities.Unit.Ratio,
    };

    /// <summary>True for what the part sees in this product, false for what it is rated for.</summary>
    public static bool IsInUse(this RatingKind kind) => kind is RatingKind.CurrentSharing or RatingKind.AmbientTemperature or RatingKind.PartTemperature or RatingKind.PeakVoltage or RatingKind.RippleVoltage or RatingKind.SpikeVoltage
        or RatingKind.OutputVoltage or RatingKind.TurnsRatio or RatingKind.DutyCycle or RatingKind.RmsCurrent or RatingKind.MeanCurrent;

    /// <summary>True when a rating of this kind holds for ac under its condition, such as <c>250 V~</c> or <c>at 250 V ac</c>.</summary>
    public static bool IsForAc(this RatingKind kind, string? condition) =>
        kind is RatingKind.RatedVoltageAc
        || (condition is not null
            && (condition.Contains('~', StringComparison.Ordinal)
                || condition.Split([' ', ',', ';', '(', ')', '/'], StringSplitOptions.RemoveEmptyEntries).Any(word => word.Equals("ac", StringComparison.OrdinalIgnoreCase) || word.Equals("a.c.", StringComparison.OrdinalIgnoreCase) || word.Equals("vac", StringComparison.OrdinalIgnoreCase))));

    /// <summary>The words a person reads, such as <c>rated current</c>.</summary>
    public static string Word(this RatingKind kind) => kind switch
    {
        RatingKind.RatedCurrent => "rated current",
        RatingKind.RatedVoltage => "rated voltage",
        RatingKind.RatedVoltageAc => "rated ac voltage",
        RatingKind.Capacitance => "capacitance",
        RatingKind.Resistance => "resistance",
        RatingKind.Inductance => "inductance",
        RatingKind.RatedPower => "rated power",
        RatingKind.OnResistance => "on-resistance, one part",
        RatingKind.MaxTemperature => "highest temperature",
        RatingKind.RatedLife => "rated life at the highest temperature",
        RatingKind.BreakingCurrent => "breaking capacity",
        RatingKind.CurrentSharing => "current sharing",
        RatingKind.Derating => "derating",
        RatingKind.TemperatureSlope => "temperature slope",
        RatingKind.AmbientTemperature => "ambient temperature",
        RatingKind.PartTemperature => "temperature of the part in use",
        RatingKind.CellCapacity => "capacity of one cell",
        RatingKind.CellVoltage => "nominal voltage of one cell",
        RatingKind.CellResistance => "internal resistance of one cell",
        RatingKind.PeakVoltage => "peak voltage in use",
        RatingKind.RippleVoltage => "ripple, peak",
        RatingKind.SpikeVoltage => "spike",
        RatingKind.OutputVoltage => "output voltage behind it",
        RatingKind.TurnsRatio => "turns ratio, primary to secondary",
        RatingKind.DutyCycle => "duty cycle",
        RatingKind.RmsCurrent => "rms current in use",
        RatingKind.MeanCurrent => "mean current in use",
        RatingKind.ForwardVoltage => "forward voltage",
        RatingKind.TemperatureFactor => "temperature factor of on-resistance",
        RatingKind.TemperatureCoefficient => "temperature coefficient of on-resistance",
        _ => "thermal resistance, junction to ambient",
    };

    /// <summary>Why a value cannot be, or null when it can: ratios are 0 to 1, temperatures above absolute zero, all else above zero.</summary>
    public static string? Refuse(this RatingKind kind, Interval value) => kind switch
    {
        RatingKind.CurrentSharing or RatingKind.Derating or RatingKind.DutyCycle when value.Low <= 0 || value.High > 1 => $"{kind.Word()} is a ratio above 0 and at most 1.",
        RatingKind.TemperatureSlope or RatingKind.TemperatureCoefficient when value.Low < 0 || value.High > 0.1 => $"{kind.Word()} is 0 to 0.1 per °C.",
        RatingKind.MaxTemperature or RatingKind.AmbientTemperature or RatingKind.PartTemperature when value.Low < -273.15 || value.High > 1000 => "A temperature is between −273.15 and 1000 °C.",
        RatingKind.TemperatureFactor when value.Low < 1 || value.High > 10 => "A temperature factor is 1 to 10.",
        RatingKind.TemperatureFactor or RatingKind.CurrentSharing or RatingKind.Derating or RatingKind.DutyCycle or RatingKind.TemperatureSlope or RatingKind.TemperatureCoefficient or RatingKind.MaxTemperature or RatingKind.AmbientTemperature or RatingKind.PartTemperature => null,
        RatingKind.Resistance or RatingKind.RippleVoltage or RatingKind.SpikeVoltage when value.Low < 0 => $"{kind.Word()} is not negative.",
        RatingKind.Resistance or RatingKind.RippleVoltage or RatingKind.SpikeVoltage => value.High <= LargestValue ? null : $"{kind.Word()} is too large to be meant.",
        _ when value.Low <= 0 => $"{kind.Word()} is above zero.",
        _ when value.High > LargestValue => $"{kind.Word()} is too large to be meant.",
        _ => null,
    };

    /// <summary>No rating of a power product is beyond this, in any unit; a larger one is a slip of the keys.</summary>
    public const double LargestValue = 1e12;
}
