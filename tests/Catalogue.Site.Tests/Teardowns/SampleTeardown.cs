using Catalogue.Data.Figures;
using Catalogue.Data.Publishing;
using Catalogue.Data.Teardowns;
using Catalogue.Domain.BenchLogs;
using Catalogue.Domain.Callouts;
using Catalogue.Domain.Components;
using Catalogue.Domain.Families;
using Catalogue.Domain.Figures;
using Catalogue.Domain.Findings;
using Catalogue.Domain.Isolation;
using Catalogue.Domain.Photos;
using Catalogue.Domain.Products;
using Catalogue.Domain.Publishing;
using Catalogue.Domain.Quantities;
using Catalogue.Domain.Rails;
using Catalogue.Domain.Teardowns;

namespace Catalogue.Site.Tests.Teardowns;

/// <summary>An invented teardown that has one of everything its page shows. Its fuse is over the guideline: 25.2 A allowed, 30.5 A needed.</summary>
internal sealed class SampleTeardown
{
    public static LabSettings Settings { get; } = new() { LabName = "Tallow Lane Bench", ContentLicence = "CC BY 4.0" };

    private static readonly DateTimeOffset Published = new(2025, 11, 18, 9, 30, 0, TimeSpan.Zero);

    private readonly RevisionId _id = RevisionId.New();
    private readonly TeardownId _teardown = TeardownId.New();
    private readonly FamilyId _family = FamilyId.New();

    public SampleTeardown()
    {
        Board = new Board { RevisionId = _id, Id = BoardId.New(), Name = "main power board", Topology = ["push_pull"] };
        Rail = new Rail { RevisionId = _id, Id = RailId.New(), Name = "Pack rail", Kind = RailKind.Pack };
        Fuse = Part(0, component =>
        {
            (component.Role, component.Designators, component.MarkingAsRead, component.Package) = ("Pack fuse", "F1", "35", "blade");
            (component.FunctionClass, component.RailId) = (FunctionClass.BladeFuse, Rail.Id);
        });
        Switches = Part(1, component =>
        {
            (component.Role, component.Designators, component.MarkingAsRead) = ("Bridge switches", "Q5 to Q8", "YTQ65-080\nY2318");
            (component.FamilyId, component.FamilyEvidence, component.ParallelCount, component.SeriesCount) = (_family, Evidence.ReadOnPart, 2, 2);
        });
        Relay = Part(2, component => (component.Role, component.Designators, component.MarkingAsRead) = ("Output relay", "K1", "ZR-112D □0A"));
        Empty = Part(3, component => (component.Designators, component.PartNumber, component.Value, component.IsFitted) = ("R9", "RQX0805", "4k7", false));
        Front = Shot(0, photo => (photo.Subject, photo.IsDrawing, photo.Caption, photo.Credit, photo.AltText) = (PhotoSubject.Product, true, "Front", "I. Sorrel", "Front of the unit"));
        Top = Shot(1, photo => (photo.Subject, photo.BoardId) = (PhotoSubject.BoardTop, Board.Id));
        Outlet = new Port { RevisionId = _id, Id = PortId.New(), Name = "AC outlet", Kind = "AC outlet", AsPrinted = "230 V~ 600 W" };
        Energy = new BenchTest { RevisionId = _id, Id = BenchTestId.New(), Subject = "energy", Value = 396, Low = 392, High = 400, Unit = Unit.WattHour, Conditions = "at the AC outlet, 300 W" };
        Facts = new RevisionFacts(
            [Fuse, Switches, Relay, Empty],
            [
                Rated(Fuse, RatingKind.RatedCurrent, 35, Evidence.ReadOnPart), Rated(Fuse, RatingKind.AmbientTemperature, 45, Evidence.Measured),
                Rated(Fuse, RatingKind.TemperatureSlope, 0.002, Evidence.Datasheet), Rated(Fuse, RatingKind.RatedVoltage, 32, Evidence.ReadOnPart), Rated(Switches, RatingKind.RatedVoltage, 650, Evidence.Datasheet),
            ],
            [Rail],
            [
                Known(RailQuantityKind.MinVoltage, 21.8, 22.0, 22.2), Known(RailQuantityKind.MaxPower, 600, 600, 600), Known(RailQuantityKind.Efficiency, 0.883, 0.893, 0.903),
            ]);
        Figures = RevisionFigures.Compute(_id, Facts, LineTable.Default);
    }

    public Board Board { get; }

    public Rail Rail { get; }

    public BoardComponent Fuse { get; }

    public BoardComponent Switches { get; }

    public BoardComponent Relay { get; }

    public BoardComponent Empty { get; }

    public Photo Front { get; }

    public Photo Top { get; }

    public Port Outlet { get; }

    public BenchTest Energy { get; }

    public RevisionFacts Facts { get; set; }

    public IReadOnlyList<Figure> Figures { get; set; }

    public IReadOnlyList<CurrentFigure> Current { get; set; } = [];

    public IReadOnlyList<DischargeReading> Readings { get; set; } = [];

    public IReadOnlyList<MeasuredPath> Paths { get; set; } = [];

    public RevisionState State { get; set; } = RevisionState.Published;

    /// <summary>The record; a superseded one is followed by revision 4.</summary>
    public TeardownRecord Build() => new()
    {
        Slug = "ferrowick-tor-600",
        Id = _teardown,
        Number = 41,
        Revision = new Revision
        {
            Id = _id,
            TeardownId = _teardown,
            Number = 3,
            State = State,
            Title = "Ferrowick Tor 600",
            Standfirst = "An inverter fuse loaded past the guideline.",
            Brand = "Ferrowick",
            ProductName = "Tor 600",
            Model = "TOR600-EU",
            Category = ProductCategory.PowerStation,
            MassKg = 6.52,
            TakenApartBy = "I. Sorrel",
            Obtained = SampleSource.Bought,
            CellChemistry = "lithium iron phosphate (LFP)",
            MethodMarkdown = "Eight tests before opening.",
            OpenedAt = Published.AddDays(-30),
            PublishedAt = Published,
        },
        Boards = [Board],
        Components = Facts.Components,
        Ratings = Facts.Ratings,
        Rails = Facts.Rails,
        RailQuantities = Facts.RailQuantities,
        DischargeReadings = Readings,
        IsolationPaths = Paths,
        Photos = [Front, Top],
        Callouts =
        [
            At(Top, 1, 0.2, 0.15, callout => callout.ComponentId = Fuse.Id),
            At(Top, 2, 0.8, 0.3, callout => (callout.ComponentId, callout.Shape, callout.Width, callout.Height) = (Switches.Id, CalloutShape.Box, 0.1, 0.4)),
            At(Top, 3, 0.8, 0.9, callout => callout.ComponentId = Relay.Id),
            At(Top, 4, 0.5, 0.5, _ => { }),
            At(Front, 1, 0.2, 0.5, callout => callout.PortId = Outlet.Id),
        ],
        Ports = [Outlet],
        Claims =
        [
            new Claim { RevisionId = _id, Id = ClaimId.New(), Subject = "energy", AsPrinted = "25.6V 20Ah 512Wh", Value = 512, Unit = Unit.WattHour, Place = ClaimPlace.Label },
            new Claim { RevisionId = _id, Id = ClaimId.New(), Subject = "waterproof", AsPrinted = "splash proof", Place = ClaimPlace.Box },
        ],
        Tests = [Energy, new BenchTest { RevisionId = _id, Id = BenchTestId.New(), Subject = "draw with AC on", Value = 8.6, Unit = Unit.Watt }],
        Steps = [new Step { RevisionId = _id, Id = StepId.New(), Heading = "Open the lid", Markdown = "Six screws." }],
        Findings =
        [
            new Finding
            {
                RevisionId = _id,
                Id = FindingId.New(),
                Heading = "The fuse is loaded past the guideline",
                Markdown = "At 22.0 V the claimed 600 W draws 30.5 A.",
                ComponentIds = [Fuse.Id.Value],
                PhotoIds = [Top.Id.Value],
                TestIds = [Energy.Id.Value],
            },
        ],
        Figures = Figures,
        FamilyRatings = [],
        CurrentFigures = Current,
        Families = new Dictionary<FamilyId, TeardownRecord.FamilyName> { [_family] = new("ytq65-080", "YTQ65-080") },
        Publications = State is RevisionState.Superseded ? [Act(4, RevisionState.Published), Act(3, State), Act(2, RevisionState.Superseded)] : [Act(3, State), Act(2, RevisionState.Superseded)],
    };

    public CurrentFigure Now(Figure figure, int version, Verdict verdict, double? factor = 1) => new()
    {
        RevisionId = _id,
        TeardownId = _teardown,
        Id = FigureId.New(),
        ComponentId = figure.ComponentId,
        RailId = figure.RailId,
        Rule = figure.Rule,
        RuleVersion = version,
        Low = figure.Low * factor,
        Nominal = figure.Nominal * factor,
        High = figure.High * factor,
        Unit = figure.Unit,
        Verdict = verdict,
        StaticOnly = figure.StaticOnly,
        Missing = factor is null ? [new MissingInput("rail", "the rail the fuse sits in")] : figure.Missing,
        Working = figure.Working,
    };

    private TeardownRecord.PublishedRevision Act(int number, RevisionState state) => new(number, state, new Publication
    {
        Id = PublicationId.New(),
        TeardownId = _teardown,
        RevisionId = _id,
        Note = $"Note of revision {number}.",
        PublishedAt = Published.AddDays(number - 3),
        PublishedBy = "m.adair",
    });

    private BoardComponent Part(int position, Action<BoardComponent> describe)
    {
        var component = new BoardComponent { RevisionId = _id, Id = ComponentId.New(), BoardId = Board.Id, Position = position };
        describe(component);
        return component;
    }

    private Photo Shot(int position, Action<Photo> describe)
    {
        var photo = new Photo { RevisionId = _id, Id = PhotoId.New(), Sha256 = new string((char)('a' + position), 64), WidthPixels = 1200, HeightPixels = 800, Position = position };
        describe(photo);
        return photo;
    }

    private Rating Rated(BoardComponent component, RatingKind kind, double value, Evidence evidence) => new()
    {
        RevisionId = _id,
        Id = RatingId.New(),
        ComponentId = component.Id,
        Kind = kind,
        Low = value,
        Nominal = value,
        High = value,
        Evidence = evidence,
    };

    private RailQuantity Known(RailQuantityKind kind, double low, double nominal, double high) => new()
    {
        RevisionId = _id,
        Id = RailQuantityId.New(),
        RailId = Rail.Id,
        Kind = kind,
        Low = low,
        Nominal = nominal,
        High = high,
        Evidence = Evidence.Measured,
        Source = "test 2",
    };

    private Callout At(Photo photo, int number, double x, double y, Action<Callout> point)
    {
        var callout = new Callout { RevisionId = _id, Id = CalloutId.New(), PhotoId = photo.Id, Number = number, X = x, Y = y };
        point(callout);
        return callout;
    }
}
