using System.Globalization;
using Catalogue.Data.Teardowns;
using Catalogue.Domain.BenchLogs;
using Catalogue.Domain.Callouts;
using Catalogue.Domain.Components;
using Catalogue.Domain.Figures;
using Catalogue.Domain.Isolation;
using Catalogue.Domain.Photos;
using Catalogue.Domain.Products;
using Catalogue.Domain.Publishing;
using Catalogue.Domain.Rails;
using Catalogue.Domain.Teardowns;
using Catalogue.Domain.Text;
using Catalogue.Site.Callouts;
using Catalogue.Site.Figures;

namespace Catalogue.Site.Teardowns;

/// <summary>A teardown record with the lookups its page needs: which number a part carries, which photo shows a board, what a figure is called.</summary>
public sealed class TeardownView
{
    // Stand in a marking for a character that could not be made out.
    private static readonly System.Buffers.SearchValues<char> Unsure = System.Buffers.SearchValues.Create("?□");

    private readonly Dictionary<ComponentId, BoardComponent> _components;
    private readonly Dictionary<RailId, Rail> _rails;
    private readonly Dictionary<PhotoId, Photo> _photos;
    private readonly ILookup<ComponentId, Rating> _ratings;
    private readonly ILookup<ComponentId, Callout> _calloutsOf;
    private readonly ILookup<PhotoId, Callout> _calloutsOn;
    private readonly ILookup<RailId, RailQuantity> _quantities;
    private readonly Dictionary<RailId, RailFacts> _railFacts;
    private readonly ILookup<ComponentId, FigureView> _figuresOf;
    private readonly Dictionary<(Guid, string), FigureView> _current;
    private readonly Dictionary<PhotoId, int> _photoNumbers;

    public TeardownView(TeardownRecord record)
    {
        ArgumentNullException.ThrowIfNull(record);
        Record = record;
        _components = record.Components.ToDictionary(component => component.Id);
        _rails = record.Rails.ToDictionary(rail => rail.Id);
        _photos = record.Photos.ToDictionary(photo => photo.Id);
        _ratings = record.Ratings.ToLookup(rating => rating.ComponentId);
        _calloutsOf = record.Callouts.Where(callout => callout.ComponentId is not null).ToLookup(callout => callout.ComponentId!.Value);
        _calloutsOn = record.Callouts.ToLookup(callout => callout.PhotoId);
        _quantities = record.RailQuantities.ToLookup(quantity => quantity.RailId);
        _railFacts = record.Facts.ByRail().ToDictionary(facts => facts.Rail.Id);
        _photoNumbers = record.Photos.Select((photo, index) => (photo.Id, Number: index + 1)).ToDictionary(pair => pair.Id, pair => pair.Number);
        _current = record.CurrentFigures.Select(FigureView.Of).ToDictionary(figure => (figure.Subject, figure.Rule));
        var order = record.Components.Select(component => component.Id.Value).Concat(record.Rails.Select(rail => rail.Id.Value)).Select((id, index) => (id, index)).ToDictionary(pair => pair.id, pair => pair.index);
        var rules = FigureRules.All.Select((rule, index) => (rule.Code, index)).ToDictionary(pair => pair.Code, pair => pair.index);
        Figures = InOrder(record.Figures.Select(FigureView.Of));
        _figuresOf = Figures.Where(figure => figure.Component is not null).ToLookup(figure => figure.Component!.Value);
        var printed = Figures.Select(figure => (figure.Subject, figure.Rule)).ToHashSet();
        Added = InOrder(_current.Where(pair => !printed.Contains(pair.Key)).Select(pair => pair.Value));
        Cautions = Domain.Teardowns.Cautions.For(record.Revision, record.Facts);
        LeadPhoto = record.Photos.FirstOrDefault(photo => photo.Subject is PhotoSubject.Product);

        List<FigureView> InOrder(IEnumerable<FigureView> figures) =>
            [.. figures.Where(figure => order.ContainsKey(figure.Subject)).OrderBy(figure => rules.GetValueOrDefault(figure.Rule, rules.Count)).ThenBy(figure => order[figure.Subject])];
    }

    public TeardownRecord Record { get; }

    public Revision Revision => Record.Revision;

    /// <summary>The figures that the revision printed, in the order of the parts.</summary>
    public IReadOnlyList<FigureView> Figures { get; }

    /// <summary>Figures that the rules give now and the revision did not have.</summary>
    public IReadOnlyList<FigureView> Added { get; }

    public IReadOnlyList<Caution> Cautions { get; }

    /// <summary>The product from outside; no picture of an opened unit may stand before the cautions.</summary>
    public Photo? LeadPhoto { get; }

    /// <summary>Such as <c>T-041</c>.</summary>
    public string Number => Numbered(Record.Number);

    /// <summary>The revision that readers see now, or null when there is none or it is this one.</summary>
    public TeardownRecord.PublishedRevision? Successor =>
        Revision.State is RevisionState.Superseded ? Record.Publications.FirstOrDefault(publication => publication.State is RevisionState.Published) : null;

    /// <summary>The revision published before this one, or null.</summary>
    public int? Predecessor =>
        Record.Publications.Where(publication => publication.RevisionNumber < Revision.Number).Select(publication => (int?)publication.RevisionNumber).Max();

    public BoardComponent Component(ComponentId id) => _components[id];

    /// <summary>What a figure is about, in words.</summary>
    public string NameOf(FigureView figure)
    {
        ArgumentNullException.ThrowIfNull(figure);
        return figure.Component is { } component ? NameOf(_components[component]) : _rails[figure.Rail!.Value].Name;
    }

    /// <summary>The place on the page of what a figure is about.</summary>
    public string AnchorOf(FigureView figure)
    {
        ArgumentNullException.ThrowIfNull(figure);
        return figure.Component is { } component ? Addresses.ComponentAnchor(component) : RailAnchor(_rails[figure.Rail!.Value]);
    }

    public IEnumerable<BoardComponent> ComponentsOn(Board board) => Record.Components.Where(component => component.BoardId == board.Id);

    public IEnumerable<Rating> Ratings(BoardComponent component) => _ratings[component.Id];

    public IEnumerable<FigureView> FiguresOf(BoardComponent component) => _figuresOf[component.Id];

    public FigureView? Current(FigureView figure) => _current.GetValueOrDefault((figure.Subject, figure.Rule));

    public Rail? RailOf(BoardComponent component) => component.RailId is { } id ? _rails.GetValueOrDefault(id) : null;

    public Board? BoardOf(MeasuredPath path) => path is { BoardId: { } id } ? Record.Boards.FirstOrDefault(board => board.Id == id) : null;

    /// <summary>What is recorded of a rail, or derived where nothing is; null when neither.</summary>
    public Given? Quantity(Rail rail, RailQuantityKind kind) =>
        _quantities[rail.Id].FirstOrDefault(quantity => quantity.Kind == kind) is { } recorded ? new Given(recorded.Interval, recorded.Evidence, recorded.Source) : _railFacts[rail.Id].Of(kind);

    /// <summary>The callout a part is numbered by, or null while it is on no picture.</summary>
    public Callout? CalloutOf(BoardComponent component) => _calloutsOf[component.Id].OrderBy(callout => PhotoNumber(callout.PhotoId)).FirstOrDefault();

    public Callout? CalloutOf(Port port) => Record.Callouts.Where(callout => callout.PortId == port.Id).OrderBy(callout => PhotoNumber(callout.PhotoId)).FirstOrDefault();

    /// <summary>The number a photo is printed with, from 1; past the last where the photo is gone.</summary>
    public int PhotoNumber(PhotoId photo) => _photoNumbers.GetValueOrDefault(photo, _photoNumbers.Count + 1);

    public Photo? Photo(PhotoId id) => _photos.GetValueOrDefault(id);

    /// <summary>Photos of a board: its top, its bottom, then its details.</summary>
    public IEnumerable<Photo> PhotosOf(Board board) =>
        Record.Photos.Where(photo => photo.BoardId == board.Id && photo != LeadPhoto && photo.Subject is not PhotoSubject.Step).OrderBy(photo => photo.Subject).ThenBy(photo => PhotoNumber(photo.Id));

    /// <summary>Photos that stand nowhere else: neither at the top, nor with a board, nor with a step.</summary>
    public IEnumerable<Photo> OtherPhotos
    {
        get
        {
            var boards = Record.Boards.Select(board => board.Id).ToHashSet();
            var steps = Record.Steps.Select(step => step.PhotoId).ToHashSet();
            return Record.Photos.Where(photo =>
                photo != LeadPhoto && !steps.Contains(photo.Id)
                && (photo.BoardId is not { } board || !boards.Contains(board) || photo.Subject is PhotoSubject.Step));
        }
    }

    public IReadOnlyList<PhotoMark> Marks(Photo photo) => [.. _calloutsOn[photo.Id].Select(Mark)];

    /// <summary>What a photo shows, in words, or null where nothing is said.</summary>
    public string? PlaceOf(Photo photo)
    {
        var board = Record.Boards.FirstOrDefault(board => board.Id == photo.BoardId);
        var name = board is null ? null : $"board {Board.Letter(board.Position)}";
        return photo.Subject switch
        {
            PhotoSubject.Product => "the product",
            PhotoSubject.BoardTop => $"{name ?? "board"}, top",
            PhotoSubject.BoardBottom => $"{name ?? "board"}, bottom",
            PhotoSubject.Detail => name is null ? "detail" : $"{name}, detail",
            _ => name,
        };
    }

    /// <summary>The part in words: role and designators, else whatever names it.</summary>
    public static string NameOf(BoardComponent component)
    {
        ArgumentNullException.ThrowIfNull(component);
        var names = new[] { component.Role, component.Designators }.Where(text => !string.IsNullOrWhiteSpace(text)).ToList();
        if (names is [{ Length: > 0 } first, ..])
            names[0] = char.ToUpper(first[0], CultureInfo.InvariantCulture) + first[1..];
        return names.Count > 0
            ? string.Join(", ", names)
            : component.MarkingAsRead ?? component.PartNumber ?? component.Value ?? component.Description
                ?? string.Create(CultureInfo.InvariantCulture, $"component {component.Position + 1}");
    }

    /// <summary>How many there are and how they work together, such as <c>4 in parallel</c>.</summary>
    public static string Arrangement(BoardComponent component)
    {
        ArgumentNullException.ThrowIfNull(component);
        var words = new List<string>();
        if (component.ParallelCount > 1)
            words.Add(string.Create(CultureInfo.InvariantCulture, $"{component.ParallelCount} in parallel"));
        if (component.SeriesCount > 1)
            words.Add(string.Create(CultureInfo.InvariantCulture, $"{component.SeriesCount} in series"));
        if (component.Quantity is { } quantity && quantity > 1 && quantity != component.ParallelCount * component.SeriesCount)
            words.Insert(0, string.Create(CultureInfo.InvariantCulture, $"{quantity} of them"));
        return words.Count > 0 ? string.Join(", ", words) : "single";
    }

    /// <summary>True where nothing was read that says which part it is, or a character of the marking was not made out, and no family is known.</summary>
    public static bool IsUnread(BoardComponent component)
    {
        ArgumentNullException.ThrowIfNull(component);
        return component.FamilyId is null && (component.MarkingAsRead.AsSpan().ContainsAny(Unsure) || component is { MarkingAsRead: null, PartNumber: null, Value: null });
    }

    /// <summary>A line under a figure's title: the class of the part and its rail.</summary>
    public string? Beside(FigureView figure)
    {
        ArgumentNullException.ThrowIfNull(figure);
        if (figure.Rail is { } railId)
            return _rails[railId].Kind.Word() is { Length: > 0 } kind ? char.ToUpper(kind[0], CultureInfo.InvariantCulture) + kind[1..] : null;
        var component = Component(figure.Component!.Value);
        var words = new[] { component.FunctionClass?.Word(), component.ParallelCount > 1 || component.SeriesCount > 1 ? Arrangement(component) : null, RailOf(component) is { } rail ? $"on {rail.Name}" : null };
        var text = string.Join(", ", words.Where(word => word is not null));
        return text.Length > 0 ? char.ToUpper(text[0], CultureInfo.InvariantCulture) + text[1..] : null;
    }

    /// <summary>Claims and bench tests of the same subject, side by side, in the order of the claims.</summary>
    public IReadOnlyList<KeyFact> KeyFacts()
    {
        var subjects = Record.Claims.Select(claim => claim.Subject).Concat(Record.Tests.Select(test => test.Subject)).Select(subject => subject.Trim()).Distinct(StringComparer.OrdinalIgnoreCase).ToList();
        if (Revision.MassKg is not null && !subjects.Contains("mass", StringComparer.OrdinalIgnoreCase))
            subjects.Add("mass");
        return
        [
            .. subjects.Select(subject => new KeyFact(
                char.ToUpper(subject[0], CultureInfo.InvariantCulture) + subject[1..],
                [.. Record.Claims.Where(claim => IsAbout(claim.Subject, subject))],
                [.. Record.Tests.Where(test => IsAbout(test.Subject, subject))],
                IsAbout("mass", subject) ? Revision.MassKg : null)),
        ];
    }

    private static bool IsAbout(string text, string subject) => text.Trim().Equals(subject, StringComparison.OrdinalIgnoreCase);

    private PhotoMark Mark(Callout callout)
    {
        if (callout.ComponentId is { } id && _components.TryGetValue(id, out var component))
            return new PhotoMark(
                callout, NameOf(component), "#" + Addresses.ComponentAnchor(id), IsUnread(component), FiguresOf(component).Where(figure => figure.Verdict is not Verdict.NoLine).Select(figure => (Verdict?)figure.Verdict).Min());
        if (callout.PortId is { } portId && Record.Ports.FirstOrDefault(port => port.Id == portId) is { } found)
            return new PhotoMark(callout, found.Name, "#" + PortAnchor(found), false, null);
        return Record.Boards.FirstOrDefault(board => board.Id == callout.BoardId) is { } whole
            ? new PhotoMark(callout, $"board {Board.Letter(whole.Position)}, {whole.Name}", "#" + BoardAnchor(whole), false, null)
            : new PhotoMark(callout, null, null, false, null);
    }

    /// <summary>A teardown's number as it is printed, such as <c>T-041</c>.</summary>
    public static string Numbered(int number) => string.Create(CultureInfo.InvariantCulture, $"T-{number:000}");

    /// <summary>One sentence on the record for people who have not opened it.</summary>
    public static string Described(TeardownRecord record)
    {
        ArgumentNullException.ThrowIfNull(record);
        return record.Revision.Standfirst ?? $"Teardown of the {record.Revision.Brand} {record.Revision.ProductName}: parts, claims, measurements and margins.";
    }

    /// <summary>The list of the record's category, by name and address.</summary>
    public static (string Name, string Address) CategoryStep(TeardownRecord record)
    {
        ArgumentNullException.ThrowIfNull(record);
        var word = record.Revision.Category.Word();
        return (char.ToUpper(word[0], CultureInfo.InvariantCulture) + word[1..] + "s", Addresses.Category(SnakeCase.Code(record.Revision.Category)));
    }

    public static string BoardAnchor(Board board) => $"board-{board?.Id}";

    public static string PortAnchor(Port port) => $"port-{port?.Id}";

    public static string RailAnchor(Rail rail) => $"rail-{rail?.Id}";

    public static string IsolationAnchor(MeasuredPath path) => $"isolation-{path?.Id}";

    public static string TestAnchor(BenchTest test) => $"test-{test?.Id}";
}
