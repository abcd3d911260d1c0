namespace Catalogue.Domain.Codes;

/// <summary>The code by which a marking was read.</summary>
public enum CodeScheme
{
    /// <summary>The number as it stands, in the unit the part is usually printed in.</summary>
    Plain,

    /// <summary>Letter at the decimal mark (IEC 60062): <c>4K7</c>, <c>R47</c>, <c>4n7K</c>.</summary>
    LetterNumber,

    /// <summary>A link of zero ohms.</summary>
    ZeroLink,

    /// <summary>Two digits and a power of ten.</summary>
    ThreeDigit,

    /// <summary>Three digits and a power of ten.</summary>
    FourDigit,

    /// <summary>Index into the E96 series and a letter for the power of ten.</summary>
    Eia96,

    /// <summary>Colour bands (IEC 60062).</summary>
    ColourBands,

    /// <summary>A capacitor's digits with a rated voltage in front: digit and letter.</summary>
    VoltageAndDigits,

    /// <summary>A capacitor's digits with one letter for the voltage in front, as on chip tantalum.</summary>
    VoltageLetterAndDigits,

    /// <summary>A fuse's characteristic, current, breaking class and voltage (IEC 60127).</summary>
    FuseMark,
}
