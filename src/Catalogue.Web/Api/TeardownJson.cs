using Catalogue.Data.Teardowns;
using Catalogue.Domain.BenchLogs;
using Catalogue.Domain.Callouts;
using Catalogue.Domain.Components;
using Catalogue.Domain.Consistency;
using Catalogue.Domain.Figures;
using Catalogue.Domain.Isolation;
using Catalogue.Domain.Photos;
using Catalogue.Domain.Products;
using Catalogue.Domain.Publishing;
using Catalogue.Domain.Quantities;
using Catalogue.Domain.Rails;
using Catalogue.Domain.Teardowns;
using Catalogue.Domain.Topologies;

namespace Catalogue.Web.Api;

/// <summary>A revision as the API gives it. Versions and imported rows are in drafts only; the serial number is nowhere.</summary>
public sealed record TeardownJson(
    string Slug,
    int Number,
    string Title,
    string? Standfirst,
    TeardownJson.ProductPart Product,
    TeardownJson.RevisionPart Revision,
    TeardownJson.SamplePart Sample,
    string? MethodMarkdown,
    IReadOnlyList<Caution> Cautions,
    string CautionsDeferTo,
    string FiguresAre,
    IReadOnlyList<TeardownJson.BoardPart> Boards,
    IReadOnlyList<TeardownJson.PhotoPart> Photos,
    IReadOnlyList<TeardownJson.RailPart> Rails,
    IReadOnlyList<TeardownJson.DischargeReadingPart> DischargeReadings,
    IReadOnlyList<TeardownJson.IsolationPathPart> IsolationPaths,
    IReadOnlyList<TeardownJson.PortPart> Ports,
    IReadOnlyList<TeardownJson.ClaimPart> Claims,
    IReadOnlyList<TeardownJson.TestPart> Tests,
    IReadOnlyList<TeardownJson.StepPart> Steps,
    IReadOnlyList<TeardownJson.FindingPart> Findings,
    IReadOnlyList<TeardownJson.FigurePart> Figures,
    IReadOnlyList<Contradiction> Contradictions,
    IReadOnlyList<TeardownJson.PublicationPart> Publications)
{
    /// <summary>The product as this revision prints it.</summary>
    public sealed record ProductPart(string Brand, string Name, string Model, ProductCategory Category, int? Year, double? MassKg, string? CellChemistry);

    /// <summary>The revision.</summary>
    public sealed record RevisionPart(int Number, RevisionState State, DateTimeOffset? PublishedAt, uint? Version);

    /// <summary>The sample.</summary>
    public sealed record SamplePart(DateOnly? TakenApartOn, string? TakenApartBy, SampleSource Obtained, string? ObtainedNote, string? Condition, string? Firmware);

    /// <summary>A board with its components.</summary>
    public sealed record BoardPart(Guid Id, string Letter, string Name, Guid? ParentId, IReadOnlyList<string> Topology, IReadOnlyList<SuggestedTopologyPart>? SuggestedTopologies, string? Note, IReadOnlyList<ComponentPart> Components, uint? Version);

    /// <summary>A topology that the parts of a board suggest and its tags do not hold; in drafts only, never stored.</summary>
    public sealed record SuggestedTopologyPart(Topology Topology, string Tag, double Score, IReadOnlyList<string> Reasons);

    /// <summary>A component: one part line. The package stands as read; its canonical name is null where it names no package that is known.</summary>
    public sealed record ComponentPart(
        Guid Id,
        string? Role,
        FunctionClass? FunctionClass,
        string? Designators,
        IReadOnlyList<string> DesignatorList,
        string? MarkingAsRead,
        string? PartNumber,
        string? Value,
        string? Package,
        string? PackageCanonical,
        string? Maker,
        string? Description,
        int? Quantity,
        int Parallel,
        int Series,
        bool IsFitted,
        string? Family,
        string? FamilyNow,
        Evidence? FamilyEvidence,
        Guid? RailId,
        CircuitPosition? CircuitPosition,
        string? Note,
        IReadOnlyList<RatingPart> Ratings,
        IReadOnlyDictionary<string, string>? ImportedRow,
        uint? Version);

    /// <summary>A rating.</summary>
    public sealed record RatingPart(Guid Id, RatingKind Kind, double Low, double Nominal, double High, Unit Unit, string? Condition, Evidence Evidence, string? Source, uint? Version);

    /// <summary>A photo.</summary>
    public sealed record PhotoPart(
        Guid Id,
        int Width,
        int Height,
        PhotoSubject Subject,
        Guid? BoardId,
        string? Caption,
        string? AltText,
        string? Credit,
        string? Licence,
        bool IsDrawing,
        IReadOnlyList<RenditionPart> Renditions,
        IReadOnlyList<CalloutPart> Callouts,
        uint? Version);

    /// <summary>A rendition.</summary>
    public sealed record RenditionPart(string Url, int Width, int Height);

    /// <summary>A callout; coordinates are fractions of the upright picture.</summary>
    public sealed record CalloutPart(
        Guid Id, int Number, CalloutShape Shape, double X, double Y, double? Width, double? Height, IReadOnlyList<double>? Corners, Guid? ComponentId, Guid? BoardId, Guid? PortId, uint? Version);

    /// <summary>A rail.</summary>
    public sealed record RailPart(Guid Id, string Name, RailKind Kind, Guid? PortId, string? Note, IReadOnlyList<RailQuantityPart> Quantities, uint? Version);

    /// <summary>A quantity of a rail; a derived one follows from cells or a port where nothing is recorded, and its source says how.</summary>
    public sealed record RailQuantityPart(RailQuantityKind Kind, double Low, double Nominal, double High, Unit Unit, Evidence Evidence, string? Source, bool IsDerived);

    /// <summary>A reading of a voltage where charge may be stored. It speaks for its moment only: after <c>fresh_until</c> it says nothing, and it takes no caution away.</summary>
    public sealed record DischargeReadingPart(
        Guid Id, Guid? RailId, string Place, double LowV, double NominalV, double HighV, DateTimeOffset TakenAt, DateTimeOffset FreshUntil, string? Instrument, uint? Version);

    /// <summary>A measured path across an insulation, with its assumptions and what it says beside the value it may be compared with.</summary>
    public sealed record IsolationPathPart(
        Guid Id,
        Guid? BoardId,
        string From,
        string To,
        PathKind? PathKind,
        double? LowMm,
        double? NominalMm,
        double? HighMm,
        string? Method,
        double? NarrowestGrooveMm,
        double? WorkingVoltageV,
        InsulationKind? Insulation,
        int? OvervoltageCategory,
        int? PollutionDegree,
        MaterialGroup? MaterialGroup,
        double? AltitudeM,
        double? FrequencyHz,
        bool? IsCoated,
        string? Remark,
        IsolationNotePart Note,
        uint? Version);

    /// <summary>What a path says: an orientation, never a verdict.</summary>
    public sealed record IsolationNotePart(IsolationOutcome Outcome, double? CompareWithMm, Confidence CompareWithMark, IReadOnlyList<string> Reasons, string DefersTo);

    /// <summary>A port.</summary>
    public sealed record PortPart(
        Guid Id, string Name, string Kind, PortDirection Direction, int Quantity, string? AsPrinted, IReadOnlyList<string> Protocols, IReadOnlyList<string> CapabilityWords, uint? Version);

    /// <summary>A claim.</summary>
    public sealed record ClaimPart(Guid Id, string Subject, string AsPrinted, double? Value, Unit? Unit, ClaimPlace Place, Guid? PortId, uint? Version);

    /// <summary>A bench test.</summary>
    public sealed record TestPart(
        Guid Id,
        string Subject,
        double? Low,
        double? Value,
        double? High,
        Unit? Unit,
        string? ResultText,
        string? Conditions,
        string? Instrument,
        DateOnly? CalibratedOn,
        double? AmbientDegC,
        string? Cable,
        DateOnly? TakenOn,
        Guid? PortId,
        uint? Version);

    /// <summary>A step.</summary>
    public sealed record StepPart(Guid Id, string Heading, string? Markdown, Guid? PhotoId, uint? Version);

    /// <summary>A finding.</summary>
    public sealed record FindingPart(Guid Id, string Heading, string Markdown, IReadOnlyList<Guid> ComponentIds, IReadOnlyList<Guid> PhotoIds, IReadOnlyList<Guid> TestIds, uint? Version);

    /// <summary>A figure with its working; it is about a component or a rail.</summary>
    public sealed record FigurePart(
        string Rule,
        int RuleVersion,
        Guid? ComponentId,
        Guid? RailId,
        double? Low,
        double? Nominal,
        double? High,
        Unit Unit,
        Verdict Verdict,
        bool StaticOnly,
        IReadOnlyList<MissingInput> Missing,
        Working Working);

    /// <summary>A publication.</summary>
    public sealed record PublicationPart(int Revision, RevisionState State, DateTimeOffset PublishedAt, string Note);

    /// <summary>The JSON form of a revision.</summary>
    public static TeardownJson From(TeardownRecord record)
    {
        ArgumentNullException.ThrowIfNull(record);
        var revision = record.Revision;
        var isDraft = revision.State is RevisionState.Draft or RevisionState.InReview;
        uint? Version(uint version) => isDraft ? version : null;
        var ratings = record.Ratings.ToLookup(row => row.ComponentId);
        var components = record.Components.ToLookup(row => row.BoardId);
        var callouts = record.Callouts.ToLookup(row => row.PhotoId);
        var rails = record.Facts.ByRail().ToDictionary(rail => rail.Rail.Id);
        var recorded = record.RailQuantities.ToDictionary(row => (row.RailId, row.Kind));
        var suggested = isDraft ? BoardTopologies.Suggest(record.Facts, record.Boards) : null;
        return new TeardownJson(
            record.Slug,
            record.Number,
            revision.Title,
            revision.Standfirst,
            new ProductPart(revision.Brand, revision.ProductName, revision.Model, revision.Category, revision.Year, revision.MassKg, revision.CellChemistry),
            new RevisionPart(revision.Number, revision.State, revision.PublishedAt, Version(revision.Version)),
            new SamplePart(revision.TakenApartOn, revision.TakenApartBy, revision.Obtained, revision.ObtainedNote, revision.Condition, revision.Firmware),
            revision.MethodMarkdown,
            Domain.Teardowns.Cautions.For(revision, record.Facts),
            Domain.Teardowns.Cautions.Deferral,
            Domain.Teardowns.Cautions.Screening,
            [
                .. record.Boards.Select((board, index) => new BoardPart(
                    board.Id.Value,
                    Board.Letter(index),
                    board.Name,
                    board.ParentId?.Value,
                    board.Topology,
                    isDraft ? [.. (suggested!.GetValueOrDefault(board.Id) ?? []).Select(score => new SuggestedTopologyPart(score.Topology, score.Topology.Word(), Math.Round(score.Score, 4), score.Reasons()))] : null,
                    board.Note,
                    [.. components[board.Id].Select(component => Component(component, record, ratings, isDraft))],
                    Version(board.Version))),
            ],
            [
                .. record.Photos.Select(photo => new PhotoPart(
                    photo.Id.Value,
                    photo.WidthPixels,
                    photo.HeightPixels,
                    photo.Subject,
                    photo.BoardId?.Value,
                    photo.Caption,
                    photo.AltText,
                    photo.Credit,
                    photo.Licence,
                    photo.IsDrawing,
                    [
                        .. RenditionWidths.For(photo.WidthPixels).Select(width => new RenditionPart(
                            Addresses.Rendition(photo.Sha256, width), width, Math.Max(1, (int)Math.Round((double)photo.HeightPixels * width / photo.WidthPixels)))),
                    ],
                    [
                        .. callouts[photo.Id].Select(callout => new CalloutPart(
                            callout.Id.Value,
                            callout.Number,
                            callout.Shape,
                            callout.X,
                            callout.Y,
                            callout.Width,
                            callout.Height,
                            callout.Shape is CalloutShape.Polygon ? callout.Corners : null,
                            callout.ComponentId?.Value,
                            callout.BoardId?.Value,
                            callout.PortId?.Value,
                            Version(callout.Version))),
                    ],
                    Version(photo.Version))),
            ],
            [
                .. record.Rails.Select(rail => new RailPart(
                    rail.Id.Value,
                    rail.Name,
                    rail.Kind,
                    rail.PortId?.Value,
                    rail.Note,
                    [.. Quantities(rail, rails[rail.Id], recorded)],
                    Version(rail.Version))),
            ],
            [
                .. record.DischargeReadings.Select(row => new DischargeReadingPart(
                    row.Id.Value, row.RailId?.Value, row.Place, row.LowV, row.NominalV, row.HighV, row.TakenAt, row.FreshUntil, row.Instrument, Version(row.Version))),
            ],
            [.. record.IsolationPaths.Select(row => IsolationPath(row, Version(row.Version)))],
            [.. record.Ports.Select(row => new PortPart(row.Id.Value, row.Name, row.Kind, row.Direction, row.Quantity, row.AsPrinted, row.Protocols, row.CapabilityWords, Version(row.Version)))],
            [.. record.Claims.Select(row => new ClaimPart(row.Id.Value, row.Subject, row.AsPrinted, row.Value, row.Unit, row.Place, row.PortId?.Value, Version(row.Version)))],
            [.. record.Tests.Select(row => Test(row, Version(row.Version)))],
            [.. record.Steps.Select(row => new StepPart(row.Id.Value, row.Heading, row.Markdown, row.PhotoId?.Value, Version(row.Version)))],
            [.. record.Findings.Select(row => new FindingPart(row.Id.Value, row.Heading, row.Markdown, row.ComponentIds, row.PhotoIds, row.TestIds, Version(row.Version)))],
            [
                .. record.Figures.Select(row => new FigurePart(
                    row.Rule, row.RuleVersion, row.ComponentId?.Value, row.RailId?.Value, row.Low, row.Nominal, row.High, row.Unit, row.Verdict, row.StaticOnly, row.Missing, row.Working)),
            ],
            record.Contradictions,
            [.. record.Publications.Select(row => new PublicationPart(row.RevisionNumber, row.State, row.Publication.PublishedAt, row.Publication.Note))]);
    }

    private static IEnumerable<RailQuantityPart> Quantities(Rail rail, RailFacts facts, Dictionary<(RailId, RailQuantityKind), RailQuantity> recorded)
    {
        foreach (var kind in Enum.GetValues<RailQuantityKind>())
        {
            if (recorded.TryGetValue((rail.Id, kind), out var row))
                yield return new RailQuantityPart(kind, row.Low, row.Nominal, row.High, kind.Unit(), row.Evidence, row.Source, false);
            else if (facts.Of(kind) is { } given)
                yield return new RailQuantityPart(kind, given.Interval.Low, given.Interval.Nominal, given.Interval.High, kind.Unit(), given.Evidence, given.Source, true);
        }
    }

    private static ComponentPart Component(BoardComponent row, TeardownRecord record, ILookup<ComponentId, Rating> ratings, bool isDraft) => new(
        row.Id.Value,
        row.Role,
        row.FunctionClass,
        row.Designators,
        row.DesignatorList,
        row.MarkingAsRead,
        row.PartNumber,
        row.Value,
        row.Package,
        row.ReadPackage().Canonical,
        row.MakerAsRead,
        row.Description,
        row.Quantity,
        row.ParallelCount,
        row.SeriesCount,
        row.IsFitted,
        record.FamilyOf(row)?.Slug,
        record.FamilyOf(row)?.Now?.Slug,
        row.FamilyEvidence,
        row.RailId?.Value,
        row.CircuitPosition,
        row.Note,
        [
            .. ratings[row.Id].Select(rating => new RatingPart(
                rating.Id.Value, rating.Kind, rating.Low, rating.Nominal, rating.High, rating.Kind.Unit(), rating.Condition, rating.Evidence, rating.Source, isDraft ? rating.Version : null)),
        ],
        isDraft && row.ImportedRow.Count > 0 ? ImportedRow(row.ImportedRow) : null,
        isDraft ? row.Version : null);

    // Headers are unique but for surplus cells of a row that could not be mended; those keep their place by a number.
    private static Dictionary<string, string> ImportedRow(IReadOnlyList<ImportedCell> cells)
    {
        var row = new Dictionary<string, string>(StringComparer.Ordinal);
        foreach (var cell in cells)
        {
            var header = cell.Header;
            for (var again = 2; !row.TryAdd(header, cell.Text); again++)
                header = FormattableString.Invariant($"{cell.Header} ({again})");
        }

        return row;
    }

    private static IsolationPathPart IsolationPath(MeasuredPath row, uint? version)
    {
        var note = row.ToNote();
        return new IsolationPathPart(
            row.Id.Value,
            row.BoardId?.Value,
            row.From,
            row.To,
            row.PathKind,
            row.LowMm,
            row.NominalMm,
            row.HighMm,
            row.Method,
            row.NarrowestGrooveMm,
            row.WorkingVoltageV,
            row.Insulation,
            row.OvervoltageCategory,
            row.PollutionDegree,
            row.MaterialGroup,
            row.AltitudeM,
            row.FrequencyHz,
            row.IsCoated,
            row.Remark,
            new IsolationNotePart(note.Outcome, note.OrientationMm, IsolationNote.Mark, note.Reasons, IsolationNote.Deferral),
            version);
    }

    private static TestPart Test(BenchTest row, uint? version) => new(
        row.Id.Value,
        row.Subject,
        row.Low,
        row.Value,
        row.High,
        row.Unit,
        row.ResultText,
        row.Conditions,
        row.Instrument,
        row.CalibratedOn,
        row.AmbientDegC,
        row.Cable,
        row.TakenOn,
        row.PortId?.Value,
        version);
}
