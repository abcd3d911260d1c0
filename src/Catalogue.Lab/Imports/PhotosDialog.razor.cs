using System.Text.Json;
using Catalogue.Data.Conversions;
using Catalogue.Data.Imports;
using Catalogue.Domain.Photos;
using Catalogue.Domain.Teardowns;
using Catalogue.Domain.Text;
using Microsoft.AspNetCore.Components;
using Microsoft.JSInterop;
using MudBlazor;

namespace Catalogue.Lab.Imports;

/// <summary>Many pictures at once: chosen, placed by their names, corrected, sent, reported. Files go one by one, a zip file as an import run.</summary>
public sealed partial class PhotosDialog
{
    /// <summary>The script that sends files; dialogs for other imports use it too.</summary>
    public const string Module = "./_content/Catalogue.Lab/Imports/PhotosDialog.razor.js";


    private readonly List<PictureInHand> _pictures = [];
    private readonly List<string> _newBoards = [];
    private readonly List<string> _paths = [];
    private readonly CancellationTokenSource _leaving = new();
    private DotNetObjectReference<PhotosDialog>? _self;
    private IJSObjectReference? _module;
    private IJSObjectReference? _sender;
    private ElementReference _files;
    private ElementReference _folder;
    private IReadOnlyList<string> _warnings = [];
    private Stage _stage = Stage.Choosing;
    private string? _problem;
    private string? _words;
    private string? _boardName;
    private bool _isBusy;
    private bool _isZip;
    private int _done;
    private int _total;
    private int _added;
    private int _there;
    private int _failed;

    private enum Stage
    {
        Choosing,
        Placing,
        Done,
    }

    [CascadingParameter]
    private IMudDialogInstance Dialog { get; set; } = default!;

    [Inject]
    private IJSRuntime Script { get; set; } = default!;

    [Inject]
    private ImportRuns Runs { get; set; } = default!;

    /// <summary>The teardown's address.</summary>
    [Parameter, EditorRequired]
    public required string Slug { get; set; }

    /// <summary>Its boards.</summary>
    [Parameter, EditorRequired]
    public required IReadOnlyList<Board> Boards { get; set; }

    /// <summary>The token against forged requests.</summary>
    [Parameter, EditorRequired]
    public required string FormToken { get; set; }

    /// <summary>Told when pictures were added.</summary>
    [Parameter, EditorRequired]
    public required Func<Task> Saved { get; set; }

    private IReadOnlyList<PlaceChoice> Choices => PlaceChoice.Of(Boards, _newBoards);

    private int Unsure => _pictures.Count(picture => picture.IsWanted && picture.Doubts.Count > 0);

    /// <inheritdoc />
    public async ValueTask DisposeAsync()
    {
        await _leaving.CancelAsync();
        _leaving.Dispose();
        try
        {
            if (_sender is not null)
                await _sender.DisposeAsync();
            if (_module is not null)
                await _module.DisposeAsync();
        }
        catch (JSDisconnectedException)
        {
            // The page is gone, and the script with it.
        }

        _self?.Dispose();
    }

    /// <summary>Some of the names of the files that were chosen; in small portions, since one message of the circuit holds little.</summary>
    [JSInvokable]
    public void Named(string[] paths) => _paths.AddRange(paths);

    /// <summary>What became of one file that was sent.</summary>
    [JSInvokable]
    public void Sent(int index, string? problem, bool wasThere)
    {
        var picture = _pictures.Find(picture => picture.Index == index);
        _done++;
        if (problem is not null)
        {
            _failed++;
            picture?.Remark = problem;
        }
        else if (wasThere)
        {
            _there++;
            picture?.Remark = "The teardown has this very picture already.";
        }
        else
        {
            _added++;
        }

        StateHasChanged();
    }

    private static string Count(int count, string noun) => count == 1 ? $"1 {noun}" : FormattableString.Invariant($"{count} {noun}s");

    private async Task ListAsync(ElementReference input)
    {
        if (_isBusy)
            return;
        _paths.Clear();
        await BusyAsync("Reading the names", async () =>
        {
            _self ??= DotNetObjectReference.Create(this);
            _module ??= await Script.InvokeAsync<IJSObjectReference>("import", Module);
            if (_sender is not null)
                await _sender.DisposeAsync();
            _sender = await _module.InvokeAsync<IJSObjectReference>("open", input, _self, FormToken);
            _isZip = await _sender.InvokeAsync<bool>("list");
            if (_isZip)
            {
                await ListZipAsync();
                return;
            }

            KnownBoard[] boards = [.. Boards.Select(board => new KnownBoard(board.Id, board.Position, board.Name))];
            var index = _paths.Select((path, at) => (path, at)).DistinctBy(item => item.path).ToDictionary(item => item.path, item => item.at);
            Show(PhotoNames.Propose([.. index.Keys], boards).Select(proposal => PictureInHand.Of(proposal, index[proposal.Path])));
        });
    }

    private async Task ListZipAsync()
    {
        _words = "Sending the zip file to be looked at";
        if (await RunZipAsync(dryRun: true, "{}") is { } report)
        {
            _warnings = report.Warnings;
            Show(report.Entries.Select(entry => entry.ToPicture()));
        }
    }

    private void Show(IEnumerable<PictureInHand> pictures)
    {
        _pictures.Clear();
        _pictures.AddRange(pictures);
        _newBoards.AddRange(_pictures.Select(picture => picture.Place?.NewBoard).OfType<string>().Distinct(StringComparer.OrdinalIgnoreCase));
        if (_pictures.Count == 0)
            _problem = "there is no file among what was chosen.";
        else
            _stage = Stage.Placing;
    }

    private void AddBoard()
    {
        if (PlainText.Clean(_boardName) is { } name && !_newBoards.Contains(name, StringComparer.OrdinalIgnoreCase))
            _newBoards.Add(name);
        _boardName = null;
    }

    private Task AddAsync() => BusyAsync("Adding the pictures", async () =>
    {
        if (_isZip)
        {
            if (await RunZipAsync(dryRun: false, PlacesJson()) is not { } report)
                return;
            (_added, _there, _failed, _warnings) = (report.Added, report.AlreadyThere, report.Refused, report.Warnings);
            _pictures.Clear();
            _pictures.AddRange(report.Entries.Where(entry => entry.Outcome is not ("added" or "left_out" or "skipped")).Select(entry => entry.ToPicture()));
        }
        else
        {
            var wanted = _pictures.Where(picture => picture.IsWanted).ToList();
            (_done, _total) = (0, wanted.Count);
            _pictures.ForEach(picture => picture.Remark = null);
            // One argument, not one for each picture.
            object places = wanted.Select(picture => new { picture.Index, Address = LabAddresses.Upload(Slug, picture.Path, picture.Place!) }).ToArray();
            await _sender!.InvokeVoidAsync("send", _leaving.Token, places);
        }

        _stage = Stage.Done;
        await Saved();
    });

    private string PlacesJson() => JsonSerializer.Serialize(
        _pictures.Where(picture => !picture.IsRefused).ToDictionary(
            picture => picture.Path,
            picture => picture.Place is { } place
                ? (object)new { place.Subject, Board = place.BoardId?.Value, place.NewBoard, place.Step, place.Caption }
                : new { LeaveOut = true }),
        StoredJson.Options);

    private async Task<PhotosRunReport?> RunZipAsync(bool dryRun, string places)
    {
        (_done, _total) = (0, 0);
        var sent = await _sender!.InvokeAsync<SentRun>("sendRun", _leaving.Token, LabAddresses.ImportPhotos(Slug, dryRun), new Dictionary<string, string> { ["places"] = places });
        (var report, _problem) = await sent.FollowAsync<PhotosRunReport>(Runs, ShowProgress, _leaving.Token);
        return report;

        void ShowProgress(ImportRun run)
        {
            (_done, _total) = (run.PartsDone, run.PartsTotal);
            _words = dryRun ? "Looking at the pictures" : FormattableString.Invariant($"Adding the pictures, {_done} of {_total}");
            StateHasChanged();
        }
    }

    private async Task BusyAsync(string words, Func<Task> work)
    {
        (_isBusy, _words, _problem) = (true, words, null);
        StateHasChanged();
        try
        {
            await work();
        }
        catch (OperationCanceledException) when (_leaving.IsCancellationRequested)
        {
            // The dialog was left; a run goes on by itself.
        }
        catch (JSException exception)
        {
            _problem = $"the browser could not do it: {exception.Message}";
        }
        finally
        {
            (_isBusy, _total) = (false, 0);
        }
    }
}
