using Catalogue.Domain.Quantities;

namespace Catalogue.Domain.Components;

/// <summary>The kind of part that decides what a value means, from a designator or a function class.</summary>
/// <remarks>Letters after IEEE 315 and IEC 81346 habits. Only the meaning of a value hangs on it; the class of a component is never set from it.</remarks>
public static class PartKindOf
{
    /// <summary>The kind a reference designator such as <c>R12</c> speaks of; <see cref="PartKind.NotSaid"/> where its letters leave it open.</summary>
    public static PartKind Designator(string? designator)
    {
        if (designator is null)
            return PartKind.NotSaid;
        var end = 0;
        while (end < designator.Length && char.IsAsciiLetter(designator[end]))
            end++;
        if (end is 0 or > 4 || end >= designator.Length || !char.IsAsciiDigit(designator[end]))
            return PartKind.NotSaid;
        return designator[..end].ToUpperInvariant() switch
        {
            "R" or "RN" or "RP" or "RA" or "RS" => PartKind.Resistor,
            "C" or "CP" or "CX" or "CY" => PartKind.Capacitor,
            "L" => PartKind.Inductor,
            "F" or "FU" => PartKind.Fuse,
            "D" or "ZD" or "CR" or "VD" or "LED" => PartKind.Diode,
            "Q" or "VT" => PartKind.Transistor,
            "Y" or "X" or "XTAL" => PartKind.Crystal,
            "RV" or "MOV" or "VAR" or "VDR" => PartKind.Varistor,
            "RT" or "NTC" or "PTC" or "TH" => PartKind.Thermistor,
            "BT" => PartKind.Cell,
            _ => PartKind.NotSaid,
        };
    }

    /// <summary>The kind of a function class; <see cref="PartKind.NotSaid"/> for classes without a value of their own.</summary>
    public static PartKind Class(FunctionClass functionClass) => functionClass switch
    {
        FunctionClass.Resistor or FunctionClass.Shunt => PartKind.Resistor,
        FunctionClass.Inductor => PartKind.Inductor,
        FunctionClass.Switch or FunctionClass.BipolarTransistor or FunctionClass.Transistor => PartKind.Transistor,
        FunctionClass.Rectifier or FunctionClass.SignalDiode or FunctionClass.Indicator => PartKind.Diode,
        FunctionClass.Timing => PartKind.Crystal,
        FunctionClass.Varistor => PartKind.Varistor,
        FunctionClass.Thermistor => PartKind.Thermistor,
        FunctionClass.Cell => PartKind.Cell,
        _ when functionClass.Is(FunctionClass.Capacitor) => PartKind.Capacitor,
        _ when functionClass.Is(FunctionClass.Fuse) => PartKind.Fuse,
        _ => PartKind.NotSaid,
    };
}
