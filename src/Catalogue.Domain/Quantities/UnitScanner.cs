namespace Catalogue.Domain.Quantities;

/// <summary>How certain the prefix before a unit is.</summary>
internal enum PrefixDoubt : byte
{
    /// <summary>As written.</summary>
    None,

    /// <summary>A capital M before a unit that nobody uses in millions here, or m where the unit's own case is wrong: milli or mega.</summary>
    MilliOrMega,
}

/// <summary>A unit found in a text.</summary>
/// <param name="Unit">The unit.</param>
/// <param name="Shift">Power of ten of its prefix.</param>
/// <param name="Length">Characters it takes.</param>
/// <param name="Current">Ac or dc where the unit says so itself (<c>VAC</c>).</param>
/// <param name="Doubt">Whether the prefix is certain.</param>
internal readonly record struct UnitMatch(Unit Unit, int Shift, int Length, CurrentKind Current = CurrentKind.NotSaid, PrefixDoubt Doubt = PrefixDoubt.None);

/// <summary>Finds the unit, with its prefix, at the beginning of a folded text.</summary>
internal static class UnitScanner
{
    /// <summary>The unit at the beginning, or false. What comes after is not looked at except that no letter may follow.</summary>
    /// <param name="text">Begins with the unit.</param>
    /// <param name="isGlued">Whether the unit stands directly behind its number; <c>R</c> is an ohm only there.</param>
    /// <param name="match">What was found.</param>
    public static bool TryMatch(ReadOnlySpan<char> text, bool isGlued, out UnitMatch match)
    {
        match = default;
        if (text.IsEmpty || text[0] is ' ' or ',' or ';')
            return false;
        if (TryPlain(text, isGlued, hasPrefix: false, out match) && IsEnd(text, match.Length))
            return !IsToleranceLetter(match.Unit, isGlued);
        if (text.Length < 2 || !TryPrefix(text[0], out var power) || !TryPlain(text[1..], isGlued: true, hasPrefix: true, out match) || !IsEnd(text, match.Length + 1))
            return false;
        var letters = text.Slice(1, match.Length);
        if (IsToleranceLetter(match.Unit, isGlued))
            return false;
        if (!Takes(match.Unit, text[0], power, letters))
            return false;
        match = match with { Shift = match.Shift + power, Length = match.Length + 1, Doubt = Doubt(match.Unit, text[0], letters) };
        return true;
    }

    /// <summary>The power of ten of a prefix letter as people type it; capitals of small ones too, which only some units take.</summary>
    public static bool TryPrefix(char letter, out int power)
    {
        power = letter switch
        {
            'p' or 'P' => -12,
            'n' or 'N' => -9,
            'µ' or 'u' or 'U' => -6,
            'm' => -3,
            'c' => -2,
            'k' or 'K' => 3,
            'M' => 6,
            'G' => 9,
            'T' => 12,
            _ => 0,
        };
        return power != 0;
    }

    /// <summary>True where neither a letter nor an exponent follows, so that the unit ends there.</summary>
    public static bool IsEnd(ReadOnlySpan<char> text, int at) => at >= text.Length || !(char.IsLetter(text[at]) || text[at] is '²' or '³' or '^' or '_' or '·');

    // Directly behind a number J is the letter of 5 %, as in 47kJ; joules stand apart.
    private static bool IsToleranceLetter(Unit unit, bool isGlued) => unit is Unit.Joule && isGlued;

    private static PrefixDoubt Doubt(Unit unit, char prefix, ReadOnlySpan<char> letters) => (prefix, unit) switch
    {
        ('M', Unit.Hertz) => PrefixDoubt.None,
        ('M', Unit.Watt or Unit.Joule) when letters.Length == 1 => PrefixDoubt.None,
        ('M', Unit.WattHour) when letters[^1] == 'h' => PrefixDoubt.None,
        ('M', Unit.Ohm) when letters[0] != 'O' || letters[1] == 'h' => PrefixDoubt.None,
        ('M', _) => PrefixDoubt.MilliOrMega,
        ('m', Unit.Hertz) when letters[0] == 'h' => PrefixDoubt.MilliOrMega,
        _ => PrefixDoubt.None,
    };

    private static bool Takes(Unit unit, char prefix, int power, ReadOnlySpan<char> letters) => unit switch
    {
        Unit.DegreeCelsius or Unit.PerDegreeCelsius or Unit.DegreeCelsiusPerWatt or Unit.Ratio => false,
        Unit.Kilogram => prefix is 'k' or 'K' or 'm' or 'µ' or 'u',
        Unit.Metre => prefix is 'c' or 'm' or 'µ' or 'u' or 'n' or 'k',
        Unit.Second => prefix is 'm' or 'µ' or 'u' or 'n' or 'p' or 'k' or 'G',
        Unit.Farad => power < 0 && prefix != 'c' || prefix is 'M' or 'k' or 'G',
        Unit.Henry => power < 0 && prefix != 'c' || prefix is 'M' or 'k' or 'G',
        Unit.Ohm when letters[0] is 'R' or 'r' => prefix is 'm' or 'k' or 'K' or 'M' or 'µ' or 'u',
        // A capital P, N or U is a small prefix on capacitors and coils only; nobody writes peta here, and a guess would be one.
        _ => prefix is not ('P' or 'N' or 'U' or 'c'),
    };

    private static bool TryPlain(ReadOnlySpan<char> text, bool isGlued, bool hasPrefix, out UnitMatch match)
    {
        match = default;
        switch (text[0])
        {
            case 'V' or 'v':
                match = Starts(text, "volts") ? new(Unit.Volt, 0, 5)
                    : Starts(text, "volt") ? new(Unit.Volt, 0, 4)
                    : Starts(text, "vac") ? new(Unit.Volt, 0, 3, CurrentKind.Alternating)
                    : Starts(text, "vdc") ? new(Unit.Volt, 0, 3, CurrentKind.Direct)
                    : Starts(text, "vrms") ? new(Unit.Volt, 0, 4, CurrentKind.Alternating)
                    : new(Unit.Volt, 0, 1);
                return true;
            case 'A' or 'a':
                match = Starts(text, "amperes") ? new(Unit.Ampere, 0, 7)
                    : Starts(text, "ampere") ? new(Unit.Ampere, 0, 6)
                    : Starts(text, "amps") ? new(Unit.Ampere, 0, 4)
                    : Starts(text, "amp") ? new(Unit.Ampere, 0, 3)
                    : Starts(text, "aac") ? new(Unit.Ampere, 0, 3, CurrentKind.Alternating)
                    : Starts(text, "adc") ? new(Unit.Ampere, 0, 3, CurrentKind.Direct)
                    : Starts(text, "arms") ? new(Unit.Ampere, 0, 4, CurrentKind.Alternating)
                    : Starts(text, "a·h") ? new(Unit.AmpereHour, 0, 3)
                    : Starts(text, "ah") ? new(Unit.AmpereHour, 0, 2)
                    : new(Unit.Ampere, 0, 1);
                return true;
            case 'W' or 'w':
                match = Starts(text, "watts") ? new(Unit.Watt, 0, 5)
                    : Starts(text, "watt") ? new(Unit.Watt, 0, 4)
                    : Starts(text, "w·h") ? new(Unit.WattHour, 0, 3)
                    : Starts(text, "wh") ? new(Unit.WattHour, 0, 2)
                    : new(Unit.Watt, 0, 1);
                return true;
            case 'Ω':
                match = new(Unit.Ohm, 0, 1);
                return true;
            case 'O' or 'o':
                match = Starts(text, "ohms") ? new(Unit.Ohm, 0, 4) : new(Unit.Ohm, 0, 3);
                return Starts(text, "ohm");
            case 'R' or 'r':
                if (Starts(text, "ratio"))
                {
                    match = new(Unit.Ratio, 0, 5);
                    return !hasPrefix;
                }

                match = new(Unit.Ohm, 0, 1);
                return isGlued;
            case 'F' or 'f':
                match = Starts(text, "farads") ? new(Unit.Farad, 0, 6)
                    : Starts(text, "farad") ? new(Unit.Farad, 0, 5)
                    : hasPrefix && Starts(text, "fd") ? new(Unit.Farad, 0, 2)
                    : new(Unit.Farad, 0, 1);
                return text[0] == 'F' || hasPrefix || match.Length > 1;
            case 'H' or 'h':
                match = Starts(text, "hertz") ? new(Unit.Hertz, 0, 5)
                    : Starts(text, "henry") ? new(Unit.Henry, 0, 5)
                    : Starts(text, "hz") ? new(Unit.Hertz, 0, 2)
                    : new(Unit.Henry, 0, 1);
                return text[0] == 'H' || hasPrefix || match.Length > 1;
            case '°' or 'd':
                var sign = text[0] == '°' ? 1 : Starts(text, "deg") ? 3 : 0;
                var letter = sign > 0 && text.Length > sign && text[sign] == ' ' ? sign + 1 : sign;
                match = PerWatt(text, letter + 1);
                return sign > 0 && text.Length > letter && text[letter] == 'C';
            case '℃':
                match = PerWatt(text, 1);
                return true;
            case 'C':
                match = PerWatt(text, 1);
                return !hasPrefix;
            case 'K':
                match = PerWatt(text, 1);
                return !hasPrefix && match.Unit is Unit.DegreeCelsiusPerWatt;
            case 'J' or 'j':
                match = Starts(text, "joules") ? new(Unit.Joule, 0, 6) : Starts(text, "joule") ? new(Unit.Joule, 0, 5) : new(Unit.Joule, 0, 1);
                return text[0] == 'J' || match.Length > 1;
            case 'm':
                match = !hasPrefix && Starts(text, "mfd") ? new(Unit.Farad, -6, 3)
                    : text.StartsWith("metres") ? new(Unit.Metre, 0, 6)
                    : text.StartsWith("metre") ? new(Unit.Metre, 0, 5)
                    : new(Unit.Metre, 0, 1);
                return true;
            // MFD is the old print of a microfarad, whatever its case says.
            case 'M':
                match = new(Unit.Farad, -6, 3);
                return !hasPrefix && Starts(text, "mfd");
            case 's':
                match = text.StartsWith("sec") ? new(Unit.Second, 0, 3) : new(Unit.Second, 0, 1);
                return true;
            case 'g':
                match = new(Unit.Kilogram, -3, 1);
                return true;
            case '%':
                match = OfTemperature(text, new UnitMatch(Unit.Ratio, -2, 1));
                return !hasPrefix;
            case '‰':
                match = new(Unit.Ratio, -3, 1);
                return !hasPrefix;
            case 'p':
                match = OfTemperature(text, new UnitMatch(Unit.Ratio, -6, 3));
                return !hasPrefix && text.StartsWith("ppm");
            case '/':
                match = OfTemperature(text, new UnitMatch(Unit.Ratio, 0, 0));
                return !hasPrefix && match.Unit is Unit.PerDegreeCelsius;
            case '1':
                match = OfTemperature(text, new UnitMatch(Unit.Ratio, 0, 1));
                return !hasPrefix && !isGlued && match.Unit is Unit.PerDegreeCelsius;
            default:
                return false;
        }
    }

    private static UnitMatch OfTemperature(ReadOnlySpan<char> text, UnitMatch share)
    {
        var rest = text.Length > share.Length ? text[share.Length..] : default;
        var length = rest.StartsWith("/°C") ? 3 : rest.StartsWith("/degC") ? 5 : rest.StartsWith("/℃") || rest.StartsWith("/K") ? 2 : 0;
        return length == 0 || !IsEnd(rest, length) ? share : share with { Unit = Unit.PerDegreeCelsius, Length = share.Length + length };
    }

    private static UnitMatch PerWatt(ReadOnlySpan<char> text, int degree) =>
        text.Length >= degree && text[degree..].StartsWith("/W") ? new UnitMatch(Unit.DegreeCelsiusPerWatt, 0, degree + 2) : new UnitMatch(Unit.DegreeCelsius, 0, degree);

    private static bool Starts(ReadOnlySpan<char> text, string word) => text.StartsWith(word, StringComparison.OrdinalIgnoreCase);
}
