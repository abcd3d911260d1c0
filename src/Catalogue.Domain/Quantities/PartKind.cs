namespace Catalogue.Domain.Quantities;

/// <summary>What kind of part a text speaks of: it decides what a bare number or a code means.</summary>
public enum PartKind : byte
{
    /// <summary>Nothing is known: only what carries a unit or an unmistakable letter is read.</summary>
    NotSaid,

    /// <summary>Bare values are ohms; chip codes, letter codes and colour bands apply.</summary>
    Resistor,

    /// <summary>Codes are picofarads; a plain decimal is microfarads.</summary>
    Capacitor,

    /// <summary>Codes are microhenries.</summary>
    Inductor,

    /// <summary>A bare number is amperes; fuse marks apply.</summary>
    Fuse,

    /// <summary>A bare number says nothing.</summary>
    Diode,

    /// <summary>Any switch or transistor; a bare number says nothing.</summary>
    Transistor,

    /// <summary>Bare multiples are hertz.</summary>
    Crystal,

    /// <summary>A bare number is volts.</summary>
    Varistor,

    /// <summary>Bare values are ohms at 25 °C.</summary>
    Thermistor,

    /// <summary>A cell or a pack; a bare number says nothing.</summary>
    Cell,
}
