using Catalogue.Domain.Components;
using Catalogue.Domain.Families;
using Catalogue.Domain.Identification;
using Catalogue.Domain.Makers;
using Catalogue.Domain.Teardowns;
using Microsoft.EntityFrameworkCore;

namespace Catalogue.Data.Families;

/// <summary>
/// The parts that no family is known for, grouped by look: the same marking in the same package, in however many teardowns, is one item. Candidates are
/// looked for when the list is read, so that a family or a name that was added shows at once.
/// </summary>
/// <param name="contexts">Makes the context of each query.</param>
/// <param name="candidates">Finds candidates.</param>
public sealed class UnidentifiedQuery(IDbContextFactory<CatalogueContext> contexts, MarkingCandidatesQuery candidates)
{
    /// <summary>The most items of a page.</summary>
    public const int MaxItems = 50;

    /// <summary>Candidates shown for an item.</summary>
    public const int MaxCandidates = 4;

    /// <summary>Parts of one look.</summary>
    /// <param name="Key">Names the look; the same for the same marking and package.</param>
    /// <param name="Marking">The marking as read on the first of them; where nothing was read, the part number, or a value that looks like one.</param>
    /// <param name="Package">The package as the trade names it, or as written, or null.</param>
    /// <param name="Teardowns">In how many teardowns they were seen.</param>
    /// <param name="Components">The components.</param>
    /// <param name="Makers">The makers read on them, by name.</param>
    /// <param name="Roles">What they do, as reviewers say, by name.</param>
    /// <param name="Candidates">The likeliest families.</param>
    /// <param name="Why">Why none of them was taken, in words.</param>
    /// <param name="Number">The number that a family could be opened for, or null where none was read whole.</param>
    public sealed record Item(
        string Key,
        string Marking,
        string? Package,
        int Teardowns,
        IReadOnlyList<Part> Components,
        IReadOnlyList<string> Makers,
        IReadOnlyList<string> Roles,
        IReadOnlyList<MarkingCandidatesQuery.Found> Candidates,
        string Why,
        string? Number);

    /// <summary>One of the parts.</summary>
    /// <param name="Id">The component.</param>
    /// <param name="Teardown">The teardown.</param>
    /// <param name="Slug">Its address.</param>
    /// <param name="Product">Brand and name.</param>
    /// <param name="Board">The board.</param>
    /// <param name="Name">What the component is called.</param>
    public sealed record Part(ComponentId Id, TeardownId Teardown, string Slug, string Product, BoardId Board, string Name);

    /// <summary>A page of items, and how many there are in all.</summary>
    public sealed record Answer(IReadOnlyList<Item> Items, int Total);

    /// <summary>The items, those seen in most teardowns first.</summary>
    /// <param name="skip">Items that were seen already.</param>
    /// <param name="limit">Items a page, 1 to <see cref="MaxItems"/>.</param>
    /// <param name="cancellationToken">Cancels the query.</param>
    public async Task<Answer> RunAsync(int skip, int limit, CancellationToken cancellationToken = default)
    {
        await using var context = await contexts.CreateDbContextAsync(cancellationToken);
        var looks = (await RowsAsync(context, cancellationToken))
            .GroupBy(row => KeyOf(row.Component))
            .OrderByDescending(group => group.Select(row => row.Part.Teardown).Distinct().Count())
            .ThenByDescending(group => group.Count())
            .ThenBy(group => group.Key, StringComparer.Ordinal)
            .ToList();
        var items = new List<Item>();
        foreach (var look in looks.Skip(Math.Max(0, skip)).Take(Math.Clamp(limit, 1, MaxItems)))
            items.Add(await ItemAsync(look.Key, [.. look], cancellationToken));
        return new Answer(items, looks.Count);
    }

    /// <summary>The parts of one look, as they stand now.</summary>
    internal static async Task<IReadOnlyList<(BoardComponent Component, Part Part)>> PartsAsync(CatalogueContext context, string key, CancellationToken cancellationToken) =>
        [.. (await RowsAsync(context, cancellationToken)).Where(row => KeyOf(row.Component) == key)];

    /// <summary>Names the look of a component that carries a text to go by (<see cref="PartText"/>). One on which no letter or digit could be read is a look of its own.</summary>
    internal static string KeyOf(BoardComponent component)
    {
        var lines = MarkingReadings.AllLines(PartText.Of(component)!);
        return lines.Any(line => line.Any(char.IsLetterOrDigit))
            ? string.Join(" / ", lines) + " @ " + component.ReadPackage().Grouping.ToUpperInvariant()
            : $"? {component.Id}";
    }

    /// <summary>What is asked of the parts of one look.</summary>
    internal static Task<IReadOnlyList<MarkingCandidatesQuery.Found>> CandidatesAsync(
        MarkingCandidatesQuery candidates, IReadOnlyList<(BoardComponent Component, Part Part)> rows, CancellationToken cancellationToken) =>
        candidates.RunAsync(QuestionOf(rows), new MarkingCandidatesQuery.Place(rows[0].Part.Teardown, rows[0].Part.Board), seesDrafts: true, cancellationToken);

    private static MarkingQuestion QuestionOf(IReadOnlyList<(BoardComponent Component, Part Part)> rows)
    {
        var first = rows[0].Component;
        return new MarkingQuestion
        {
            Marking = WellFormedText.Start(PartText.Of(first)!, MarkingReadings.MaxMarkingLength),
            Package = first.Package,
            FunctionClass = rows.Select(row => row.Component.FunctionClass).FirstOrDefault(known => known is not null)
                ?? Distinct(rows.Select(row => row.Component.Role)).Select(FunctionClassText.Read).FirstOrDefault(known => known is not null),
            Maker = Distinct(rows.Select(row => row.Component.MakerAsRead)).Select(MakerName.Key).FirstOrDefault(name => name.Length > 0),
        };
    }

    private static async Task<List<(BoardComponent Component, Part Part)>> RowsAsync(CatalogueContext context, CancellationToken cancellationToken)
    {
        var current = context.Revisions.Where(row => row.State == RevisionState.Draft || row.State == RevisionState.InReview
            || (row.State == RevisionState.Published && !context.Revisions.Any(draft => draft.TeardownId == row.TeardownId && (draft.State == RevisionState.Draft || draft.State == RevisionState.InReview))));
        var rows = await context.Components
            .AsNoTracking()
            .Where(row => row.FamilyId == null && row.IsFitted && (row.MarkingAsRead != null || row.PartNumber != null || (EF.Functions.Like(row.Value!, "_____%") && !EF.Functions.Like(row.Value!, "% %"))))
            .Join(current, row => row.RevisionId, row => row.Id, (component, revision) => new { Component = component, Revision = revision })
            .Join(context.Teardowns, row => row.Revision.TeardownId, row => row.Id, (row, teardown) => new { row.Component, Product = row.Revision.Brand + " " + row.Revision.ProductName, teardown.Id, teardown.Slug })
            .OrderBy(row => row.Slug)
            .ThenBy(row => row.Component.Position)
            .ThenBy(row => row.Component.Id)
            .ToListAsync(cancellationToken);
        return
        [
            .. rows
                .Where(row => PartText.Of(row.Component) is not null && !IsPlainValue(row.Component))
                .Select(row => (row.Component, new Part(row.Component.Id, row.Id, row.Slug, row.Product, row.Component.BoardId, row.Component.Name))),
        ];
    }

    // A resistor's or capacitor's print is its value, not a number of a family.
    private static bool IsPlainValue(BoardComponent component) =>
        component.PartNumber is null
        && (component.FunctionClass is { } functionClass ? PartKindOf.Class(functionClass) : component.DesignatorList.Select(PartKindOf.Designator).FirstOrDefault())
            is Domain.Quantities.PartKind.Resistor or Domain.Quantities.PartKind.Capacitor or Domain.Quantities.PartKind.Inductor or Domain.Quantities.PartKind.Fuse or Domain.Quantities.PartKind.Thermistor;

    private async Task<Item> ItemAsync(string key, IReadOnlyList<(BoardComponent Component, Part Part)> rows, CancellationToken cancellationToken)
    {
        var first = rows[0].Component;
        var marking = PartText.Of(first)!;
        var roles = Distinct(rows.Select(row => row.Component.Role));
        var makers = Distinct(rows.Select(row => row.Component.MakerAsRead));
        var found = await CandidatesAsync(candidates, rows, cancellationToken);
        return new Item(
            key,
            marking,
            first.ReadPackage().Canonical ?? first.Package,
            rows.Select(row => row.Part.Teardown).Distinct().Count(),
            [.. rows.Select(row => row.Part)],
            makers,
            roles,
            [.. found.Take(MaxCandidates)],
            Why(marking, found),
            ComponentCandidatesQuery.NumberOf(first, QuestionOf(rows)));
    }

    private static string Why(string marking, IReadOnlyList<MarkingCandidatesQuery.Found> found)
    {
        var signs = MarkingFold.Signs(MarkingFold.Line(marking));
        var unread = signs.Count(sign => sign == MarkingFold.Unreadable);
        return signs.Length == unread ? "nothing on it could be read"
            : found is [{ Candidate.IsTied: true }, _, ..] ? $"{found[0].Name} and {found[1].Name} are about as likely"
            : found is [{ Candidate: var first }, ..] && first.Reading.Signs == first.Name.Letters ? $"it reads {first.Name.Text} exactly, which nobody has confirmed"
            : found.Count > 0 ? unread > 0 ? "part of it could not be read" : "it has to be mended to fit"
            : PartNumber.From(marking) is { } number && !LinkFamilies.IsIdentifying(number) ? "it reads like a description"
            : "no family comes near";
    }

    private static List<string> Distinct(IEnumerable<string?> texts) => [.. texts.OfType<string>().Distinct(StringComparer.OrdinalIgnoreCase).Order(StringComparer.OrdinalIgnoreCase)];
}
