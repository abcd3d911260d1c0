using Catalogue.Data.BenchLogs;
using Catalogue.Data.Callouts;
using Catalogue.Data.Components;
using Catalogue.Data.Findings;
using Catalogue.Data.Isolation;
using Catalogue.Data.Photos;
using Catalogue.Data.Products;
using Catalogue.Data.Publishing;
using Catalogue.Data.Rails;
using Catalogue.Data.Teardowns;
using Catalogue.Domain.BenchLogs;
using Catalogue.Domain.Callouts;
using Catalogue.Domain.Components;
using Catalogue.Domain.Findings;
using Catalogue.Domain.Photos;
using Catalogue.Domain.Products;
using Catalogue.Domain.Rails;
using Catalogue.Domain.Teardowns;
using Catalogue.Domain.Text;
using Catalogue.Media.Photos;

namespace Catalogue.Web.Demo;

/// <summary>
/// Writes one teardown of the demo through the same changes that people and scripts use, and keeps the ids of what its records call each
/// other. Whatever is refused ends the planting with a text that says which record and why.
/// </summary>
internal sealed class DemoBuilder(IServiceProvider services, DemoTeardown data)
{
    private static readonly Editor Reviewer = new("I. Sorrel");
    private static readonly Editor Checker = new("M. Adair");

    private readonly Dictionary<string, PortId> _ports = [];
    private readonly Dictionary<string, RailId> _rails = [];
    private readonly Dictionary<string, BoardId> _boards = [];
    private readonly Dictionary<string, ComponentId> _parts = [];
    private readonly Dictionary<string, PhotoId> _photos = [];
    private readonly Dictionary<string, BenchTestId> _tests = [];
    private readonly Dictionary<string, FindingId> _findings = [];
    private TeardownId _teardown;
    private string _slug = "";

    /// <summary>Opens the teardown; its running number is given here.</summary>
    public async Task OpenAsync(CancellationToken cancellationToken)
    {
        var request = new CreateTeardown.Request(data.Brand, data.Name, data.Model, data.Category, data.Facts.Title);
        var created = Done("teardown", data.Name, await services.GetRequiredService<CreateTeardown>().RunAsync(request, Reviewer, cancellationToken));
        (_teardown, _slug) = (created.Id, created.Slug);
    }

    /// <summary>Writes everything of the first revision.</summary>
    public async Task FillAsync(CancellationToken cancellationToken)
    {
        var facts = data.Facts;
        (facts.ProductName, facts.Model, facts.Category) = (data.Name, data.Model, data.Category);
        Done("facts", data.Name, await services.GetRequiredService<TeardownChanges>().AmendAsync(
            _teardown, null, _ => new ChangeOutcome<TeardownForm>.Done(facts), Reviewer, cancellationToken));
        foreach (var port in data.Ports)
            _ports.Add(port.Name!, Done("port", port.Name!, await services.GetRequiredService<PortChanges>().AddAsync(_teardown, port, Reviewer, cancellationToken)));
        foreach (var claim in data.Claims)
            await AddClaimAsync(claim, cancellationToken);
        foreach (var rail in data.Rails)
            _rails.Add(rail.Name!, Done("rail", rail.Name!, await services.GetRequiredService<RailChanges>().AddAsync(_teardown, rail, Reviewer, cancellationToken)));
        await AddTestsAsync(data.Tests, cancellationToken);
        foreach (var picture in data.Pictures)
            await AddPictureAsync(picture, null, [], cancellationToken);
        foreach (var board in data.Boards)
            await AddBoardAsync(board, cancellationToken);
        foreach (var path in data.IsolationPaths)
        {
            path.Form.BoardId = _boards[path.Board].Value;
            Done("isolation path", path.Form.From!, await services.GetRequiredService<MeasuredPathChanges>().AddAsync(_teardown, path.Form, Reviewer, cancellationToken));
        }

        foreach (var reading in data.DischargeReadings)
        {
            reading.Form.RailId = _rails[reading.Rail].Value;
            Done("discharge reading", reading.Form.Place!, await services.GetRequiredService<DischargeReadingChanges>().AddAsync(_teardown, reading.Form, Reviewer, cancellationToken));
        }

        await AddFindingsAsync(data.Findings, cancellationToken);
        foreach (var step in data.Steps)
        {
            var form = new StepForm { Heading = step.Heading, Markdown = step.Markdown, PhotoId = step.Picture is { } file ? _photos[file].Value : null };
            Done("step", step.Heading, await services.GetRequiredService<StepChanges>().AddAsync(_teardown, form, Reviewer, cancellationToken));
        }
    }

    /// <summary>Publishes the first revision, then each correction.</summary>
    public async Task PublishAsync(CancellationToken cancellationToken)
    {
        await PublishAsync(null, cancellationToken);
        foreach (var correction in data.Corrections)
        {
            await CorrectAsync(correction, cancellationToken);
            await PublishAsync(correction.Note, cancellationToken);
        }
    }

    private async Task CorrectAsync(DemoCorrection correction, CancellationToken cancellationToken)
    {
        if (correction.Standfirst is { } standfirst)
            Done("facts", data.Name, await services.GetRequiredService<TeardownChanges>().AmendAsync(_teardown, null, WithStandfirst, Reviewer, cancellationToken));
        await AddTestsAsync(correction.Tests, cancellationToken);
        foreach (var rail in correction.Rails)
        {
            Done("rail", rail.Name!, await services.GetRequiredService<RailChanges>().AmendAsync(
                _rails[rail.Name!], null, _ => new ChangeOutcome<RailForm>.Done(rail), Reviewer, cancellationToken));
        }

        foreach (var finding in correction.Findings)
        {
            Done("finding", finding.Heading, await services.GetRequiredService<FindingChanges>().AmendAsync(
                _findings[finding.Heading], null, _ => new ChangeOutcome<FindingForm>.Done(Form(finding)), Reviewer, cancellationToken));
        }

        ChangeOutcome<TeardownForm> WithStandfirst(TeardownForm form)
        {
            form.Standfirst = correction.Standfirst;
            return new ChangeOutcome<TeardownForm>.Done(form);
        }
    }

    private async Task AddClaimAsync(DemoClaim claim, CancellationToken cancellationToken)
    {
        var form = new ClaimForm
        {
            Subject = claim.Subject,
            AsPrinted = claim.AsPrinted,
            Value = claim.Value,
            Unit = claim.Unit,
            Place = claim.Place,
            PortId = claim.Port is { } port ? _ports[port].Value : null,
        };
        Done("claim", claim.Subject, await services.GetRequiredService<ClaimChanges>().AddAsync(_teardown, form, Reviewer, cancellationToken));
    }

    private async Task AddTestsAsync(IReadOnlyList<DemoTest> tests, CancellationToken cancellationToken)
    {
        foreach (var test in tests)
        {
            test.Form.PortId = test.Port is { } port ? _ports[port].Value : null;
            _tests.Add(test.Key, Done("bench test", test.Key, await services.GetRequiredService<BenchTestChanges>().AddAsync(_teardown, test.Form, Reviewer, cancellationToken)));
        }
    }

    private async Task AddBoardAsync(DemoBoard board, CancellationToken cancellationToken)
    {
        var id = Done("board", board.Form.Name!, await services.GetRequiredService<BoardChanges>().AddAsync(_teardown, board.Form, Reviewer, cancellationToken));
        _boards.Add(board.Form.Name!, id);
        foreach (var part in board.Parts)
            await AddPartAsync(id, part, cancellationToken);
        foreach (var picture in board.Pictures)
            await AddPictureAsync(picture, id, board.Parts, cancellationToken);
    }

    private async Task AddPartAsync(BoardId board, DemoPart part, CancellationToken cancellationToken)
    {
        var form = new ComponentForm
        {
            Role = part.Role,
            FunctionClass = part.Class,
            Designators = part.Designators,
            MarkingAsRead = part.Marking,
            PartNumber = part.PartNumber,
            Value = part.Value,
            Package = part.Package,
            Maker = part.Maker,
            Quantity = part.Quantity,
            Parallel = part.Parallel,
            Series = part.Series,
            RailId = part.Rail is { } rail ? _rails[rail].Value : null,
            CircuitPosition = part.Position,
            Note = part.Note,
        };
        var id = Done("component", part.Designators, await services.GetRequiredService<ComponentChanges>().AddAsync(board, form, Reviewer, cancellationToken));
        _parts.Add(part.Designators, id);
        foreach (var rating in part.Ratings)
            Done("rating", $"{part.Designators} {rating.Kind}", await services.GetRequiredService<RatingChanges>().AddAsync(id, rating, Reviewer, cancellationToken));
    }

    private async Task AddPictureAsync(DemoPicture picture, BoardId? board, IReadOnlyList<DemoPart> parts, CancellationToken cancellationToken)
    {
        await using var stream = DemoPictures.Open(picture.File);
        if (await services.GetRequiredService<PhotoIntake>().ReceiveAsync(stream, cancellationToken) is not PhotoReceipt.Accepted accepted)
            throw new InvalidOperationException($"The demo's picture “{picture.File}” was not taken in.");
        var file = new PhotoChanges.TakenIn(
            accepted.Hash.Text, SnakeCase.Code(accepted.Kind), accepted.Bytes, accepted.Width, accepted.Height, picture.File);
        picture.Form.BoardId = board?.Value;
        picture.Form.IsDrawing = true;
        picture.Form.Credit = "Tallow Lane Bench, drawn for this record";
        var photo = Done("photo", picture.File, await services.GetRequiredService<PhotoChanges>().AddAsync(_teardown, file, picture.Form, Reviewer, cancellationToken));
        _photos.Add(picture.File, photo);

        var places = DemoPictures.PlacesIn(picture.File);
        if (board is null)
        {
            foreach (var port in data.Ports.Where(port => places.ContainsKey(port.Name!)))
                await AddCalloutAsync(photo, port.Name!, places[port.Name!], form => form.PortId = _ports[port.Name!].Value, cancellationToken);
        }

        foreach (var part in parts.Where(part => places.ContainsKey(part.Designators)))
            await AddCalloutAsync(photo, part.Designators, places[part.Designators], form => form.ComponentId = _parts[part.Designators].Value, cancellationToken);
    }

    private async Task AddCalloutAsync(PhotoId photo, string name, DemoPictures.Place place, Action<CalloutForm> pointAt, CancellationToken cancellationToken)
    {
        var form = place.IsGroup
            ? new CalloutForm { Shape = CalloutShape.Box, X = place.X, Y = place.Y, Width = place.Width, Height = place.Height }
            : new CalloutForm { Shape = CalloutShape.Pin, X = place.PinX, Y = place.PinY };
        pointAt(form);
        Done("callout", name, await services.GetRequiredService<CalloutChanges>().AddAsync(photo, form, Reviewer, cancellationToken));
    }

    private async Task AddFindingsAsync(IReadOnlyList<DemoFinding> findings, CancellationToken cancellationToken)
    {
        foreach (var finding in findings)
            _findings.Add(finding.Heading, Done("finding", finding.Heading, await services.GetRequiredService<FindingChanges>().AddAsync(_teardown, Form(finding), Reviewer, cancellationToken)));
    }

    private FindingForm Form(DemoFinding finding) => new()
    {
        Heading = finding.Heading,
        Markdown = finding.Markdown,
        ComponentIds = [.. finding.Parts.Select(part => _parts[part].Value)],
        TestIds = [.. finding.Tests.Select(test => _tests[test].Value)],
    };

    private async Task PublishAsync(string? note, CancellationToken cancellationToken) =>
        Done("publication", _slug, await services.GetRequiredService<PublishTeardown>().RunAsync(_slug, note, Checker, cancellationToken));

    private T Done<T>(string noun, string name, ChangeOutcome<T> outcome) => outcome switch
    {
        ChangeOutcome<T>.Done done => done.Value,
        ChangeOutcome<T>.Refused refused => throw new InvalidOperationException($"Demo teardown {data.Brand} {data.Name}, {noun} “{name}” was refused: {refused.Field}: {refused.Reason}"),
        ChangeOutcome<T>.NotFound missing => throw new InvalidOperationException($"Demo teardown {data.Brand} {data.Name}, {noun} “{name}”: {missing.Reason}"),
        ChangeOutcome<T>.Stale stale => throw new InvalidOperationException($"Demo teardown {data.Brand} {data.Name}, {noun} “{name}”: {stale.Reason}"),
        _ => throw new InvalidOperationException("The outcome is of no known kind."),
    };
}
