using System.Globalization;
using System.Text.RegularExpressions;
using Catalogue.Domain.Families;
using Catalogue.Domain.Text;

namespace Catalogue.Domain.Components.Lists;

/// <summary>Reads part lines into rows.</summary>
internal sealed partial class ListRowReader
{
    private const int MostExpanded = 500_000;
    private const int FewestRowsToCompare = 4;

    // Where a note that the part is not fitted may stand outside the value and the columns made for it.
    private static readonly ColumnMeaning[] FreeTexts =
        [ColumnMeaning.Designators, ColumnMeaning.Description, ColumnMeaning.Remarks, ColumnMeaning.Variant, ColumnMeaning.PartNumber];

    // A code in one of these columns is never a date or a number with an exponent: what the spreadsheet made of it is asked for.
    private static readonly ColumnMeaning[] Codes =
        [ColumnMeaning.Designators, ColumnMeaning.PartNumber, ColumnMeaning.SupplierPartNumber, ColumnMeaning.Package, ColumnMeaning.Maker];

    private readonly ListColumns _columns;
    private readonly string? _sheet;
    private readonly List<OpenReading> _readings = [];
    private readonly HashSet<MergedCell> _shared;
    private readonly bool _decimalCommas;
    private readonly int _onlyEmptyEnd = -1;
    private readonly HashSet<int> _yesColumns;
    private int _expanded;

    public ListRowReader(ListColumns columns, IReadOnlyList<PartLine> parts, string? sheet)
    {
        _columns = columns;
        _sheet = sheet;
        _shared = [.. parts.SelectMany(part => part.Line.Merged).Where(merged => merged.IsTall).GroupBy(merged => merged).Where(group => group.Skip(1).Any()).Select(group => group.Key)];
        var value = columns.First(ColumnMeaning.Value);
        _decimalCommas = value >= 0 && parts.Any(part => DecimalComma().IsMatch(part.Cells[value]));
        _yesColumns = [.. columns.Columns(ColumnMeaning.Fitted).Where(column => parts.Any(part => FittingMarks.IsYes(part.Cells[column])))];
        var last = columns.All.Count - 1;
        if (parts.Count >= FewestRowsToCompare)
        {
            var empty = parts.Where(part => string.IsNullOrWhiteSpace(part.Cells[last])).Take(2).ToList();
            _onlyEmptyEnd = empty.Count == 1 ? empty[0].LineNumber : -1;
        }
    }

    /// <summary>Cells of the rows read so far that may be read in more than one way.</summary>
    public IReadOnlyList<OpenReading> Readings => _readings;

    /// <summary>What an imported row said when it was imported; null where it is not known how its cells were understood.</summary>
    public static ListRow? ReadAgain(IReadOnlyList<ImportedCell> cells)
    {
        if (!cells.Any(cell => cell.Meaning is not null))
        {
            return null;
        }
        string[] texts = [.. cells.Select(cell => cell.Text)];
        var part = new PartLine(1, texts, [], new ListLine(1, texts, texts.Length, null, false, false));
        return new ListRowReader(ListColumns.Of(cells), [part], null).Read(part);
    }

    public ListRow Read(PartLine part)
    {
        var remarks = new List<string>(part.Remarks);
        var asRead = AsRead(part);
        part = WithoutWhatSpreadsheetsMade(part, remarks);
        SayShared(part, remarks);
        var quantityText = Text(part, ColumnMeaning.Quantity);
        var (written, quantityRemark) = quantityText is null ? (null, null) : WrittenQuantity.Read(quantityText);
        Add(remarks, quantityRemark);
        var designatorText = Text(part, ColumnMeaning.Designators);
        var designators = ReadDesignators(designatorText, written, remarks);
        var quantity = QuantityOf(part, quantityText, written, designators, remarks);
        var value = Text(part, ColumnMeaning.Value);
        var fitted = IsFitted(part, value, remarks, out var plainValue);
        var package = Named(Text(part, ColumnMeaning.Package), "package", remarks);
        CheckValue(part, plainValue, value, package, designators, remarks);
        var (maker, number, alternatives) = MakerAndNumber(part, remarks);
        if (Text(part, ColumnMeaning.Variant) is { } variant)
        {
            remarks.Add($"belongs to variant {variant}");
        }
        if (part.LineNumber == _onlyEmptyEnd)
        {
            remarks.Add($"the last column, {_columns.All[^1].Key}, is empty here alone");
        }
        return new ListRow
        {
            LineNumber = part.LineNumber,
            Sheet = _sheet,
            Designators = designators?.Names ?? [],
            DesignatorsAsWritten = designatorText,
            Quantity = quantity,
            QuantityAsWritten = quantityText,
            Value = PlaceholderText.IsPlaceholder(value) || plainValue.Length == 0 ? null : value,
            PartNumber = number,
            Maker = maker,
            Package = package,
            Description = Text(part, ColumnMeaning.Description),
            Role = Text(part, ColumnMeaning.Role),
            Fitted = fitted,
            Alternatives = alternatives,
            AsRead = asRead,
            Warnings = [.. remarks.Distinct(StringComparer.Ordinal)],
        };
    }

    private DesignatorList? ReadDesignators(string? text, int? quantity, List<string> remarks)
    {
        if (!_columns.Has(ColumnMeaning.Designators))
        {
            return null;
        }
        if (_expanded > MostExpanded)
        {
            remarks.Add("the list has too many designators: these are kept as written");
            return null;
        }
        var list = DesignatorList.Read(text is null ? null : FittingMarks.WithoutMarks(text), quantity);
        _expanded += list.Names.Count;
        remarks.AddRange(list.Warnings);
        return list;
    }

    private int? QuantityOf(PartLine part, string? text, int? written, DesignatorList? designators, List<string> remarks)
    {
        var counted = designators is { IsComplete: true, Names.Count: > 0 } ? designators.Names.Count : (int?)null;
        var column = _columns.First(ColumnMeaning.Quantity);
        if (column >= 0 && part.Line.Doubts.OfType<CellDoubt.NoStoredResult>().FirstOrDefault(doubt => doubt.Column == column) is { } formula)
        {
            // Whoever counts the designators counts as the formula does; what is fetched from elsewhere may be any number.
            var counts = counted is not null && CellFormula.ReadsOnly(formula.Formula, part.LineNumber, _columns.First(ColumnMeaning.Designators));
            remarks.Add(counts
                ? "the quantity is a formula whose result is not stored: counted from the designators"
                : $"the quantity is a formula whose result is not stored{(formula.Formula.Length == 0 ? "" : $" (={Short(formula.Formula)})")}: not known");
            return counts ? counted : null;
        }
        if (written is { } together && column >= 0 && SharedOver(part, column) is { } merged)
        {
            var question = $"the quantity {together} is merged over rows {Spelled(merged.Span.FirstRow)} to {Spelled(merged.Span.LastRow)}: for each of them or for all together? ask";
            Ask(part, column, merged.Text, [$"{Spelled(together)} for each", $"{Spelled(together)} for all together"], question, remarks);
            return counted;
        }
        if (written is not null)
        {
            if (counted is { } count && count != written && written != 0)
            {
                remarks.Add(string.Create(
                    CultureInfo.InvariantCulture,
                    $"{count} designator{(count == 1 ? "" : "s")} but quantity {written}: the quantity is kept as written"));
            }
            return written;
        }
        if (text is not null)
        {
            return null;
        }
        if (!_columns.Has(ColumnMeaning.Quantity))
        {
            return counted ?? (_columns.Has(ColumnMeaning.Designators) ? null : 1);
        }
        remarks.Add(counted is null ? "the quantity is not known" : "no quantity: counted from the designators");
        return counted;
    }

    private bool IsFitted(PartLine part, string? value, List<string> remarks, out string plainValue)
    {
        var fitted = true;
        plainValue = value ?? "";
        if (value is not null && FittingMarks.InValue(value) is { } mark)
        {
            fitted = false;
            plainValue = mark.Remainder;
            remarks.Add(mark.Sure ? $"not fitted (“{mark.Mark}” in the value)" : $"taken as not fitted because of “{mark.Mark}” in the value: check");
        }
        foreach (var column in _columns.Columns(ColumnMeaning.NotFitted))
        {
            var cell = Cell(part, column) ?? "";
            var (empty, sure) = FittingMarks.UnderNotFitted(cell);
            fitted &= empty != true;
            Add(remarks, (empty, sure) switch
            {
                (true, true) => $"not fitted (“{cell}” under {_columns.All[column].Key})",
                (true, false) => $"taken as not fitted because of a mere “{cell}” under {_columns.All[column].Key}: check",
                (null, _) => $"“{Short(cell)}” under {_columns.All[column].Key} is not understood: taken as fitted",
                _ => null,
            });
        }
        foreach (var column in _columns.Columns(ColumnMeaning.Fitted))
        {
            var cell = Cell(part, column) ?? "";
            if (cell.Length == 0 && _yesColumns.Contains(column))
            {
                remarks.Add($"empty under {_columns.All[column].Key}, where other rows say yes: taken as fitted, check");
            }
            else if (FittingMarks.UnderFitted(cell))
            {
                fitted = false;
                remarks.Add($"not fitted (“{cell}” under {_columns.All[column].Key})");
            }
        }
        var texts = FreeTexts.Select(meaning => Text(part, meaning));
        if (fitted && texts.FirstOrDefault(text => text is not null && FittingMarks.InText(text)) is { } note)
        {
            fitted = false;
            remarks.Add($"taken as not fitted because of a remark (“{Short(note)}”): check");
        }
        return fitted;
    }

    private void CheckValue(PartLine part, string plainValue, string? value, string? package, DesignatorList? designators, List<string> remarks)
    {
        if (!_columns.Has(ColumnMeaning.Value))
        {
            return;
        }
        if (value is null || plainValue.Length == 0 || PlaceholderText.IsPlaceholder(plainValue))
        {
            remarks.Add(value is null || plainValue.Length == 0 ? "no value" : $"“{value}” is no value");
            return;
        }
        if (designators is not { Names: [var first, ..] } || PrefixOf(first) is not ("R" or "C" or "L") || PrefixOf(first) is not { } prefix)
        {
            return;
        }
        if (PlainNumber().IsMatch(plainValue))
        {
            remarks.Add("the value has no unit");
        }
        else if (prefix is not "L" && !HasNumberBesidePackage(plainValue, package))
        {
            remarks.Add("no value");
        }
        if (_decimalCommas && ThousandsPoint().IsMatch(plainValue))
        {
            Ask(
                part,
                _columns.First(ColumnMeaning.Value),
                value,
                [plainValue.Replace(".", "", StringComparison.Ordinal), WithoutZeros(plainValue)],
                $"“{plainValue}” may have a thousands point, for other values have decimal commas: ask",
                remarks);
        }
        if (package is [var kind and ('R' or 'C' or 'L'), '_' or '-', ..] && kind != prefix[0])
        {
            remarks.Add($"{first} stands on the footprint {package}, which is for another kind of part");
        }
    }

    private static bool HasNumberBesidePackage(string value, string? package) =>
        value.Split(' ').Any(word => word.Any(char.IsAsciiDigit) && package?.Contains(word, StringComparison.OrdinalIgnoreCase) != true);

    private (string? Maker, string? Number, IReadOnlyList<MakersPart> Alternatives) MakerAndNumber(PartLine part, List<string> remarks)
    {
        var makers = _columns.Columns(ColumnMeaning.Maker);
        var numbers = _columns.Columns(ColumnMeaning.PartNumber);
        var makerNames = makers.ConvertAll(column => Named(Cell(part, column), "maker", remarks));
        var partNumbers = numbers.ConvertAll(column => Named(Cell(part, column), "part number", remarks));
        if (makers.Count > 0 && numbers.Count > 0 && makers.Concat(numbers).All(column => Cell(part, column) is null && !part.Line.Doubts.Any(doubt => doubt.Column == column)))
        {
            remarks.Add("no maker and no part number");
        }
        // As many makers as numbers stand in pairs; else the first maker given made the first number given.
        var found = makers.Count == numbers.Count
            ? makerNames.Zip(partNumbers, (maker, number) => new MakersPart(maker, number)).ToList()
            : [new MakersPart(makerNames.Find(IsGiven), partNumbers.Find(IsGiven)), .. Others(makerNames, partNumbers)];
        found.RemoveAll(each => each is { Maker: null, PartNumber: null });
        return found is [var first, .. var others]
            ? (first.Maker, first.PartNumber, others.Distinct().Where(other => other != first).ToList())
            : (null, null, []);

        static bool IsGiven(string? text) => text is not null;

        static IEnumerable<MakersPart> Others(List<string?> makers, List<string?> numbers) =>
            makers.Where(IsGiven).Distinct().Skip(1).Select(maker => new MakersPart(maker, null))
                .Concat(numbers.Where(IsGiven).Distinct().Skip(1).Select(number => new MakersPart(null, number)));
    }

    private List<ListCell> AsRead(PartLine part)
    {
        var cells = new List<ListCell>(part.Cells.Length);
        for (var i = 0; i < part.Cells.Length; i++)
        {
            var key = i < _columns.All.Count ? _columns.All[i].Key : string.Create(CultureInfo.InvariantCulture, $"column {i + 1}");
            cells.Add(new ListCell(key, part.Cells[i], _columns.Meaning(i)));
        }
        return cells;
    }

    private string? Text(PartLine part, ColumnMeaning meaning) => _columns.First(meaning) is var column and >= 0 ? Cell(part, column) : null;

    private string? Cell(PartLine part, int column)
    {
        var text = part.Cells[column].Trim();
        if (text.Length == 0 && part.Line.Merged.FirstOrDefault(merged => merged.IsTall && merged.Span.FirstColumn == column) is { } above)
        {
            text = above.Text.Trim();
        }
        // ="0471" is how a spreadsheet is told to leave a text alone.
        if (text.Length > 3 && text.StartsWith("=\"", StringComparison.Ordinal) && text.EndsWith('"'))
        {
            text = text[2..^1].Trim();
        }
        text = MarkdownTables.WithoutLink(text);
        return text.Length == 0 ? null : text;
    }

    /// <summary>Takes out what no list says but a spreadsheet made of it; the row as read keeps it.</summary>
    private PartLine WithoutWhatSpreadsheetsMade(PartLine part, List<string> remarks)
    {
        var cells = part.Cells;
        foreach (var doubt in part.Line.Doubts)
        {
            if (_columns.Meaning(doubt.Column) is not { } meaning || meaning is ColumnMeaning.Link or ColumnMeaning.RunningNumber)
            {
                continue;
            }
            var what = SnakeCase.Code(meaning).Replace('_', ' ');
            var text = part.Cells[doubt.Column];
            switch (doubt)
            {
                case CellDoubt.NoStoredResult formula when meaning is not ColumnMeaning.Quantity:
                    remarks.Add($"the {what} is a formula whose result is not stored{(formula.Formula.Length == 0 ? "" : $" (={Short(formula.Formula)})")}: not known");
                    break;
                case CellDoubt.IsDate date when IsCode(meaning) || meaning is ColumnMeaning.Value or ColumnMeaning.Quantity:
                    Take(date.Column);
                    Ask(part, date.Column, text, SpreadsheetCode.BehindDate(date.Date, date.Format), $"the {what} is the date {Spelled(date.Date)}, perhaps {SpreadsheetCode.BehindDate(date.Date, date.Format)[0]} before a spreadsheet made a date of it: ask", remarks);
                    break;
                case CellDoubt.HasExponent number when IsCode(meaning):
                    Take(number.Column);
                    Ask(part, number.Column, text, SpreadsheetCode.BehindExponent(number.Number), $"the {what} is the number {text}, perhaps {SpreadsheetCode.BehindExponent(number.Number)[0]} before a spreadsheet made a number of it: ask", remarks);
                    break;
                case CellDoubt.HasExponent:
                    remarks.Add($"the {what} is a number with an exponent, {text}: check");
                    break;
                case CellDoubt.LostDigits when IsCode(meaning) || meaning is ColumnMeaning.Value:
                    remarks.Add($"the {what} {text} is a number too long for a spreadsheet, which keeps 15 digits: the last ones may be wrong");
                    break;
                case CellDoubt.IsRounded rounded:
                    remarks.Add($"the {what} is {text}, of which the sheet shows “{Short(rounded.Shown)}”");
                    break;
            }
        }
        return cells == part.Cells ? part : part with { Cells = cells };

        static bool IsCode(ColumnMeaning meaning) => Array.IndexOf(Codes, meaning) >= 0;

        void Take(int column)
        {
            cells = cells == part.Cells ? (string[])cells.Clone() : cells;
            cells[column] = "";
        }
    }

    private void SayShared(PartLine part, List<string> remarks)
    {
        foreach (var merged in part.Line.Merged.Where(merged => _shared.Contains(merged) && merged.Span.FirstRow < part.LineNumber))
        {
            if (_columns.Meaning(merged.Span.FirstColumn) is not (null or ColumnMeaning.Quantity or ColumnMeaning.RunningNumber))
            {
                remarks.Add($"“{Short(merged.Text)}” under {_columns.All[merged.Span.FirstColumn].Key} is merged with the row above: taken for this one too");
            }
        }
    }

    private MergedCell? SharedOver(PartLine part, int column) =>
        part.Line.Merged.FirstOrDefault(merged => merged.Span.FirstColumn == column && _shared.Contains(merged));

    private void Ask(PartLine part, int column, string text, IReadOnlyList<string> readings, string question, List<string> remarks)
    {
        remarks.Add(question);
        _readings.Add(new OpenReading(_sheet, part.LineNumber, _columns.All[column].Key, text, readings, question));
    }

    private static string WithoutZeros(string value)
    {
        var (point, end) = (value.IndexOf('.', StringComparison.Ordinal), value.Length);
        while (!char.IsAsciiDigit(value[end - 1]))
        {
            end--;
        }
        return value[..end].TrimEnd('0').TrimEnd('.') is { Length: > 0 } number && point > 0 ? number + value[end..] : value;
    }

    private static string Spelled(int number) => number.ToString(CultureInfo.InvariantCulture);

    private static string Spelled(DateTime date) => date.ToString("d MMMM yyyy", CultureInfo.InvariantCulture);

    private static string? Named(string? text, string what, List<string> remarks)
    {
        if (text is null)
        {
            return null;
        }
        if (FittingMarks.IsMark(text))
        {
            return null;
        }
        if (!PlaceholderText.IsPlaceholder(text))
        {
            return text;
        }
        remarks.Add(PlaceholderText.IsSpreadsheetError(text) ? $"the {what} is the spreadsheet error {text}" : $"“{Short(text)}” is no {what}");
        return null;
    }

    private static string PrefixOf(string designator) => new([.. designator.TakeWhile(char.IsLetter).Select(char.ToUpperInvariant)]);

    private static void Add(List<string> remarks, string? remark)
    {
        if (remark is not null)
        {
            remarks.Add(remark);
        }
    }

    private static string Short(string text) => WellFormedText.Shorten(text, 60);

    [GeneratedRegex(@"[0-9],[0-9]")]
    private static partial Regex DecimalComma();

    [GeneratedRegex(@"^[0-9]+([.,][0-9]+)?$")]
    private static partial Regex PlainNumber();

    [GeneratedRegex(@"^[0-9]{1,3}\.[0-9]{3}\s?[kKMmRun]?$")]
    private static partial Regex ThousandsPoint();
}
