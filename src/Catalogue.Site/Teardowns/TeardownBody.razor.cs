using System.Globalization;
using Catalogue.Data.Publishing;
using Catalogue.Data.Teardowns;
using Catalogue.Domain.Photos;
using Catalogue.Domain.Products;
using Catalogue.Domain.Publishing;
using Catalogue.Domain.Teardowns;
using Microsoft.AspNetCore.Components;

namespace Catalogue.Site.Teardowns;

public sealed partial class TeardownBody
{
    private TeardownView _view = null!;
    private IReadOnlyList<KeyFact> _facts = [];
    private List<Photo> _others = [];
    private List<(string Anchor, string Title)> _sections = [];

    [Parameter, EditorRequired]
    public TeardownRecord Record { get; set; } = null!;

    [Parameter, EditorRequired]
    public LabSettings Settings { get; set; } = null!;

    /// <summary>The address readers know the site by, without a slash at its end; citations carry it.</summary>
    [Parameter, EditorRequired]
    public string SiteAddress { get; set; } = "";

    private string Category => Capital(_view.Revision.Category.Word());

    private string StateWord => _view.Revision.State switch
    {
        RevisionState.Published => "current",
        RevisionState.Superseded => "replaced",
        RevisionState.Withdrawn => "taken back",
        _ => "draft",
    };

    private string ObtainedWord => _view.Revision.Obtained switch
    {
        SampleSource.Bought => "bought by the lab",
        SampleSource.Lent => "lent, and given back",
        SampleSource.Sponsored => "given by somebody with an interest in the result",
        _ => "how it was obtained is not stated",
    };

    // “N figures” never counts unknown ones; those are told apart.
    private string FiguresInWords
    {
        get
        {
            var computed = _view.Figures.Count(figure => figure.IsComputed);
            var unknown = _view.Figures.Count - computed;
            return (computed, unknown) switch
            {
                (0, 0) => "No figure applies to what is recorded",
                (_, 0) => $"{Counted(computed, "figure", "figures")}, screened on one sample",
                (0, _) => $"No figure could be computed; {Counted(unknown, "lacks", "lack")} an input",
                _ => $"{Counted(computed, "figure", "figures")}, screened on one sample; {unknown.ToString(CultureInfo.InvariantCulture)} more could not be computed",
            };
        }
    }

    private string BoardsInWords => $"{Counted(Record.Boards.Count, "board", "boards")}, {Counted(Record.Components.Count, "component", "components")}";

    private string Citation
    {
        get
        {
            var by = _view.Revision.TakenApartBy is { } who ? who + ", " : "";
            var day = _view.Revision.PublishedAt is { } published ? Dates.Day(published) + ". " : "";
            return string.Create(
                CultureInfo.InvariantCulture,
                $"{by}“{_view.Revision.Title}”, teardown {_view.Number}, revision {_view.Revision.Number}, {Settings.LabName}, {day}{SiteAddress}{Addresses.Revision(Record.Slug, _view.Revision.Number)}");
        }
    }

    protected override void OnParametersSet()
    {
        _view = new TeardownView(Record);
        _facts = _view.KeyFacts();
        _others = [.. _view.OtherPhotos];
        _sections =
        [
            .. new (string Anchor, string Title, bool IsThere)[]
            {
                ("facts", "Key facts", _facts.Count > 0),
                ("findings", "Findings", Record.Findings.Count > 0),
                ("boards", "Boards and parts", Record.Boards.Count > 0),
                ("ports", "Ports", Record.Ports.Count > 0),
                ("margins", "Margins", _view.Figures.Count + _view.Added.Count > 0),
                ("rails", "Rails", Record.Rails.Count > 0),
                ("isolation", "Isolation notes", Record.IsolationPaths.Count > 0),
                ("tests", "Bench tests", Record.Tests.Count > 0),
                ("steps", "Taking it apart", Record.Steps.Count > 0),
                ("pictures", "More pictures", _others.Count > 0),
                ("method", "Method", !string.IsNullOrWhiteSpace(_view.Revision.MethodMarkdown)),
                ("corrections", "Corrections", true),
                ("cite", "Cite, download", true),
            }.Where(section => section.IsThere).Select(section => (section.Anchor, section.Title)),
        ];
    }

    private bool Has(string anchor) => _sections.Any(section => section.Anchor == anchor);

    private string No(string anchor) => (_sections.FindIndex(section => section.Anchor == anchor) + 1).ToString(CultureInfo.InvariantCulture);

    private static string Counted(int count, string one, string many) => $"{count.ToString(CultureInfo.InvariantCulture)} {(count == 1 ? one : many)}";

    private static string Capital(string text) => char.ToUpper(text[0], CultureInfo.InvariantCulture) + text[1..];
}
