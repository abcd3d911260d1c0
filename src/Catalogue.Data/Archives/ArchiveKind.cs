using Catalogue.Domain.BenchLogs;
using Catalogue.Domain.Callouts;
using Catalogue.Domain.Components;
using Catalogue.Domain.Figures;
using Catalogue.Domain.Findings;
using Catalogue.Domain.Isolation;
using Catalogue.Domain.Photos;
using Catalogue.Domain.Products;
using Catalogue.Domain.Rails;
using Catalogue.Domain.Teardowns;
using Microsoft.EntityFrameworkCore;

namespace Catalogue.Data.Archives;

/// <summary>A kind of line.</summary>
/// <param name="Name">What the field <c>record</c> says.</param>
/// <param name="Type">The record behind it.</param>
internal abstract record ArchiveKind(string Name, Type Type)
{
    public static ArchiveKind Maker { get; } = new Lone("maker", typeof(ArchiveLine.Maker));

    public static ArchiveKind Family { get; } = new Lone("family", typeof(ArchiveLine.Family));

    public static ArchiveKind PhotoFile { get; } = new Lone("photo_file", typeof(ArchiveLine.PhotoFile));

    public static ArchiveKind Teardown { get; } = new Lone("teardown", typeof(ArchiveLine.Teardown));

    public static ArchiveKind Revision { get; } = new Lone("revision", typeof(Revision));

    public static ArchiveKind FamilyMove { get; } = new Lone("family_move", typeof(ArchiveLine.FamilyMove));

    public static ArchiveKind Publication { get; } = new Lone("publication", typeof(ArchiveLine.Publication));

    /// <summary>The content of revisions: each kind after those that its rows refer to, in the order in which lines are written.</summary>
    public static IReadOnlyList<ContentKind> Content { get; } =
    [
        Of<Port>("port", rows => rows.OrderBy(row => row.Position).ThenBy(row => row.Id)),
        Of<Rail>("rail", rows => rows.OrderBy(row => row.Position).ThenBy(row => row.Id)),
        Of<RailQuantity>("rail_quantity", rows => rows.OrderBy(row => row.Id)),
        Of<DischargeReading>("discharge_reading", rows => rows.OrderBy(row => row.Position).ThenBy(row => row.Id)),
        Of<Board>("board", rows => rows.OrderBy(row => row.Position).ThenBy(row => row.Id)),
        Of<BoardComponent>("component", rows => rows.OrderBy(row => row.BoardId).ThenBy(row => row.Position).ThenBy(row => row.Id)),
        Of<Rating>("rating", rows => rows.OrderBy(row => row.Id)),
        Of<MeasuredPath>("isolation_path", rows => rows.OrderBy(row => row.Position).ThenBy(row => row.Id)),
        Of<Photo>("photo", rows => rows.OrderBy(row => row.Position).ThenBy(row => row.Id)),
        Of<Callout>("callout", rows => rows.OrderBy(row => row.Number).ThenBy(row => row.Id)),
        Of<Claim>("claim", rows => rows.OrderBy(row => row.Position).ThenBy(row => row.Id)),
        Of<BenchTest>("test", rows => rows.OrderBy(row => row.Position).ThenBy(row => row.Id)),
        Of<Step>("step", rows => rows.OrderBy(row => row.Position).ThenBy(row => row.Id)),
        Of<Finding>("finding", rows => rows.OrderBy(row => row.Position).ThenBy(row => row.Id)),
        Of<Figure>("figure", rows => rows.OrderBy(row => row.Id)),
    ];

    /// <summary>All kinds.</summary>
    public static IReadOnlyList<ArchiveKind> All { get; } = [Maker, Family, PhotoFile, Teardown, Revision, .. Content, FamilyMove, Publication];

    /// <summary>All kinds by name.</summary>
    public static IReadOnlyDictionary<string, ArchiveKind> ByName { get; } = All.ToDictionary(kind => kind.Name, StringComparer.Ordinal);

    /// <summary>True for lines that stand below their revision's.</summary>
    public bool IsOfRevision => this is ContentKind || this == FamilyMove || this == Publication;

    private sealed record Lone(string Name, Type Type) : ArchiveKind(Name, Type);

    private static ContentKind Of<T>(string name, Func<IQueryable<T>, IQueryable<T>> inOrder)
        where T : class, IRevisionContent =>
        new(name, typeof(T), (context, revision) => inOrder(context.Set<T>().AsNoTracking().Where(row => row.RevisionId == revision)).AsAsyncEnumerable());
}
