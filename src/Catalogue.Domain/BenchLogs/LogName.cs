using System.Collections.Frozen;
using System.Globalization;
using System.Text;

namespace Catalogue.Domain.BenchLogs;

/// <summary>What the name of a column says, in English, German, French, Spanish, Chinese and Japanese.</summary>
/// <param name="Quantity">The quantity its words name; none where they name none.</param>
/// <param name="Unit">The unit it carries, or null.</param>
/// <param name="Marks">What else its words say.</param>
internal sealed record LogName(LogQuantity Quantity, LogUnit? Unit, LogName.Mark Marks)
{
    [Flags]
    public enum Mark
    {
        None = 0,
        Input = 1,
        Output = 2,
        Set = 4,
        Derived = 8,
        Date = 16,
        Segment = 32,
        Value = 64,
        UnitName = 128,
        Elapsed = 256,
        BareSymbol = 512,
        UnitOnly = 1024,
        Alternating = 2048,
        Place = 4096,
    }

    private const int LongestName = 120;

    private static readonly FrozenDictionary<string, LogQuantity> Quantities = Table(
        (LogQuantity.Voltage, "voltage volt volts spannung tension voltaje vbus vbat vcell vload vdc vmeas vmess"),
        (LogQuantity.Current, "current amps amp ampere amperes amperage strom stromstarke courant intensite corriente intensidad ibus ibat icell iload idc imeas imess"),
        (LogQuantity.Power, "power watt watts leistung puissance potencia pbus pbat pload"),
        (LogQuantity.Charge, "charge capacity kapazitat ladung capacite capacidad carga mah ah"),
        (LogQuantity.Energy, "energy energie energia arbeit wh mwh kwh"),
        (LogQuantity.Temperature, "temp temperature temperatur temperatura"),
        (LogQuantity.Resistance, "resistance widerstand resistencia"),
        (LogQuantity.Time, "time timestamp datetime zeit zeitstempel uhrzeit zeitpunkt temps heure horodatage tiempo hora elapsed runtime laufzeit dauer duration duree duracion seconds sekunden millis micros"));

    private static readonly FrozenDictionary<string, Mark> Marked = Table(
        (Mark.Input, "in input eingang entree entrada primary primar mains netz"),
        (Mark.Output, "out output ausgang sortie salida measured meas ist istwert mesure medido actual messwert"),
        (Mark.Set, "set setpoint soll sollwert target limit consigne cible consigna objetivo programmed nominal vorgabe"),
        (Mark.Derived, "min max peak shunt ripple noise offset delta diff error accuracy range ratio efficiency wirkungsgrad factor"),
        (Mark.Date, "date datum fecha datetime timestamp zeitstempel horodatage"),
        (Mark.Segment, "segment recordingsegment section abschnitt cycle zyklus cycleindex stepindex step schritt paso"),
        (Mark.Value, "value wert messwert reading valeur valor lectura"),
        (Mark.UnitName, "unit units einheit unite unidad"),
        (Mark.Alternating, "ac vac aac rms vrms irms urms"),
        (Mark.Place, "load bus bat batt battery akku cell zelle pack usb port dc ch channel kanal"),
        (Mark.Elapsed, "elapsed relative relativetime runtime laufzeit dauer duration duree duracion totaltime"));

    // Written without blanks between words, so they are looked for anywhere.
    private static readonly (string Word, LogQuantity Quantity, Mark Mark)[] Ideographs =
    [
        ("电压", LogQuantity.Voltage, Mark.None), ("電圧", LogQuantity.Voltage, Mark.None), ("電壓", LogQuantity.Voltage, Mark.None),
        ("电流", LogQuantity.Current, Mark.None), ("電流", LogQuantity.Current, Mark.None),
        ("功率", LogQuantity.Power, Mark.None), ("電力量", LogQuantity.Energy, Mark.None), ("電力", LogQuantity.Power, Mark.None),
        ("容量", LogQuantity.Charge, Mark.None), ("电量", LogQuantity.Charge, Mark.None), ("能量", LogQuantity.Energy, Mark.None), ("エネルギー", LogQuantity.Energy, Mark.None),
        ("温度", LogQuantity.Temperature, Mark.None), ("電阻", LogQuantity.Resistance, Mark.None), ("电阻", LogQuantity.Resistance, Mark.None), ("抵抗", LogQuantity.Resistance, Mark.None),
        ("时间", LogQuantity.Time, Mark.None), ("時間", LogQuantity.Time, Mark.None), ("時刻", LogQuantity.Time, Mark.None), ("日時", LogQuantity.Time, Mark.Date),
        ("日期", LogQuantity.None, Mark.Date), ("日付", LogQuantity.None, Mark.Date), ("经过", LogQuantity.None, Mark.Elapsed), ("経過", LogQuantity.None, Mark.Elapsed),
        ("设定", LogQuantity.None, Mark.Set), ("設定", LogQuantity.None, Mark.Set), ("输入", LogQuantity.None, Mark.Input), ("入力", LogQuantity.None, Mark.Input),
        ("输出", LogQuantity.None, Mark.Output), ("出力", LogQuantity.None, Mark.Output), ("单位", LogQuantity.None, Mark.UnitName), ("単位", LogQuantity.None, Mark.UnitName),
        ("数值", LogQuantity.None, Mark.Value), ("測定値", LogQuantity.None, Mark.Value),
    ];

    private static readonly FrozenDictionary<string, Mark> SymbolTails = Table(
        (Mark.Set, "set soll"), (Mark.Input, "in ein"), (Mark.Output, "out aus ist meas"), (Mark.Derived, "max min pk pp"), (Mark.None, "avg mean mittel rms dc ac"));

    // German writes two words as one.
    private static readonly (string Tail, LogQuantity Quantity)[] CompoundTails =
    [
        ("spannung", LogQuantity.Voltage), ("strom", LogQuantity.Current), ("leistung", LogQuantity.Power), ("temperatur", LogQuantity.Temperature), ("kapazitat", LogQuantity.Charge),
        ("energie", LogQuantity.Energy), ("zeit", LogQuantity.Time),
    ];

    private static readonly (string Head, Mark Mark)[] CompoundHeads = [("soll", Mark.Set), ("ziel", Mark.Set), ("eingangs", Mark.Input), ("ausgangs", Mark.Output), ("ist", Mark.Output)];

    public static LogName Read(string name)
    {
        if (name.Length is 0 or > LongestName)
            return new LogName(LogQuantity.None, null, Mark.None);
        var (words, unit) = SplitUnit(name.Trim());
        var quantity = LogQuantity.None;
        var marks = Mark.None;
        foreach (var (word, meant, mark) in Ideographs)
        {
            if (!name.Contains(word, StringComparison.Ordinal))
                continue;
            quantity = quantity == LogQuantity.None || (meant != LogQuantity.None && meant == unit?.Quantity) ? meant : quantity;
            marks |= mark;
        }

        var tokens = Tokens(words);
        marks |= Tokens(name).Any(token => Marked.GetValueOrDefault(token).HasFlag(Mark.Alternating)) ? Mark.Alternating : Mark.None;
        foreach (var token in tokens)
        {
            if (Quantities.TryGetValue(token, out var meant))
                quantity = Prefer(quantity, meant, unit);
            if (Marked.TryGetValue(token, out var mark))
                marks |= mark;
            if (Compound(token) is { Quantity: not LogQuantity.None } compound)
                (quantity, marks) = (Prefer(quantity, compound.Quantity, unit), marks | compound.Mark);
            if (Symbol(token) is var (symbol, tail) && symbol != LogQuantity.None && (unit is null || unit.Quantity == symbol))
            {
                quantity = Prefer(quantity, symbol, unit);
                marks |= tail;
            }
        }

        if (unit is null && tokens.Length > 1 && LastWordAsUnit(words, quantity) is { } last)
            (unit, quantity) = (last, quantity == LogQuantity.None || tokens.Any(token => Quantities.GetValueOrDefault(token) == last.Quantity) ? last.Quantity : quantity);
        if (unit is null && LogUnit.Find(name.Trim()) is { } whole && whole.Quantity is not LogQuantity.Temperature and not LogQuantity.Other)
            return new LogName(whole.Quantity, whole, marks | Mark.UnitOnly);
        unit ??= tokens.Where(token => token.Length > 3).Select(LogUnit.Find).FirstOrDefault(found => found is not null && found.Quantity == quantity);
        if (unit is null && tokens is [var only] && Symbol(only).Quantity != LogQuantity.None)
            marks |= Mark.BareSymbol;
        return new LogName(quantity, unit, marks);
    }

    private static (LogQuantity Quantity, Mark Mark) Compound(string token)
    {
        foreach (var (tail, quantity) in CompoundTails)
            if (token.Length > tail.Length && token.EndsWith(tail, StringComparison.Ordinal))
                return (quantity, CompoundHeads.FirstOrDefault(entry => token.StartsWith(entry.Head, StringComparison.Ordinal)).Mark);
        return default;
    }

    // “charge current”, “power supply voltage”: the unit decides, else the later word.
    private static LogQuantity Prefer(LogQuantity before, LogQuantity now, LogUnit? unit) =>
        unit is not null && before == unit.Quantity ? before : now;

    private static (string Words, LogUnit? Unit) SplitUnit(string name)
    {
        var words = name.Replace('（', '(').Replace('）', ')').Replace('【', '[').Replace('】', ']');
        for (var end = words.Length - 1; end > 0; end--)
        {
            if (words[end] is not (')' or ']' or '>' or '}'))
                continue;
            var start = words.LastIndexOfAny(['(', '[', '<', '{'], end);
            if (start < 0)
                break;
            if (LogUnit.Find(words[(start + 1)..end]) is { } unit)
                return (words[..start] + words[(end + 1)..], unit);
            end = start;
        }

        foreach (var separator in (ReadOnlySpan<string>)["/", " in ", " en ", ",", ":", " "])
            if (words.LastIndexOf(separator, StringComparison.Ordinal) is > 0 and var at && LogUnit.Find(words[(at + separator.Length)..]) is { } unit
                && (separator != " " || words.Length - at > 2 || unit.Text.Length > 1 || char.IsUpper(words[^1])))
                return (words[..at], unit);
        return (words, null);
    }

    // A last word such as the c of “temperature_c” is a unit only where another word names its quantity, or where it can be nothing else.
    private static LogUnit? LastWordAsUnit(string words, LogQuantity quantity)
    {
        var at = words.LastIndexOfAny(['_', '.', '-']);
        if (at <= 0 || LogUnit.Find(words[(at + 1)..]) is not { } unit)
            return null;
        var others = Tokens(words[..at]);
        var agrees = unit.Quantity == quantity || others.Any(token => Quantities.GetValueOrDefault(token) == unit.Quantity || Symbol(token).Quantity == unit.Quantity
            || (unit.Quantity is LogQuantity.Voltage or LogQuantity.Current or LogQuantity.Power && (Marked.GetValueOrDefault(token) & (Mark.Input | Mark.Output | Mark.Set | Mark.Place)) != 0));
        return agrees || (unit.Text.Length > 1 && unit.Quantity != LogQuantity.Other) ? unit : null;
    }

    private static (LogQuantity Quantity, Mark Mark) Symbol(string token)
    {
        if (token.Length == 0)
            return default;
        var quantity = token[0] switch
        {
            'u' or 'v' => LogQuantity.Voltage,
            'i' => LogQuantity.Current,
            'p' => LogQuantity.Power,
            't' when token.Length == 1 => LogQuantity.Time,
            _ => LogQuantity.None,
        };
        if (quantity == LogQuantity.None || token.Length == 1)
            return (quantity, Mark.None);
        return SymbolTails.TryGetValue(token[1..], out var mark) ? (quantity, mark) : default;
    }

    private static string[] Tokens(string words)
    {
        var plain = new StringBuilder(words.Length + 8);
        var before = ' ';
        foreach (var letter in words.Normalize(NormalizationForm.FormD))
        {
            if (CharUnicodeInfo.GetUnicodeCategory(letter) == UnicodeCategory.NonSpacingMark)
                continue;
            if (!char.IsLetter(letter) || (char.IsUpper(letter) && char.IsLower(before)))
                plain.Append(' ');
            if (char.IsLetter(letter))
                plain.Append(char.ToLowerInvariant(letter));
            before = letter;
        }

        return plain.ToString().Split(' ', StringSplitOptions.RemoveEmptyEntries);
    }

    private static FrozenDictionary<string, T> Table<T>(params (T Meaning, string Words)[] rows)
        where T : struct, Enum
    {
        var table = new Dictionary<string, T>();
        foreach (var (meaning, words) in rows)
            foreach (var word in words.Split(' '))
                table[word] = table.TryGetValue(word, out var other) && typeof(T) == typeof(Mark) ? (T)(object)((Mark)(object)other | (Mark)(object)meaning) : meaning;
        return table.ToFrozenDictionary();
    }
}
