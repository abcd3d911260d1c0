namespace Catalogue.Domain.Codes;

/// <summary>The case letter of a chip tantalum capacitor and its size.</summary>
/// <remarks>Source: EIA-535. A marking's first letter is not its case letter; see <see cref="CapacitorVoltage.DecodeLetter"/>.</remarks>
/// <param name="Letter">A to E.</param>
/// <param name="MetricSize">Length and width in tenths of a millimetre and the greatest height, such as <c>3528-21</c>.</param>
/// <param name="LengthMm">Length in millimetre.</param>
/// <param name="WidthMm">Width in millimetre.</param>
/// <param name="MaxHeightMm">Greatest height in millimetre.</param>
public sealed record TantalumCase(char Letter, string MetricSize, double LengthMm, double WidthMm, double MaxHeightMm)
{
    /// <summary>All cases, in the order of their letters.</summary>
    public static IReadOnlyList<TantalumCase> All { get; } =
    [
        new('A', "3216-18", 3.2, 1.6, 1.8),
        new('B', "3528-21", 3.5, 2.8, 2.1),
        new('C', "6032-28", 6.0, 3.2, 2.8),
        new('D', "7343-31", 7.3, 4.3, 3.1),
        new('E', "7343-43", 7.3, 4.3, 4.3),
    ];

    /// <summary>The case of a letter or of a metric size, or null.</summary>
    public static TantalumCase? Find(string text)
    {
        ArgumentNullException.ThrowIfNull(text);
        return All.FirstOrDefault(entry => (text.Length == 1 && char.ToUpperInvariant(text[0]) == entry.Letter) || text == entry.MetricSize);
    }
}
