using Catalogue.Data.Teardowns;
using Catalogue.Domain.Callouts;
using Catalogue.Domain.Components;
using Catalogue.Domain.Families;
using Catalogue.Domain.Figures;
using Catalogue.Domain.Photos;
using Catalogue.Domain.Products;
using Catalogue.Domain.Rails;
using Catalogue.Domain.Teardowns;

namespace Catalogue.Lab.Tests;

/// <summary>Records of an invented power station for components to be fed with.</summary>
internal static class Records
{
    public static readonly RevisionId Revision = RevisionId.New();
    public static readonly BoardId Board = BoardId.New();
    public static readonly Rail Pack = new() { RevisionId = Revision, Id = RailId.New(), Name = "pack", Kind = RailKind.Pack };

    public static readonly IReadOnlyDictionary<FamilyId, TeardownRecord.FamilyName> NoFamilies = new Dictionary<FamilyId, TeardownRecord.FamilyName>();

    public static BoardComponent Fuse(ComponentId? id = null, uint version = 7, string? note = null, string? marking = "35") => new()
    {
        RevisionId = Revision,
        Id = id ?? ComponentId.New(),
        BoardId = Board,
        Role = "pack fuse",
        FunctionClass = FunctionClass.BladeFuse,
        Designators = "F1",
        MarkingAsRead = marking,
        Package = "blade",
        Quantity = 1,
        RailId = Pack.Id,
        Note = note,
        Version = version,
    };

    public static Figure UnknownHeadroom(ComponentId component) =>
        Figure.Of(Revision, component, null, FigureRules.Find(FuseHeadroom.Rule)!, FuseHeadroom.Compute(new FuseHeadroom.Inputs { FunctionClass = FunctionClass.BladeFuse }, LineTable.Default));

    public static Callout Pin(PhotoId photo, int number, ComponentId? component) =>
        new() { RevisionId = Revision, Id = CalloutId.New(), PhotoId = photo, Number = number, X = 0.2, Y = 0.3, ComponentId = component };

    public static Photo Photo() => new()
    {
        RevisionId = Revision,
        Id = PhotoId.New(),
        Sha256 = new string('a', 64),
        WidthPixels = 2080,
        HeightPixels = 1520,
        Subject = PhotoSubject.BoardTop,
        BoardId = Board,
    };

    public static TeardownRecord Record(
        IReadOnlyList<BoardComponent> components, IReadOnlyList<Figure>? figures = null, IReadOnlyList<Photo>? photos = null, IReadOnlyList<Callout>? callouts = null)
    {
        return new TeardownRecord
        {
            FamilyRatings = [],
            Slug = "ferrowick-tor-600",
            Id = TeardownId.New(),
            Number = 41,
            Revision = new Revision
            {
                Id = Revision,
                TeardownId = TeardownId.New(),
                Number = 2,
                Title = "Ferrowick Tor 600",
                Brand = "Ferrowick",
                ProductName = "Tor 600",
                Model = "FW-T600",
                Category = ProductCategory.PowerStation,
                OpenedAt = DateTimeOffset.UnixEpoch,
            },
            Boards = [new Board { RevisionId = Revision, Id = Board, Name = "main power board" }],
            Components = components,
            Ratings = [],
            Rails = [Pack],
            RailQuantities = [],
            DischargeReadings = [],
            IsolationPaths = [],
            Photos = photos ?? [],
            Callouts = callouts ?? [],
            Ports = [],
            Claims = [],
            Tests = [],
            Steps = [],
            Findings = [],
            Figures = figures ?? [],
            CurrentFigures = [],
            Families = NoFamilies,
            Publications = [],
        };
    }
}
