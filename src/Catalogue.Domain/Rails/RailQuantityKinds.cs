using Catalogue.Domain.Quantities;

namespace Catalogue.Domain.Rails;

/// <summary>The unit, the words and the range of each kind of rail quantity.</summary>
public static class RailQuantityKinds
{
    /// <summary>No rail of a power product is beyond this, in volt, ampere, watt or hertz; a larger one is a slip of the keys.</summary>
    public const double LargestValue = 1e6;

    private const double LargestResistance = 1e12;

    /// <summary>The one unit in which a kind is stored.</summary>
    public static Unit Unit(this RailQuantityKind kind) => kind switch
    {
        RailQuantityKind.MinVoltage or RailQuantityKind.NominalVoltage or RailQuantityKind.MaxVoltage or RailQuantityKind.LineVoltage => Quantities.Unit.Volt,
        RailQuantityKind.MaxCurrent or RailQuantityKind.ProspectiveCurrent => Quantities.Unit.Ampere,
        RailQuantityKind.MaxPower => Quantities.Unit.Watt,
        RailQuantityKind.LineFrequency => Quantities.Unit.Hertz,
        RailQuantityKind.BleedResistance or RailQuantityKind.PathResistance => Quantities.Unit.Ohm,
        _ => Quantities.Unit.Ratio,
    };

    /// <summary>The words a person reads, such as <c>lowest voltage</c>.</summary>
    public static string Word(this RailQuantityKind kind) => kind switch
    {
        RailQuantityKind.MinVoltage => "lowest voltage",
        RailQuantityKind.NominalVoltage => "nominal voltage",
        RailQuantityKind.MaxVoltage => "highest voltage",
        RailQuantityKind.MaxCurrent => "highest current",
        RailQuantityKind.MaxPower => "highest output power",
        RailQuantityKind.Efficiency => "efficiency",
        RailQuantityKind.PowerFactor => "power factor",
        RailQuantityKind.LineFrequency => "line frequency",
        RailQuantityKind.LineVoltage => "line voltage before the rectifier",
        RailQuantityKind.BleedResistance => "bleed resistance",
        RailQuantityKind.PathResistance => "path resistance beside the cells",
        _ => "prospective short-circuit current",
    };

    /// <summary>Why a value cannot be, or null when it can.</summary>
    public static string? Refuse(this RailQuantityKind kind, Interval value) => kind switch
    {
        RailQuantityKind.Efficiency or RailQuantityKind.PowerFactor => value.Low > 0 && value.High <= 1 ? null : $"{kind.Word()} is a ratio above 0 and at most 1.",
        RailQuantityKind.PathResistance when value.Low < 0 => $"{kind.Word()} is not negative.",
        RailQuantityKind.PathResistance => value.High <= LargestResistance ? null : $"{kind.Word()} is too large to be meant.",
        _ when value.Low <= 0 => $"{kind.Word()} is above zero.",
        RailQuantityKind.BleedResistance => value.High <= LargestResistance ? null : $"{kind.Word()} is too large to be meant.",
        _ when value.High > LargestValue => $"{kind.Word()} is too large to be meant.",
        _ => null,
    };
}
