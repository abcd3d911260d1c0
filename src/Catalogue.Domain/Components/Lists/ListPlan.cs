using System.Globalization;
using Catalogue.Domain.Teardowns;

namespace Catalogue.Domain.Components.Lists;

/// <summary>What an import would do to a board, line by line, before anything is done.</summary>
/// <remarks>
/// <para>
/// A line and a component are the same place where they share most of their designators; a line without designators is the same as an imported component that
/// has the same part number, value, package and description. Each component is met once; all other lines become new components, so importing a list again
/// changes nothing.
/// </para>
/// <para>
/// A field follows the list where the list has changed it since the earlier import and no person has, or where nothing stands. What a person wrote stays, and
/// is said where the list now says something else. A component whose line is gone from the list stays. House rule.
/// </para>
/// </remarks>
/// <param name="Rows">The lines in their order.</param>
/// <param name="Missing">Components of earlier imports that no line meets, in board order; they stay.</param>
public sealed record ListPlan(IReadOnlyList<PlannedRow> Rows, IReadOnlyList<BoardComponent> Missing)
{
    /// <summary>Plans an import.</summary>
    /// <param name="revision">The draft.</param>
    /// <param name="board">The board.</param>
    /// <param name="rows">Its part lines.</param>
    /// <param name="there">The board's components in their order.</param>
    /// <param name="ratings">The ratings of those components.</param>
    public static ListPlan Of(RevisionId revision, BoardId board, IReadOnlyList<ListRow> rows, IReadOnlyList<BoardComponent> there, ILookup<ComponentId, Rating> ratings)
    {
        ArgumentNullException.ThrowIfNull(rows);
        ArgumentNullException.ThrowIfNull(there);
        ArgumentNullException.ThrowIfNull(ratings);
        var places = new Places(there);
        var next = there.Count == 0 ? 0 : there.Max(component => component.Position) + 1;
        var planned = new List<PlannedRow>(rows.Count);
        foreach (var row in rows)
        {
            var value = RowValue.Of(row);
            var cells = Cells(row);
            planned.Add(places.Take(row) switch
            {
                null => New(row, value, cells, revision, board, next++),
                var met when met.ImportedRow.SequenceEqual(cells) => new PlannedRow(row, value, PlannedRowAction.Same, met, [], [], []),
                var met => new Amendment(row, value, cells, met).Plan(ratings[met.Id]),
            });
        }

        return new ListPlan(planned, places.Left);
    }

    private static PlannedRow New(ListRow row, RowValue value, IReadOnlyList<ImportedCell> cells, RevisionId revision, BoardId board, int position)
    {
        var component = new BoardComponent
        {
            RevisionId = revision,
            Id = ComponentId.New(),
            BoardId = board,
            Position = position,
            Role = row.Role,
            FunctionClass = DesignatorClass.Suggest(row.Designators, row.Description),
            Designators = row.DesignatorsAsWritten,
            DesignatorList = [.. row.Designators],
            PartNumber = row.PartNumber,
            Value = row.Value,
            Package = row.Package,
            MakerAsRead = row.Maker,
            Description = row.Description,
            Quantity = row.Quantity,
            IsFitted = row.Fitted,
            ImportedRow = cells,
        };
        return new PlannedRow(row, value, PlannedRowAction.Add, component, [], [], [.. value.Ratings.Select(rating => new PlannedRating(rating, null, PlannedRatingAction.Add))]);
    }

    private static IReadOnlyList<ImportedCell> Cells(ListRow row) => [.. row.AsRead.Select(cell => new ImportedCell(cell.Header, cell.Text, cell.Meaning))];

    /// <summary>Where the board's components sit, so that a line finds its own.</summary>
    private sealed class Places
    {
        private readonly Dictionary<string, List<BoardComponent>> _byDesignator = new(StringComparer.OrdinalIgnoreCase);
        private readonly Dictionary<(string?, string?, string?, string?), Queue<BoardComponent>> _byWords = [];
        private readonly IReadOnlyList<BoardComponent> _all;
        private readonly HashSet<ComponentId> _taken = [];

        public Places(IReadOnlyList<BoardComponent> components)
        {
            _all = components;
            foreach (var component in components)
            {
                foreach (var designator in component.DesignatorList)
                    (_byDesignator.TryGetValue(designator, out var here) ? here : _byDesignator[designator] = []).Add(component);
                if (component.DesignatorList.Length > 0 || component.ImportedRow.Count == 0)
                    continue;
                var words = Words(component.PartNumber, component.Value, component.Package, component.Description);
                (_byWords.TryGetValue(words, out var alike) ? alike : _byWords[words] = []).Enqueue(component);
            }
        }

        public IReadOnlyList<BoardComponent> Left => [.. _all.Where(component => component.ImportedRow.Count > 0 && !_taken.Contains(component.Id))];

        public BoardComponent? Take(ListRow row)
        {
            var found = row.Designators.Count > 0
                ? row.Designators.SelectMany(Sitting).GroupBy(component => component.Id).Where(group => SharesMost(row, group.First(), group.Count())).OrderByDescending(group => group.Count()).FirstOrDefault()?.First()
                : _byWords.TryGetValue(Words(row.PartNumber, row.Value, row.Package, row.Description), out var alike) && alike.TryDequeue(out var first) ? first : null;
            if (found is not null)
                _taken.Add(found.Id);
            return found;
        }

        private IEnumerable<BoardComponent> Sitting(string designator) =>
            _byDesignator.TryGetValue(designator, out var here) ? here.Where(component => !_taken.Contains(component.Id)) : [];

        // More than half of the smaller of the two: a row that lost or gained some places is still the same row, one that was split up is not twice the same.
        private static bool SharesMost(ListRow row, BoardComponent component, int shared) => shared * 2 > Math.Min(row.Designators.Count, component.DesignatorList.Length);

        private static (string?, string?, string?, string?) Words(string? number, string? value, string? package, string? description) =>
            (Families.PartNumber.From(number)?.MatchKey ?? number, value, package, description);
    }

    /// <summary>A line beside the component that it became earlier.</summary>
    private sealed class Amendment(ListRow row, RowValue value, IReadOnlyList<ImportedCell> cells, BoardComponent there)
    {
        // What the list said when it was imported, or null where the component is no list's.
        private readonly ListRow? _earlier = ListRowReader.ReadAgain(there.ImportedRow);
        private readonly List<PlannedField> _changes = [];
        private readonly List<PlannedField> _kept = [];
        private readonly BoardComponent _component = there.Copy();

        public PlannedRow Plan(IEnumerable<Rating> recorded)
        {
            // The same places written another way are no change.
            if (!row.Designators.SequenceEqual(there.DesignatorList))
            {
                Text(nameof(BoardComponent.Designators), list => list.DesignatorsAsWritten, there.Designators, text =>
                {
                    _component.Designators = text;
                    _component.DesignatorList = [.. row.Designators];
                });
            }

            Text(nameof(BoardComponent.Role), list => list.Role, there.Role, text => _component.Role = text);
            Text(nameof(BoardComponent.PartNumber), list => list.PartNumber, there.PartNumber, text => _component.PartNumber = text);
            Text(nameof(BoardComponent.Value), list => list.Value, there.Value, text => _component.Value = text);
            Text(nameof(BoardComponent.Package), list => list.Package, there.Package, text => _component.Package = text);
            Text(nameof(BoardComponent.MakerAsRead), list => list.Maker, there.MakerAsRead, text => _component.MakerAsRead = text);
            Text(nameof(BoardComponent.Description), list => list.Description, there.Description, text => _component.Description = text);
            Field(nameof(BoardComponent.Quantity), list => list.Quantity, there.Quantity, there.Quantity is null, quantity => _component.Quantity = quantity, quantity => quantity?.ToString(CultureInfo.InvariantCulture));
            Field(nameof(BoardComponent.IsFitted), list => list.Fitted, there.IsFitted, false, fitted => _component.IsFitted = fitted, fitted => fitted ? "fitted" : "not fitted");
            _component.FunctionClass ??= DesignatorClass.Suggest(row.Designators, row.Description);
            _component.ImportedRow = cells;
            var ratings = Ratings([.. recorded]);
            return new PlannedRow(row, value, PlannedRowAction.Update, _component, _changes, _kept, ratings);
        }

        private void Text(string field, Func<ListRow, string?> of, string? stands, Action<string?> set) => Field(field, of, stands, stands is null, set, text => text);

        private void Field<T>(string field, Func<ListRow, T> of, T stands, bool isEmpty, Action<T> set, Func<T, string?> print)
        {
            var (says, said) = (of(row), _earlier is null ? default : of(_earlier));
            var same = EqualityComparer<T>.Default;
            if (same.Equals(says, stands) || (_earlier is not null && same.Equals(says, said)))
                return;
            var change = new PlannedField(field, print(stands), print(says));
            if (_earlier is not null ? same.Equals(stands, said) || (isEmpty && says is not null) : isEmpty)
            {
                _changes.Add(change);
                set(says);
            }
            else if (says is not null)
            {
                _kept.Add(change);
            }
        }

        private List<PlannedRating> Ratings(IReadOnlyList<Rating> recorded)
        {
            var before = _earlier is null ? [] : RowValue.Of(_earlier).Ratings;
            var planned = new List<PlannedRating>();
            foreach (var says in value.Ratings)
            {
                var said = before.FirstOrDefault(says.IsOfSame);
                var stands = recorded.Where(says.IsOfSame).ToList();
                if ((said is not null && said.Value == says.Value) || stands.Exists(rating => rating.Interval == says.Value))
                    continue;
                if (stands.Count == 0)
                    planned.Add(new PlannedRating(says, null, PlannedRatingAction.Add));
                else if (said is not null && stands.Find(rating => IsOfList(rating, said)) is { } own)
                    planned.Add(new PlannedRating(says, own, PlannedRatingAction.Update));
                else
                    planned.Add(new PlannedRating(says, stands[0], PlannedRatingAction.Keep));
            }

            foreach (var said in before.Where(said => !value.Ratings.Any(said.IsOfSame)))
            {
                if (recorded.FirstOrDefault(rating => said.IsOfSame(rating) && IsOfList(rating, said)) is { } own)
                    planned.Add(new PlannedRating(null, own, PlannedRatingAction.Remove));
            }

            return planned;
        }

        // What an import wrote and no person has touched since.
        private static bool IsOfList(Rating rating, ListedRating said) => rating.Interval == said.Value && rating.Evidence is Quantities.Evidence.Inferred;
    }
}
