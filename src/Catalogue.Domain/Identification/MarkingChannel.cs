namespace Catalogue.Domain.Identification;

/// <summary>How likely a number is read as a given text: a noisy channel from the part to the reviewer's eye.</summary>
/// <remarks>
/// <para>
/// The cost is -ln of the probability of the likeliest way from number to reading, in nats: every sign is read right, exchanged for a look-alike
/// (dearer the less alike), exchanged for any other, lost, or one too many; an end may be worn off (what is longer than two signs is rather left out on purpose, as ordering letters are), an ending (packing, grade, lot) may be glued on,
/// a beginning may be missing or added (maker prefixes).
/// </para>
/// <para>House rule: the costs are fitted to mangled invented numbers; <c>docs/identification.md</c> says how.</para>
/// </remarks>
public static class MarkingChannel
{
    private const float LookAlikeLeast = 4.6f;
    private const float LookAlikeSlope = 2.7f;
    private const float Exchanged = 13f;
    private const float Lost = 5.5f;
    private const float Extra = 12f;
    private const float Unread = 2f;
    private const float WornEnd = 3.1f;
    private const float WornEndEach = 3f;
    private const float LeftOutEach = 1f;
    private const int Worn = 2;
    private const float WornStart = 9f;
    private const float WornStartEach = 1.2f;
    private const float AddedStart = 9f;
    private const float AddedStartEach = 1f;
    private const float KnownEnding = 4.8f;
    private const float AddedEnding = 8.5f;
    private const float AddedEndingEach = 1.2f;

    private static readonly string[] Endings =
        ["TR", "TP", "R", "RL", "REEL", "TB", "TR7", "TR13", "TUBE", "U", "TRAY", "Y", "BULK", "AMMO", "CT", "PBF", "NOPB", "G", "F", "LF", "GREEN", "HF", "C", "I", "E", "M", "Q", "Q1", "A", "AEC", "7", "13", "GTR", "PBFTR", "Q1TR"];

    private static readonly float[] Exchanges = ExchangeTable();

    /// <summary>The cost in nats, 0 or more; both of A to Z and 0 to 9, the reading also of <see cref="MarkingFold.Unreadable"/>.</summary>
    public static float Cost(ReadOnlySpan<char> reading, ReadOnlySpan<char> number)
    {
        var (n, m) = (Math.Min(reading.Length, MarkingKeys.MaxLength), Math.Min(number.Length, MarkingKeys.MaxLength));
        if (m == 0)
            return float.PositiveInfinity;
        Span<float> row = stackalloc float[m + 1];
        row[0] = 0;
        for (var j = 1; j <= m; j++)
            row[j] = Math.Min(row[j - 1] + Lost, WornStart + (WornStartEach * j));
        var best = float.PositiveInfinity;
        // Reading nothing of a number is no reading of it.
        for (var i = 1; i <= n; i++)
        {
            var seen = LookAlikes.Index(reading[i - 1]);
            var diagonal = row[0];
            row[0] = Math.Min(row[0] + Extra, AddedStart + (AddedStartEach * i));
            for (var j = 1; j <= m; j++)
            {
                var above = row[j];
                var exchanged = diagonal + (seen < 0 ? Unread : Exchanges[LookAlikes.Pair(seen, LookAlikes.Index(number[j - 1]))]);
                row[j] = Math.Min(exchanged, Math.Min(above + Extra, row[j - 1] + Lost));
                diagonal = above;
            }

            if (i < n)
                best = Math.Min(best, row[m] + Ending(reading[i..n]));
        }

        best = Math.Min(best, row[m]);
        for (var j = 1; j < m; j++)
            best = Math.Min(best, row[j] + WornEnd + (WornEndEach * Math.Min(m - j, Worn)) + (LeftOutEach * Math.Max(0, m - j - Worn)));
        return best;
    }

    /// <summary>Characters exchanged, lost or added between the two, however alike they look.</summary>
    public static int Edits(ReadOnlySpan<char> reading, ReadOnlySpan<char> number)
    {
        var (n, m) = (Math.Min(reading.Length, MarkingKeys.MaxLength), Math.Min(number.Length, MarkingKeys.MaxLength));
        Span<int> row = stackalloc int[m + 1];
        for (var j = 0; j <= m; j++)
            row[j] = j;
        for (var i = 1; i <= n; i++)
        {
            var diagonal = row[0];
            row[0] = i;
            for (var j = 1; j <= m; j++)
            {
                var above = row[j];
                row[j] = Math.Min(diagonal + (reading[i - 1] == number[j - 1] ? 0 : 1), 1 + Math.Min(above, row[j - 1]));
                diagonal = above;
            }
        }

        return row[m];
    }

    private static float Ending(ReadOnlySpan<char> ending)
    {
        foreach (var known in Endings)
        {
            if (ending.SequenceEqual(known))
                return KnownEnding;
        }

        return AddedEnding + (AddedEndingEach * ending.Length);
    }

    private static float[] ExchangeTable()
    {
        const string Signs = "0123456789ABCDEFGHIJKLMNOPQRSTUVWXYZ";
        var table = new float[LookAlikes.Pairings];
        foreach (var seen in Signs)
        {
            foreach (var printed in Signs)
            {
                var cost = LookAlikes.Cost(seen, printed);
                table[LookAlikes.Pair(seen, printed)] =
                    cost == 0 ? 0 : cost < LookAlikes.Unlike ? LookAlikeLeast + (LookAlikeSlope * (float)cost) : Exchanged;
            }
        }

        return table;
    }
}
