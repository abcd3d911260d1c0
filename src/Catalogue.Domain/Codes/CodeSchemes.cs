namespace Catalogue.Domain.Codes;

/// <summary>The words for the schemes.</summary>
public static class CodeSchemes
{
    /// <summary>What a person reads, such as <c>three-digit code</c>.</summary>
    public static string Word(this CodeScheme scheme) => scheme switch
    {
        CodeScheme.Plain => "plain number",
        CodeScheme.LetterNumber => "letter at the decimal mark",
        CodeScheme.ZeroLink => "zero-ohm link",
        CodeScheme.ThreeDigit => "three-digit code",
        CodeScheme.FourDigit => "four-digit code",
        CodeScheme.Eia96 => "EIA-96 code",
        CodeScheme.ColourBands => "colour bands",
        CodeScheme.VoltageAndDigits => "voltage code and digits",
        CodeScheme.VoltageLetterAndDigits => "voltage letter and digits",
        _ => "fuse mark",
    };
}
