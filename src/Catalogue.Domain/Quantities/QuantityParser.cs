using System.Text;

namespace Catalogue.Domain.Quantities;

/// <summary>Reads the quantities in what people write: on labels, in lists, in fields.</summary>
/// <remarks>
/// <para>The grammar, what is refused and why, and worked examples: <c>docs/figures/quantities.md</c>. Nothing is guessed: a capital M is never
/// milli, a mark before three digits is never decided alone, a number without unit is one only where the kind of part says which.</para>
/// <para>Source: SI brochure for units and prefixes, IEC 60062 for letters at the decimal mark; what is ambiguous is a house rule.</para>
/// </remarks>
public static class QuantityParser
{
    /// <summary>Longer texts are no quantity.</summary>
    public const int MaxLength = 500;

    /// <summary>The most a field for one quantity takes.</summary>
    public const int MaxFieldLength = 64;

    private const int MostAlternatives = 8;

    /// <summary>Reads all quantities of a text.</summary>
    /// <param name="text">As typed. What no quantity takes is handed back, never dropped.</param>
    /// <param name="kind">What kind of part it speaks of, if known: it gives bare numbers and codes a meaning.</param>
    public static QuantityReading Read(string? text, PartKind kind = PartKind.NotSaid) => Read(text, kind, null);

    /// <summary>Reads the quantities in a free description: only numbers with their units count, no codes.</summary>
    internal static QuantityReading ReadProse(string? text, PartKind kind) => Read(text, kind, null, isProse: true);

    /// <summary>Reads the one value of a field; a bare number is taken in the unit of the field. A field of times takes hours too, such as <c>2000 h</c>.</summary>
    /// <param name="text">As typed.</param>
    /// <param name="assumed">The unit to take where the text has none, or null to refuse it.</param>
    /// <returns>
    /// Read with exactly one quantity that has a value and may have a spread; else the alternatives or the reason. The caller checks the unit: it
    /// may be another one than the assumed.
    /// </returns>
    public static QuantityReading ReadOne(string? text, Unit? assumed = null)
    {
        if (assumed is Unit.Second && WithoutHours(text) is { } number)
            return InSeconds(text!, ReadOne(number, Unit.Second));
        var reading = Read(text, PartKind.NotSaid, assumed);
        return reading switch
        {
            QuantityReading.Read { Unread: [var first, ..] } => new QuantityReading.Refused($"“{first}” could not be read; {KnownUnits}."),
            QuantityReading.Ambiguous { Unread: [var first, ..] } => new QuantityReading.Refused($"“{first}” could not be read; {KnownUnits}."),
            QuantityReading.Read { Quantities.Count: > 1 } => new QuantityReading.Refused($"“{Shorten(text)}” holds several quantities; this field takes one."),
            QuantityReading.Read { Quantities: [{ Quantity.Value: null }] } => new QuantityReading.Refused($"“{Shorten(text)}” is a range; this field takes one value, with its spread if need be, such as 5 V ± 5 %."),
            QuantityReading.Read { Quantities: [{ Quantity.Count: > 1 }] } => new QuantityReading.Refused($"“{Shorten(text)}” counts several; this field takes the value of one."),
            _ => reading,
        };
    }

    // What stands before the hours, or null. Only a field of times takes them: elsewhere an h may be a henry.
    private static string? WithoutHours(string? text)
    {
        var plain = text?.TrimEnd() ?? "";
        foreach (var word in (ReadOnlySpan<string>)["hours", "hour", "hrs", "h"])
            if (plain.EndsWith(word, StringComparison.OrdinalIgnoreCase) && plain[..^word.Length].TrimEnd() is { Length: > 0 } before && char.IsAsciiDigit(before[^1]))
                return before;
        return null;
    }

    private static QuantityReading InSeconds(string text, QuantityReading hours)
    {
        const double seconds = 3600;
        return hours switch
        {
            QuantityReading.Read { Quantities: [{ Quantity: { Value: { } value, Low: { } low, High: { } high, Unit: Unit.Second } } found] } read when double.IsFinite(high * seconds) && double.IsFinite(low * seconds) =>
                read with { Quantities = [found with { Quantity = Quantity.Between(low * seconds, value * seconds, high * seconds, Unit.Second) }] },
            QuantityReading.Refused => hours,
            _ => new QuantityReading.Refused($"“{Shorten(text)}” is no plain number of hours; write it as 2000 h."),
        };
    }

    /// <summary>Reads a text that leaves nothing open, without allocating unless it holds a code.</summary>
    /// <param name="text">As typed.</param>
    /// <param name="quantities">Takes what is read, in written order; 32 are enough.</param>
    /// <param name="count">How many were read.</param>
    /// <param name="kind">What kind of part it speaks of, if known.</param>
    /// <returns>False where something was ambiguous, impossible or left unread; <see cref="Read(string?, PartKind)"/> says what.</returns>
    public static bool TryRead(ReadOnlySpan<char> text, Span<FoundQuantity> quantities, out int count, PartKind kind = PartKind.NotSaid)
    {
        count = 0;
        if (text.IsEmpty || text.Length > MaxLength)
            return false;
        if (FoldedText.IsFolded(text))
            return TryReadFolded(text, quantities, out count, kind);
        Span<char> folded = stackalloc char[text.Length];
        text.CopyTo(folded);
        foreach (var c in folded)
            if (FoldedText.IsSquared(c) || char.IsSurrogate(c))
                return false;
        FoldedText.Fold(folded);
        return TryReadFolded(folded, quantities, out count, kind);
    }

    private static bool TryReadFolded(ReadOnlySpan<char> folded, Span<FoundQuantity> quantities, out int count, PartKind kind)
    {
        Span<DecimalNumber> written = stackalloc DecimalNumber[Math.Min(quantities.Length, QuantityScanner.MaxQuantities)];
        Span<(int, int)> unread = stackalloc (int, int)[1];
        var scanner = new QuantityScanner(folded, kind, null, default, quantities[..written.Length], written, unread);
        scanner.Run();
        count = scanner.Count;
        return count > 0 && scanner is { UnreadCount: 0, Refusal: null, Doubts: ScanDoubts.None };
    }

    private static string KnownUnits { get; } = $"known units are {string.Join(", ", UnitSymbols.Codes)}, with p n µ m k M G before them";

    private static QuantityReading Read(string? text, PartKind kind, Unit? assumed, bool isProse = false)
    {
        if (string.IsNullOrWhiteSpace(text))
            return new QuantityReading.Refused("Nothing was given; a number and a unit are needed, such as 35 A.");
        if (text.Length > MaxLength)
            return new QuantityReading.Refused($"A text with quantities has at most {MaxLength} characters.");
        if (!IsWellFormed(text))
            return new QuantityReading.Refused("The text holds broken characters.");

        var (wide, places) = text.AsSpan().IndexOfAnyInRange('\u3300', '\u33FF') >= 0 ? FoldedText.Widen(text) : (text, null);
        var folded = wide.ToCharArray();
        FoldedText.Fold(folded);

        var plain = default(ScanChoices) with { IsProse = isProse };
        var codes = plain with { TakesCodes = true };
        var first = Scan(folded, kind, assumed, plain);
        // A number without unit is the value only where the text has none that carries its unit.
        if (first.Refusal is null && assumed is null && !isProse && kind.ValueUnit() is { } unit && first.Found.All(found => found.Quantity.Unit != unit) && Scan(folded, kind, assumed, codes) is { Found.Length: > 0 } withCodes)
            first = withCodes;
        else
            codes = plain;
        if (first.Refusal is { } refusal)
            return new QuantityReading.Refused(refusal);
        var unread = first.Unread.Select(piece => text[Place(places, piece.Start)..Place(places, piece.End)]).ToArray();
        if (first.Found.Length == 0)
            return new QuantityReading.Refused(Reason(text, first, kind));
        var quantities = Placed(first.Found, places);
        if (first.Doubts is ScanDoubts.None)
            return new QuantityReading.Read(quantities, unread, []);

        var alternatives = Alternatives(folded, kind, assumed, codes, first, places);
        return alternatives.Count == 1 || (first.Doubts is ScanDoubts.Code && first.IsFirstCodePreferred)
            ? new QuantityReading.Read(alternatives[0].Quantities, unread, alternatives.Count == 1 ? [] : alternatives)
            : new QuantityReading.Ambiguous(alternatives, unread);
    }

    private static List<QuantityAlternative> Alternatives(char[] folded, PartKind kind, Unit? assumed, ScanChoices codes, Pass first, int[]? places)
    {
        var alternatives = new List<QuantityAlternative>();
        for (var i = 0; i < Ways(first, ScanDoubts.Code, first.Codes); i++)
            for (var j = 0; j < Ways(first, ScanDoubts.BareUnit, first.BareUnits); j++)
                for (var k = 0; k < Ways(first, ScanDoubts.Prefix, 2); k++)
                    for (var l = 0; l < Ways(first, ScanDoubts.OldOhm, 2); l++)
                        for (var m = 0; m < Ways(first, ScanDoubts.Mark, 2) && alternatives.Count < MostAlternatives; m++)
                        {
                            var pass = Scan(folded, kind, assumed, codes with { Code = i, BareUnit = j, Prefix = k, OldOhm = l, Mark = m });
                            if (pass.Refusal is not null || pass.Found.Length == 0)
                                continue;
                            var words = string.Join(", ", pass.Found.Select(found => QuantityText.Exact(found.Quantity)));
                            if (alternatives.TrueForAll(other => other.Text != words))
                                alternatives.Add(new QuantityAlternative(words, Placed(pass.Found, places), Why(first.Doubts, pass.CodeNote, m, l)));
                        }

        return alternatives;
    }

    private static int Ways(Pass pass, ScanDoubts doubt, int ways) => pass.Doubts.HasFlag(doubt) ? Math.Max(1, ways) : 1;

    private static string Why(ScanDoubts doubts, string? code, int mark, int oldOhm)
    {
        var reasons = new List<string>(2);
        if (doubts.HasFlag(ScanDoubts.Code) && code is not null)
            reasons.Add(code);
        if (doubts.HasFlag(ScanDoubts.Mark))
            reasons.Add(mark == 0 ? "decimal mark" : "groups of thousands");
        if (doubts.HasFlag(ScanDoubts.OldOhm))
            reasons.Add(oldOhm == 0 ? "E as the decimal mark of ohms" : "E as an exponent");
        return string.Join(", ", reasons);
    }

    private static string Reason(string text, Pass pass, PartKind kind) =>
        pass.HasBareNumber && kind is PartKind.NotSaid ? $"“{Shorten(text)}” has a number but no unit known here; write it, such as 35 A ({KnownUnits})."
        : pass.HasBareNumber ? $"“{Shorten(text)}” has a number without a unit, and for a {kind.Word()} that does not say what it is; write the unit."
        : $"“{Shorten(text)}” holds no quantity; a number and a unit are needed, such as 35 A.";

    private static FoundQuantity[] Placed(FoundQuantity[] found, int[]? places) => places is null
        ? found
        : [
            .. found.Select(one => one with
            {
                Start = places[one.Start],
                Length = places[one.Start + one.Length] - places[one.Start],
                ToleranceStart = places[one.ToleranceStart],
                ToleranceLength = places[one.ToleranceStart + one.ToleranceLength] - places[one.ToleranceStart],
            }),
        ];

    private static int Place(int[]? places, int at) => places is null ? at : places[at];

    private sealed record Pass(FoundQuantity[] Found, (int Start, int End)[] Unread, ScanDoubts Doubts, string? Refusal, int BareUnits, int Codes, bool IsFirstCodePreferred, string? CodeNote, bool HasBareNumber);

    private static Pass Scan(char[] folded, PartKind kind, Unit? assumed, ScanChoices choices)
    {
        Span<FoundQuantity> found = new FoundQuantity[QuantityScanner.MaxQuantities];
        Span<DecimalNumber> written = stackalloc DecimalNumber[QuantityScanner.MaxQuantities];
        Span<(int, int)> unread = stackalloc (int, int)[QuantityScanner.MaxUnread];
        var scanner = new QuantityScanner(folded, kind, assumed, choices, found, written, unread);
        scanner.Run();
        return new Pass(
            found[..scanner.Count].ToArray(),
            unread[..scanner.UnreadCount].ToArray(),
            scanner.Doubts,
            scanner.Refusal,
            scanner.BareUnits,
            scanner.Codes,
            scanner.IsFirstCodePreferred,
            scanner.CodeNote,
            scanner.HasBareNumber);
    }

    private static string Shorten(string? text) => text is null ? "" : text.Trim() is var trimmed && trimmed.Length > 40 ? trimmed[..40] + "…" : trimmed;

    private static bool IsWellFormed(string text)
    {
        for (var i = 0; i < text.Length; i++)
        {
            if (!Rune.TryGetRuneAt(text, i, out var rune))
                return false;
            i += rune.Utf16SequenceLength - 1;
        }

        return true;
    }
}
