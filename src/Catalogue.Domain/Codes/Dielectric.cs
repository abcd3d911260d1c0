namespace Catalogue.Domain.Codes;

/// <summary>The dielectric of a ceramic capacitor from its three-character code.</summary>
/// <remarks>
/// Class 2: low limit X −55, Y −30, Z +10 °C; high limit 4 +65, 5 +85, 6 +105, 7 +125, 8 +150, 9 +200 °C; change A 1.0, B 1.5, C 2.2, D 3.3,
/// E 4.7, F 7.5, P 10, R 15, S 22 %, T +22/−33, U +22/−56, V +22/−82 %. Class 1: slope and its spread in ppm/°C; C0G is the one printed NP0.
/// Source: EIA-198.
/// </remarks>
/// <param name="Code">As EIA writes it: <c>X7R</c>, <c>C0G</c>.</param>
/// <param name="Class">1 or 2.</param>
/// <param name="LowDegC">Low end of the temperature range in °C; null for class 1.</param>
/// <param name="HighDegC">High end in °C; null for class 1.</param>
/// <param name="RisePercent">The most it gains over that range, in per cent; null for class 1.</param>
/// <param name="FallPercent">The most it loses, in per cent, negative; null for class 1.</param>
/// <param name="SlopePpmPerDegC">Slope of class 1 in ppm/°C; null for class 2.</param>
/// <param name="SlopeSpreadPpmPerDegC">Spread of that slope, ±, in ppm/°C; null for class 2.</param>
public sealed record Dielectric(
    string Code,
    int Class,
    int? LowDegC,
    int? HighDegC,
    double? RisePercent,
    double? FallPercent,
    double? SlopePpmPerDegC,
    double? SlopeSpreadPpmPerDegC)
{
    /// <summary>The dielectric of a code, or null. Case does not count, the letter O counts as zero in <c>COG</c> and <c>NPO</c>.</summary>
    public static Dielectric? Find(string code)
    {
        ArgumentNullException.ThrowIfNull(code);
        if (code.Length != 3)
            return null;
        var folded = code.ToUpperInvariant();
        return folded switch
        {
            "C0G" or "COG" or "NP0" or "NPO" => FirstClass("C0G", 0, 30),
            "U2J" => FirstClass("U2J", -750, 120),
            _ => SecondClass(folded),
        };
    }

    private static Dielectric FirstClass(string code, double slope, double spread) => new(code, 1, null, null, null, null, slope, spread);

    private static Dielectric? SecondClass(string code)
    {
        int? low = code[0] switch { 'X' => -55, 'Y' => -30, 'Z' => 10, _ => null };
        int? high = code[1] switch { '4' => 65, '5' => 85, '6' => 105, '7' => 125, '8' => 150, '9' => 200, _ => null };
        (double Rise, double Fall)? change = code[2] switch
        {
            'A' => (1.0, -1.0),
            'B' => (1.5, -1.5),
            'C' => (2.2, -2.2),
            'D' => (3.3, -3.3),
            'E' => (4.7, -4.7),
            'F' => (7.5, -7.5),
            'P' => (10, -10),
            'R' => (15, -15),
            'S' => (22, -22),
            'T' => (22, -33),
            'U' => (22, -56),
            'V' => (22, -82),
            _ => null,
        };
        return low is null || high is null || change is not { } limits ? null : new Dielectric(code, 2, low, high, limits.Rise, limits.Fall, null, null);
    }
}
