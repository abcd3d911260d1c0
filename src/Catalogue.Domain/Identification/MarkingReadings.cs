using System.Globalization;
using Catalogue.Domain.Families;

namespace Catalogue.Domain.Identification;

/// <summary>Takes a marking apart: maker's name or logo in words, number, date and lot line, in whatever order they stand.</summary>
public static class MarkingReadings
{
    /// <summary>Longest marking that is looked at.</summary>
    public const int MaxMarkingLength = 500;

    /// <summary>The most readings of one marking.</summary>
    public const int MaxReadings = 16;

    private const int MaxLines = 8;

    /// <summary>
    /// The readings, the most usual first, no two with the same signs; empty where no letter or digit was read. Several lines are taken one by one,
    /// word by word, and two neighbours together in either order; <c> / </c> and <c>|</c> part lines too.
    /// </summary>
    /// <param name="marking">The marking as read, at most <see cref="MaxMarkingLength"/> characters.</param>
    /// <param name="isMaker">True for a word that names a maker, by <see cref="Makers.MakerName.Key"/>.</param>
    public static IReadOnlyList<MarkingReading> Of(string marking, Func<string, bool> isMaker)
    {
        ArgumentNullException.ThrowIfNull(marking);
        ArgumentNullException.ThrowIfNull(isMaker);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(marking.Length, MaxMarkingLength);
        var lines = Lines(marking);
        var readings = new List<MarkingReading>();
        var numbers = lines.Where(line => !IsWords(line) && !isMaker(line)).ToList();
        // Where nothing but words was read, the words are all there is.
        if (numbers.Count == 0)
            numbers = [.. lines];
        for (var i = 0; i < numbers.Count; i++)
        {
            var line = numbers[i];
            var where = numbers.Count == 1 && lines.Count == 1 ? "" : $"from the line '{line}'";
            Add(readings, line, where, numbers.Count == 1 ? 0 : LineCost(line));
            AddPeeled(readings, line);
            AddWords(readings, line, isMaker);
        }

        for (var i = 0; i + 1 < numbers.Count; i++)
        {
            // Half a number may look like a date.
            var unusual = IsDate(numbers[i]) || IsDate(numbers[i + 1]) ? 2f : 0;
            Add(readings, numbers[i] + numbers[i + 1], $"from '{numbers[i]}' and '{numbers[i + 1]}' together", 2.0f + unusual);
            Add(readings, numbers[i + 1] + numbers[i], $"from '{numbers[i + 1]}' and '{numbers[i]}' together, the lower line first", 2.4f + unusual);
        }

        foreach (var line in numbers)
            AddTurned(readings, line);
        return
        [
            .. readings
                .GroupBy(reading => reading.Signs, StringComparer.Ordinal)
                .Select(same => same.MinBy(reading => reading.Cost)!)
                .OrderBy(reading => reading.Cost)
                .ThenBy(reading => reading.Signs, StringComparer.Ordinal)
                .Take(MaxReadings),
        ];
    }

    /// <summary>The marking's lines that are read for numbers, folded, without empty ones; at most 8.</summary>
    public static IReadOnlyList<string> Lines(string marking) => [.. AllLines(marking).Take(MaxLines)];

    /// <summary>All of the marking's lines, folded, without empty ones.</summary>
    public static IReadOnlyList<string> AllLines(string marking)
    {
        ArgumentNullException.ThrowIfNull(marking);
        return
        [
            .. marking.Replace(" / ", "\n", StringComparison.Ordinal).Split(['\n', '\r', '|', '\u2028', '\u2029'], StringSplitOptions.RemoveEmptyEntries)
                .Select(MarkingFold.Line).Where(line => line.Length > 0),
        ];
    }

    /// <summary>True for a year and week such as <c>2317</c>, or week and year, with at most two lot signs behind.</summary>
    public static bool IsDate(string line)
    {
        ArgumentNullException.ThrowIfNull(line);
        if (line.Length is < 4 or > 6 || line.AsSpan(0, 4).ContainsAnyExceptInRange('0', '9'))
            return false;
        var (first, second) = (int.Parse(line.AsSpan(0, 2), CultureInfo.InvariantCulture), int.Parse(line.AsSpan(2, 2), CultureInfo.InvariantCulture));
        return second is >= 1 and <= 53 || first is >= 1 and <= 53;
    }

    // A logo described in words: no digit, and longer than any prefix.
    private static bool IsWords(string line) => !line.Any(char.IsAsciiDigit) && !line.Contains(MarkingFold.Unreadable) && (line.Contains(' ') || line.Length > 8);

    private static float LineCost(string line) => IsDate(line) ? 3.5f : line.Any(char.IsAsciiDigit) && line.Any(char.IsAsciiLetter) ? 0.3f : 1.5f;

    private static void Add(List<MarkingReading> readings, string text, string how, float cost)
    {
        var signs = MarkingFold.Signs(text);
        if (signs.Any(char.IsAsciiLetterOrDigit))
            readings.Add(new MarkingReading(signs, text, how, cost));
    }

    private static void AddPeeled(List<MarkingReading> readings, string line)
    {
        if (line.Contains(MarkingFold.Unreadable) || PartNumber.From(line) is not { } number)
            return;
        if (number.Base != line)
            Add(readings, number.Base, $"without its ending '{line[Math.Min(number.Base.Length, line.Length)..].TrimStart('-', '/', '#', ' ')}'", 0.4f);
        if (number.PossibleBase is { } cut)
            Add(readings, cut, "without its glued ending", 1.0f);
    }

    private static void AddWords(List<MarkingReading> readings, string line, Func<string, bool> isMaker)
    {
        var words = line.Split(' ', StringSplitOptions.RemoveEmptyEntries);
        if (words.Length < 2 || words.Length > 8)
            return;
        for (var i = 0; i < words.Length; i++)
        {
            if (words[i].Length >= 3 && words[i].Any(char.IsAsciiDigit) && !isMaker(words[i]))
                Add(readings, words[i], $"from the word '{words[i]}'", IsDate(words[i]) ? 4f : 1.2f);
        }

        if (isMaker(words[0]))
            Add(readings, string.Concat(words[1..]), $"without the maker '{words[0]}'", 0.2f);
    }

    // Only signs that are signs again upside down.
    private static void AddTurned(List<MarkingReading> readings, string line)
    {
        const string Upright = "01689HINOSXZMW";
        const string Turned = "01986HINOSXZWM";
        var signs = MarkingFold.Signs(line);
        if (signs.Length < 3 || !signs.All(sign => Upright.Contains(sign, StringComparison.Ordinal)))
            return;
        var turned = string.Create(signs.Length, signs, static (text, signs) =>
        {
            for (var i = 0; i < text.Length; i++)
                text[i] = Turned[Upright.IndexOf(signs[^(i + 1)], StringComparison.Ordinal)];
        });
        Add(readings, turned, $"from '{line}' turned upside down", 4f);
    }
}
