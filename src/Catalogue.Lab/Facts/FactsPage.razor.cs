using Catalogue.Data.Teardowns;
using Catalogue.Domain.BenchLogs;
using Catalogue.Domain.Findings;
using Catalogue.Domain.Isolation;
using Catalogue.Domain.Photos;
using Catalogue.Domain.Products;
using Catalogue.Domain.Quantities;
using Catalogue.Domain.Rails;
using Catalogue.Domain.Teardowns;
using Catalogue.Lab.Accounts;
using Catalogue.Lab.Workbench;
using Microsoft.AspNetCore.Components;
using Microsoft.JSInterop;
using MudBlazor;

namespace Catalogue.Lab.Facts;

/// <summary>What a teardown says of product and sample, and its claims, ports, rails, discharge readings, isolation notes, bench tests and findings.</summary>
public sealed partial class FactsPage : IAsyncDisposable
{
    private readonly SemaphoreSlim _door = new(1, 1);
    private DotNetObjectReference<FactsPage>? _self;
    private IJSObjectReference? _module;
    private IJSObjectReference? _script;
    private ElementReference _root;
    private TeardownRecord? _record;
    private EditedFacts? _facts;
    private SaveState _state = SaveState.Untouched;
    private bool _isMissing;
    private bool _isStale;

    /// <summary>The teardown's address.</summary>
    [Parameter, EditorRequired]
    public required string Slug { get; set; }

    [CascadingParameter]
    private LabRequest Request { get; set; } = default!;

    [Inject]
    private TeardownRecordQuery Records { get; set; } = default!;

    [Inject]
    private TeardownChanges Changes { get; set; } = default!;

    [Inject]
    private CurrentEditor Editor { get; set; } = default!;

    [Inject]
    private TimeProvider Clock { get; set; } = default!;

    [Inject]
    private IDialogService Dialogs { get; set; } = default!;

    [Inject]
    private IJSRuntime Script { get; set; } = default!;

    private TeardownRecord Record => _record ?? throw new InvalidOperationException("Nothing was read yet.");

    private IReadOnlyList<Photo> Photos => [.. Record.Photos.Where(photo => photo.BoardId is null)];

    protected override async Task OnParametersSetAsync()
    {
        if (_record?.Slug != Slug)
            await ReloadAsync();
    }

    protected override async Task OnAfterRenderAsync(bool firstRender)
    {
        if (firstRender)
            _module = await Script.InvokeAsync<IJSObjectReference>("import", WorkbenchPage.Module);
        if (_module is not null && _facts is not null && _script is null)
        {
            _self = DotNetObjectReference.Create(this);
            _script = await _module.InvokeAsync<IJSObjectReference>("startUploads", _root, _self, Request.FormToken);
        }
    }

    /// <inheritdoc />
    public async ValueTask DisposeAsync()
    {
        try
        {
            if (_script is not null)
            {
                await _script.InvokeVoidAsync("stop");
                await _script.DisposeAsync();
            }

            if (_module is not null)
                await _module.DisposeAsync();
        }
        catch (JSDisconnectedException)
        {
            // The page is gone, and the script with it.
        }

        _self?.Dispose();
        // The door stays: saves that wait at it when the page is left are still done.
    }

    /// <summary>Files were taken in.</summary>
    [JSInvokable]
    public Task TakenInAsync() => ReadAsync();

    private async Task ReadAsync()
    {
        _record = await Records.LatestAsync(Slug);
        _isMissing = _record is null;
        StateHasChanged();
    }

    private async Task ReloadAsync()
    {
        await ReadAsync();
        _isStale = false;
        _facts = _record is { } record ? EditedFacts.Of(record.Revision) : null;
        StateHasChanged();
    }

    private async Task SaveAsync()
    {
        await _door.WaitAsync();
        try
        {
            if (_facts is not { } facts || _isStale)
                return;
            var (form, problem) = facts.Read();
            if (form is null)
            {
                Show(SaveState.NotSaved(problem!));
                return;
            }

            Show(SaveState.Saving);
            var outcome = await Changes.AmendAsync(Record.Id, facts.Version, _ => new ChangeOutcome<TeardownForm>.Done(form), await Editor.GetAsync());
            await ReadAsync();
            switch (outcome)
            {
                case ChangeOutcome<TeardownId>.Done:
                    facts.BeginFrom(Record.Revision);
                    Show(SaveState.Saved(Clock.GetLocalNow()));
                    break;
                case ChangeOutcome<TeardownId>.Stale:
                    _isStale = true;
                    Show(SaveState.Clash("record's facts"));
                    break;
                default:
                    Show(SaveState.NotSaved(outcome.Problem()!));
                    break;
            }
        }
        finally
        {
            _door.Release();
        }
    }

    private Task KeepAsync()
    {
        if (_facts is { } facts)
            facts.BeginFrom(Record.Revision);
        _isStale = false;
        return SaveAsync();
    }

    private async Task SavedAsync()
    {
        await ReadAsync();
        // A dialog's save may have opened the draft; facts that stand as they were read are still what the next save began from.
        if (_facts is { } facts && !_isStale && facts.BeganFrom(Record.Revision))
            facts.BeginFrom(Record.Revision);
        Show(SaveState.Saved(Clock.GetLocalNow()));
    }

    private void Show(SaveState state)
    {
        _state = state;
        StateHasChanged();
    }

    private async Task EditPhotoAsync(Photo photo) => await Dialogs.ShowAsync<PhotoDialog>(
        "Photo",
        new DialogParameters<PhotoDialog> { { dialog => dialog.Photo, photo }, { dialog => dialog.Boards, Record.Boards }, { dialog => dialog.Saved, SavedAsync } });

    private async Task EditClaimAsync(Claim? claim) => await Dialogs.ShowAsync<ClaimDialog>(
        "Claim",
        new DialogParameters<ClaimDialog> { { dialog => dialog.Teardown, Record.Id }, { dialog => dialog.Claim, claim }, { dialog => dialog.Ports, Record.Ports }, { dialog => dialog.Saved, SavedAsync } });

    private async Task EditPortAsync(Port? port) => await Dialogs.ShowAsync<PortDialog>(
        "Port",
        new DialogParameters<PortDialog> { { dialog => dialog.Teardown, Record.Id }, { dialog => dialog.Port, port }, { dialog => dialog.Saved, SavedAsync } });

    private async Task EditRailAsync(Rail? rail) => await Dialogs.ShowAsync<RailDialog>(
        "Rail",
        new DialogParameters<RailDialog>
        {
            { dialog => dialog.Record, Record },
            { dialog => dialog.Rail, rail },
            { dialog => dialog.Saved, _ => SavedAsync() },
        },
        new DialogOptions { MaxWidth = MaxWidth.Medium, FullWidth = true });

    private async Task EditReadingAsync(DischargeReading? reading) => await Dialogs.ShowAsync<DischargeReadingDialog>(
        "Discharge reading",
        new DialogParameters<DischargeReadingDialog> { { dialog => dialog.Record, Record }, { dialog => dialog.Reading, reading }, { dialog => dialog.Saved, SavedAsync } });

    private async Task EditPathAsync(MeasuredPath? path) => await Dialogs.ShowAsync<MeasuredPathDialog>(
        "Isolation note",
        new DialogParameters<MeasuredPathDialog> { { dialog => dialog.Record, Record }, { dialog => dialog.Path, path }, { dialog => dialog.Saved, SavedAsync } },
        new DialogOptions { MaxWidth = MaxWidth.Medium, FullWidth = true });

    private async Task EditTestAsync(BenchTest? test) => await Dialogs.ShowAsync<BenchTestDialog>(
        "Bench test",
        new DialogParameters<BenchTestDialog> { { dialog => dialog.Teardown, Record.Id }, { dialog => dialog.Test, test }, { dialog => dialog.Ports, Record.Ports }, { dialog => dialog.Saved, SavedAsync } });

    private async Task EditFindingAsync(Finding? finding) => await Dialogs.ShowAsync<FindingDialog>(
        "Finding",
        new DialogParameters<FindingDialog> { { dialog => dialog.Record, Record }, { dialog => dialog.Finding, finding }, { dialog => dialog.Saved, SavedAsync } });

    private string RailDetails(Rail rail)
    {
        var facts = Record.Facts.ByRail().First(facts => facts.Rail.Id == rail.Id);
        var known = Enum.GetValues<RailQuantityKind>().Where(kind => facts.Of(kind) is not null).Select(kind => $"{kind.Word()} {QuantityText.Of(facts.Of(kind)!.Interval, kind.Unit())}").ToList();
        return $"{rail.Kind.Word()}{(known.Count > 0 ? ": " + string.Join(", ", known) : "; nothing known of it yet")}";
    }

    private string ReadingDetails(DischargeReading reading) => string.Join(
        ", ",
        new[]
        {
            QuantityText.InBaseUnit(reading.Volts, Unit.Volt),
            LabWords.Moment(reading.TakenAt, Clock.GetUtcNow(), Clock.LocalTimeZone),
            Record.Rails.FirstOrDefault(rail => rail.Id == reading.RailId)?.Name,
            reading.Instrument,
        }.OfType<string>());

    private static string PathDetails(MeasuredPath path)
    {
        var note = path.ToNote();
        return $"{(path.PathKind is { } kind ? kind.Word() + " " : "")}{path.Distance()}, {note.CompareWith()}: {note.Outcome.Word()}";
    }

    private static string TestDetails(BenchTest test) =>
        test is { Low: { } low, Value: { } value, High: { } high, Unit: { } unit } ? QuantityText.Of(Interval.Create(low, value, high), unit) : test.ResultText ?? "";

    private static string FindingDetails(Finding finding) =>
        finding.ComponentIds.Length + finding.PhotoIds.Length + finding.TestIds.Length is var count && count == 0
            ? "rests on nothing named yet"
            : FormattableString.Invariant($"rests on {count} {(count == 1 ? "record" : "records")}");
}
