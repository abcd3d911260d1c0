using Catalogue.Data.Callouts;
using Catalogue.Data.Components;
using Catalogue.Data.Families;
using Catalogue.Data.Teardowns;
using Catalogue.Domain.Callouts;
using Catalogue.Domain.Components;
using Catalogue.Domain.Figures;
using Catalogue.Domain.Photos;
using Catalogue.Domain.Rails;
using Catalogue.Domain.Teardowns;
using Catalogue.Domain.Text;
using Catalogue.Domain.Topologies;
using Catalogue.Lab.Accounts;
using Catalogue.Lab.Imports;
using Microsoft.AspNetCore.Components;
using Microsoft.JSInterop;
using MudBlazor;

namespace Catalogue.Lab.Workbench;

/// <summary>Photo and callouts beside the component grid and the figures of one board.</summary>
public sealed partial class WorkbenchPage : IAsyncDisposable
{
    /// <summary>The script of the page: pointers, keys outside fields, sending files.</summary>
    public const string Module = "./_content/Catalogue.Lab/Workbench/WorkbenchPage.razor.js";

    // One change at a time, in the order in which they were made: each expects the version that the one before left.
    private readonly SemaphoreSlim _door = new(1, 1);
    private DotNetObjectReference<WorkbenchPage>? _self;
    private IJSObjectReference? _module;
    private IJSObjectReference? _script;
    private ElementReference _bench;
    private string? _scriptedFor;
    private TeardownRecord? _record;
    private Board? _board;
    private Photo? _photo;
    private RowInHand? _row;
    private CalloutId? _chosen;
    private RatingKind? _wanted;
    private SaveState _state = SaveState.Untouched;
    private string? _mode;
    private string? _filter;
    private string? _focus;
    private bool _isMissing;
    private bool _isAdding;
    private bool _isFiguresOpen;

    /// <summary>The teardown's address.</summary>
    [Parameter, EditorRequired]
    public required string Slug { get; set; }

    /// <summary>The id of the board to show; without one the first.</summary>
    [SupplyParameterFromQuery(Name = "board")]
    public string? BoardText { get; set; }

    [CascadingParameter]
    private LabRequest Request { get; set; } = default!;

    [Inject]
    private ComponentCandidatesQuery Candidates { get; set; } = default!;

    [Inject]
    private IdentifyComponent Identify { get; set; } = default!;

    [Inject]
    private TeardownRecordQuery Records { get; set; } = default!;

    [Inject]
    private ComponentChanges ComponentChanges { get; set; } = default!;

    [Inject]
    private RatingChanges RatingChanges { get; set; } = default!;

    [Inject]
    private CalloutChanges CalloutChanges { get; set; } = default!;

    [Inject]
    private CurrentEditor Editor { get; set; } = default!;

    [Inject]
    private TimeProvider Clock { get; set; } = default!;

    [Inject]
    private IDialogService Dialogs { get; set; } = default!;

    [Inject]
    private ISnackbar Snackbar { get; set; } = default!;

    [Inject]
    private IJSRuntime Script { get; set; } = default!;

    [Inject]
    private NavigationManager Navigation { get; set; } = default!;

    private TeardownRecord Record => _record ?? throw new InvalidOperationException("Nothing was read yet.");

    private IReadOnlyList<BoardComponent> BoardComponents => [.. Record.Components.Where(component => component.BoardId == _board?.Id)];

    private Dictionary<ComponentId, BoardComponent> ById => Record.Components.ToDictionary(component => component.Id);

    private IReadOnlyList<Photo> BoardPhotos => [.. Record.Photos.Where(photo => photo.BoardId == _board?.Id)];

    private IReadOnlyList<BoardComponent> Shown =>
        string.IsNullOrWhiteSpace(_filter)
            ? BoardComponents
            : [.. BoardComponents.Where(component => component.Id == _row?.Id || TextsOf(component).Any(text => text?.Contains(_filter.Trim(), StringComparison.OrdinalIgnoreCase) is true))];

    private IReadOnlyList<Figure> Figures => [.. Record.Figures.Where(figure => figure.ComponentId is not { } id || (ById.TryGetValue(id, out var component) && component.BoardId == _board?.Id))];

    // The worst of a component's verdicts stands for it.
    private Dictionary<ComponentId, Verdict> Verdicts => Record.Figures.Where(figure => figure is { ComponentId: not null, Verdict: not Verdict.NoLine }).GroupBy(figure => figure.ComponentId!.Value).ToDictionary(group => group.Key, group => group.Min(figure => figure.Verdict));

    private Dictionary<ComponentId, int> Numbers =>
        Record.Callouts.Where(callout => callout.ComponentId is not null).GroupBy(callout => callout.ComponentId!.Value).ToDictionary(group => group.Key, group => group.Min(callout => callout.Number));

    private Callout? ChosenCallout => Record.Callouts.FirstOrDefault(callout => callout.Id == _chosen && callout.PhotoId == _photo?.Id);

    private string CountWords => BoardComponents.Count(component => Numbers.ContainsKey(component.Id)) is var placed && placed == BoardComponents.Count
        ? FormattableString.Invariant($"{BoardComponents.Count}")
        : FormattableString.Invariant($"{BoardComponents.Count}, {placed} with a callout");

    private string ModeWords => _mode switch
    {
        "pin" => _row is null ? "Click the part. The callout will point at nothing yet." : $"Click the part: the callout is for {NameOf(_row.Id)}.",
        "box" => _row is null ? "Drag a box around the part. It will point at nothing yet." : $"Drag a box around {NameOf(_row.Id)}.",
        _ => "",
    };

    protected override async Task OnParametersSetAsync()
    {
        if (_record?.Slug != Slug)
        {
            (_row, _photo, _chosen) = (null, null, null);
            await ReadAsync();
        }

        ChooseBoard();
    }

    protected override async Task OnAfterRenderAsync(bool firstRender)
    {
        if (firstRender)
        {
            _self = DotNetObjectReference.Create(this);
            _module = await Script.InvokeAsync<IJSObjectReference>("import", Module);
        }

        // The bench is there only with a board; its script starts with it.
        if (_module is not null && _board is not null && _scriptedFor != Slug)
        {
            _scriptedFor = Slug;
            _script = await _module.InvokeAsync<IJSObjectReference>("start", _bench, _self, Request.FormToken);
        }

        if (_focus is { } selector && _script is not null)
        {
            _focus = null;
            await _script.InvokeVoidAsync("focus", selector);
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

    /// <summary>A key that was pressed outside fields, or one that means the same everywhere.</summary>
    [JSInvokable]
    public Task KeyAsync(string key) => FromScriptAsync(() => key switch
    {
        "pin" or "box" => ArmAsync(key),
        "next" => StepAsync(1),
        "previous" => StepAsync(-1),
        "save-next" => NextAfterSaveAsync(),
        "close" => CloseAsync(),
        _ => Task.CompletedTask,
    });

    /// <summary>A press on the photo while a pin is to be placed; fractions of the upright picture.</summary>
    [JSInvokable]
    public Task PinAsync(double x, double y) => FromScriptAsync(() => PlaceAsync(x, y));

    /// <summary>A box that was drawn; fractions of the upright picture.</summary>
    [JSInvokable]
    public Task BoxAsync(double x, double y, double width, double height) => FromScriptAsync(() => PlaceAsync(x, y, width, height));

    /// <summary>A callout that was dragged or nudged by so much.</summary>
    [JSInvokable]
    public Task MoveAsync(string id, double dx, double dy) => FromScriptAsync(() => Find(id) is { } callout ? MoveAsync(callout, dx, dy) : Task.CompletedTask);

    /// <summary>A callout that the delete key was pressed on.</summary>
    [JSInvokable]
    public Task DeleteAsync(string id) => FromScriptAsync(() => Find(id) is { } callout ? RemoveCalloutAsync(callout) : Task.CompletedTask);

    /// <summary>Files were taken in; the last picture of them is shown.</summary>
    [JSInvokable]
    public Task TakenInAsync(string? lastId) => FromScriptAsync(async () =>
    {
        await ReadAsync();
        if (Record.Photos.FirstOrDefault(photo => photo.Id.ToString() == lastId) is { } taken && taken.BoardId == _board?.Id)
            _photo = taken;
    });

    private async Task FromScriptAsync(Func<Task> handle)
    {
        try
        {
            await handle();
            StateHasChanged();
        }
        catch (Exception exception) when (exception is not JSDisconnectedException)
        {
            // To the error boundary of the layout, as any event handler's.
            await DispatchExceptionAsync(exception);
        }
    }

    private async Task ReadAsync()
    {
        _record = await Records.LatestAsync(Slug);
        _isMissing = _record is null;
        if (_record is null)
            return;
        ChooseBoard();
        _photo = _photo is { } shown ? BoardPhotos.FirstOrDefault(photo => photo.Id == shown.Id) ?? FirstPhoto() : FirstPhoto();
        if (_row is { } row && !ById.ContainsKey(row.Id))
            _row = null;
        StateHasChanged();
    }

    private void ChooseBoard()
    {
        if (_record is not { } record)
            return;
        var before = _board?.Id;
        _board = record.Boards.FirstOrDefault(board => board.Id.ToString() == BoardText) ?? (record.Boards.Count > 0 ? record.Boards[0] : null);
        if (_board?.Id == before)
            return;
        (_photo, _row, _chosen, _mode, _filter) = (FirstPhoto(), null, null, null, null);
    }

    private Photo? FirstPhoto() => BoardPhotos.FirstOrDefault(photo => photo.Subject is PhotoSubject.BoardTop) ?? (BoardPhotos.Count > 0 ? BoardPhotos[0] : null);

    private void ShowPhoto(Photo photo) => (_photo, _chosen, _mode) = (photo, null, null);

    private IReadOnlyList<Callout> CalloutsOn(Photo photo) => [.. Record.Callouts.Where(callout => callout.PhotoId == photo.Id)];

    private Callout? Find(string id) => Record.Callouts.FirstOrDefault(callout => callout.Id.ToString() == id);

    private string NameOf(ComponentId id) => ById.TryGetValue(id, out var component) ? component.Name : "a component";

    private string PhotoTitle(Photo photo) => FormattableString.Invariant($"Photo {photo.Position + 1}, {(_board is { } board ? $"board {Board.Letter(board.Position)}, " : "")}{photo.Subject.Brief()}");

    private static string?[] TextsOf(BoardComponent component) =>
        [component.Role, component.Designators, component.MarkingAsRead, component.PartNumber, component.Package, component.Value, component.MakerAsRead, component.FunctionClass?.Word()];

    // ---- the row in hand

    private Task OpenAsync(ComponentId id, string focus = "#f-role")
    {
        if (ById.TryGetValue(id, out var component))
        {
            if (_row?.Id != id)
                _row = RowInHand.Of(component, Record.Families);
            (_chosen, _wanted, _focus) = (null, null, focus);
        }

        return Task.CompletedTask;
    }

    private Task OpenCalloutAsync(Callout callout)
    {
        if (callout.ComponentId is { } component)
            return OpenAsync(component);
        _chosen = _chosen == callout.Id ? null : callout.Id;
        return Task.CompletedTask;
    }

    private Task OpenFigureAsync(Figure figure) =>
        figure.ComponentId is { } component ? OpenAsync(component) : EditRailAsync(figure.RailId!.Value.Value, null);

    private async Task OpenMissingAsync((Figure Figure, string Input) missing)
    {
        var quantity = SnakeCase.TryParse<RailQuantityKind>(missing.Input);
        if (missing.Figure.ComponentId is not { } component)
        {
            await EditRailAsync(missing.Figure.RailId!.Value.Value, quantity);
            return;
        }

        // What a fuse asks of the cells is entered at the cells.
        if (missing.Input is "cell_resistance" && ById[component] is { FunctionClass: not FunctionClass.Cell, RailId: { } cellRail } && Record.Facts.ByRail().FirstOrDefault(rail => rail.Rail.Id == cellRail) is { Cells: [var cell, ..] })
            component = cell.Component.Id;
        await OpenAsync(component, missing.Input switch
        {
            "rail" => "#f-rail",
            "circuit_position" => "#f-position",
            _ => "#r-text",
        });
        _wanted = SnakeCase.TryParse<RatingKind>(missing.Input);
        if (quantity is not null && ById[component].RailId is { } rail)
        {
            _focus = null;
            await EditRailAsync(rail.Value, quantity);
        }
    }

    private string NameOfSubject(Figure figure) =>
        figure.ComponentId is { } component ? NameOf(component) : Record.Rails.First(rail => rail.Id == figure.RailId).Name;

    private Task StepAsync(int by)
    {
        var rows = Shown;
        if (rows.Count == 0)
            return Task.CompletedTask;
        var at = _row is { } row ? rows.Select((component, index) => (component, index)).FirstOrDefault(pair => pair.component.Id == row.Id).index + by : by > 0 ? 0 : rows.Count - 1;
        return at >= 0 && at < rows.Count ? OpenAsync(rows[at].Id) : Task.CompletedTask;
    }

    private async Task NextAfterSaveAsync()
    {
        if (_row is not { } row)
            return;
        await _door.WaitAsync();
        _door.Release();
        if (row.IsSettled && row == _row)
            await StepAsync(1);
    }

    private async Task CloseAsync()
    {
        await Task.Yield();
        if (_mode is not null)
            _mode = null;
        else
            CloseRow();
    }

    private void CloseRow()
    {
        if (_row is { } row)
            _focus = $"#open-{row.Id}";
        (_row, _chosen, _wanted) = (null, null, null);
    }

    private async Task SaveRowAsync(RowInHand row)
    {
        await _door.WaitAsync();
        try
        {
            // An earlier save may have taken this edit along.
            if (!row.IsDue)
                return;
            var edits = row.Edits;
            Show(SaveState.Saving);
            var outcome = await ComponentChanges.AmendAsync(row.Id, row.Version, now => new ChangeOutcome<ComponentForm>.Done(row.Into(now)), await Editor.GetAsync());
            if (outcome is ChangeOutcome<ComponentId>.NotFound or ChangeOutcome<ComponentId>.Refused)
            {
                Show(SaveState.NotSaved(outcome.Problem()!));
                return;
            }

            await ReadAsync();
            if (!ById.TryGetValue(row.Id, out var component))
                Show(SaveState.NotSaved("the component was removed by somebody else."));
            else if (outcome is ChangeOutcome<ComponentId>.Done)
            {
                row.Saved(edits, component, Record.Families);
                Show(SaveState.Saved(Clock.GetLocalNow()));
            }
            else
            {
                row.Clashed(component);
                Show(SaveState.Clash("component"));
            }
        }
        finally
        {
            _door.Release();
        }
    }

    private async Task ResolveAsync(RowInHand row, bool keepMine)
    {
        if (keepMine)
        {
            row.KeepMine();
            await SaveRowAsync(row);
        }
        else
        {
            row.TakeTheirs(Record.Families);
            Show(SaveState.Untouched);
        }
    }

    private async Task AddComponentAsync(Callout? at = null)
    {
        if (_isAdding || _board is not { } board)
            return;
        _isAdding = true;
        try
        {
            ComponentId? added = null;
            await ChangeAsync(async who =>
            {
                var outcome = await ComponentChanges.AddAsync(board.Id, new ComponentForm(), who);
                added = outcome is ChangeOutcome<ComponentId>.Done done ? done.Value : null;
                return outcome.Problem();
            });
            if (added is { } id)
            {
                if (at is not null)
                    await AmendCalloutAsync(at, form => (form.ComponentId, form.Number) = (id.Value, at.Number));
                _filter = null;
                await OpenAsync(id);
            }
        }
        finally
        {
            _isAdding = false;
        }
    }

    private Task ComponentAtAsync(Callout callout) => AddComponentAsync(callout);

    private async Task RemoveComponentAsync(BoardComponent component)
    {
        var sure = await Dialogs.ShowMessageBoxAsync(
            "Remove this component?",
            $"{component.Name} leaves the draft with its ratings. Published revisions keep it.",
            yesText: "Remove",
            cancelText: "Keep");
        if (sure is not true)
            return;
        if (await ChangeAsync(async who => (await ComponentChanges.RemoveAsync(component.Id, component.Version, who)).Problem()))
            _row = null;
    }

    private async Task<string?> AddRatingAsync(ComponentId component, RatingForm form)
    {
        string? problem = null;
        await ChangeAsync(async who => problem = (await RatingChanges.AddAsync(component, form, who)).Problem());
        if (problem is null)
            _wanted = null;
        return problem;
    }

    private async Task<string?> RemoveRatingAsync(Rating rating)
    {
        string? problem = null;
        await ChangeAsync(async who => problem = (await RatingChanges.RemoveAsync(rating.Id, rating.Version, who)).Problem());
        return problem;
    }

    private async Task<string?> IdentifyAsync(RowInHand row, CandidatePick.Choice choice)
    {
        await SaveRowAsync(row);
        if (!row.IsSettled)
            return "what stands in the fields is not saved yet.";
        string? problem = null;
        var request = new IdentifyComponent.Request(choice.Family, choice.Evidence, choice.TakesRatings);
        await ChangeAsync(async who => problem = (choice.Number is { } number ? await Identify.OpenAsync(row.Id, number, choice.Evidence, who) : await Identify.RunAsync(row.Id, request, who)).Problem());
        if (problem is null && ById.TryGetValue(row.Id, out var component))
        {
            row.Identified(component, Record.Families);
            // The list is gone, and the focus with it.
            _focus = "#f-mark";
            StateHasChanged();
        }

        return problem;
    }

    // ---- callouts

    private Task ArmAsync(string mode)
    {
        _mode = _mode == mode || _photo is null ? null : mode;
        return Task.CompletedTask;
    }

    private async Task PlaceAsync(double x, double y, double? width = null, double? height = null)
    {
        if (_photo is not { } photo)
            return;
        _mode = null;
        CalloutId? placed = null;
        var inHand = _row?.Id;
        await ChangeAsync(async who =>
        {
            var form = new CalloutForm { Shape = width is null ? CalloutShape.Pin : CalloutShape.Box, X = x, Y = y, Width = width, Height = height, ComponentId = inHand?.Value };
            var outcome = await CalloutChanges.AddAsync(photo.Id, form, who);
            placed = outcome is ChangeOutcome<CalloutId>.Done done ? done.Value : null;
            return outcome.Problem();
        });
        if (placed is { } id)
            (_chosen, _focus) = (inHand is null ? id : null, $"button[data-callout='{id}']");
    }

    private Task<bool> MoveAsync(Callout callout, double dx, double dy) => AmendCalloutAsync(callout, form =>
    {
        if (form.Shape is CalloutShape.Polygon)
            form.Corners = [.. (form.Corners ?? []).Select((value, index) => Math.Clamp(value + (index % 2 == 0 ? dx : dy), 0, 1))];
        form.X = Math.Clamp((form.X ?? 0) + dx, 0, 1 - (form.Width ?? 0));
        form.Y = Math.Clamp((form.Y ?? 0) + dy, 0, 1 - (form.Height ?? 0));
    });

    private Task<bool> AmendCalloutAsync(Callout callout, Action<CalloutForm> change) => ChangeAsync(async who =>
    {
        // The version that stands now: moves of the same callout follow each other faster than the page is drawn.
        var version = Record.Callouts.FirstOrDefault(row => row.Id == callout.Id)?.Version ?? callout.Version;
        var outcome = await CalloutChanges.AmendAsync(
            callout.Id,
            version,
            form =>
            {
                change(form);
                return new ChangeOutcome<CalloutForm>.Done(form);
            },
            who);
        return outcome.Problem();
    });

    private async Task RemoveCalloutAsync(Callout callout)
    {
        if (!await ChangeAsync(async who => (await CalloutChanges.RemoveAsync(callout.Id, null, who)).Problem()))
            return;
        _chosen = null;
        Snackbar.Add(
            FormattableString.Invariant($"Callout {callout.Number} removed"),
            configure: options =>
            {
                options.Action = "Put it back";
                options.OnClick = _ => InvokeAsync(() => PutBackAsync(callout));
            });
    }

    private Task<bool> PutBackAsync(Callout callout) => ChangeAsync(async who =>
    {
        var form = new CalloutForm
        {
            Shape = callout.Shape,
            X = callout.X,
            Y = callout.Y,
            Width = callout.Width,
            Height = callout.Height,
            Corners = callout.Corners,
            Number = callout.Number,
            ComponentId = callout.ComponentId?.Value,
            BoardId = callout.BoardId?.Value,
            PortId = callout.PortId?.Value,
        };
        return (await CalloutChanges.AddAsync(callout.PhotoId, form, who)).Problem();
    });

    // ---- dialogs

    private async Task EditBoardAsync(Board? board) => await Dialogs.ShowAsync<BoardDialog>(
        "Board",
        new DialogParameters<BoardDialog>
        {
            { dialog => dialog.Teardown, Record.Id },
            { dialog => dialog.Board, board },
            { dialog => dialog.Suggested, board is null ? [] : BoardTopologies.Suggest(Record.Facts, [board]).GetValueOrDefault(board.Id) ?? [] },
            { dialog => dialog.Saved, ShowBoardAsync },
        });

    private async Task ShowBoardAsync(BoardId? board)
    {
        await ReadAsync();
        Show(SaveState.Saved(Clock.GetLocalNow()));
        Navigation.NavigateTo(board is { } id ? Catalogue.Domain.Publishing.Addresses.Workbench(Slug, id) : Catalogue.Domain.Publishing.Addresses.Workbench(Slug));
    }

    private async Task EditPhotoAsync(Photo photo) => await Dialogs.ShowAsync<PhotoDialog>(
        "Photo",
        new DialogParameters<PhotoDialog>
        {
            { dialog => dialog.Photo, photo },
            { dialog => dialog.Boards, Record.Boards },
            { dialog => dialog.Saved, ReadSavedAsync },
        });

    private async Task AddManyPhotosAsync() => await Dialogs.ShowAsync<PhotosDialog>(
        "Add many photos",
        new DialogParameters<PhotosDialog>
        {
            { dialog => dialog.Slug, Slug },
            { dialog => dialog.Boards, Record.Boards },
            { dialog => dialog.FormToken, Request.FormToken },
            { dialog => dialog.Saved, ReadSavedAsync },
        },
        new DialogOptions { MaxWidth = MaxWidth.Large, FullWidth = true });

    private async Task EditRailAsync(Guid? rail, RailQuantityKind? wanted) => await Dialogs.ShowAsync<RailDialog>(
        "Rail",
        new DialogParameters<RailDialog>
        {
            { dialog => dialog.Record, Record },
            { dialog => dialog.Rail, Record.Rails.FirstOrDefault(row => row.Id.Value == rail) },
            { dialog => dialog.Wanted, wanted },
            { dialog => dialog.Saved, saved => RailSavedAsync(saved, isNew: rail is null) },
        },
        new DialogOptions { MaxWidth = MaxWidth.Medium, FullWidth = true });

    private async Task RailSavedAsync(RailId? rail, bool isNew)
    {
        await ReadSavedAsync();
        // A rail that was made from a row is the rail of that row.
        if (isNew && rail is { } id && _row is { } row)
        {
            row.Form.RailId = id.Value;
            row.Edited();
            await SaveRowAsync(row);
        }
    }

    private Task ImportAsync() => _board is not { } board
        ? Task.CompletedTask
        : Dialogs.ShowAsync<ImportListDialog>(
            "Import a parts list",
            new DialogParameters<ImportListDialog>
            {
                { dialog => dialog.Board, board.Id },
                { dialog => dialog.BoardName, board.Name },
                { dialog => dialog.FormToken, Request.FormToken },
                { dialog => dialog.Imported, ImportedAsync },
            },
            new DialogOptions { MaxWidth = MaxWidth.Large, FullWidth = true });

    private async Task ImportedAsync(int count)
    {
        await ReadSavedAsync();
        Snackbar.Add(count == 1 ? "1 component imported" : FormattableString.Invariant($"{count} components imported"));
    }

    private async Task ReadSavedAsync()
    {
        await ReadAsync();
        Show(SaveState.Saved(Clock.GetLocalNow()));
    }

    // ---- every other change

    private async Task<bool> ChangeAsync(Func<Editor, Task<string?>> change)
    {
        await _door.WaitAsync();
        try
        {
            Show(SaveState.Saving);
            var problem = await change(await Editor.GetAsync());
            await ReadAsync();
            Show(problem is null ? SaveState.Saved(Clock.GetLocalNow()) : SaveState.NotSaved(problem));
            return problem is null;
        }
        finally
        {
            _door.Release();
        }
    }

    private void Show(SaveState state)
    {
        _state = state;
        StateHasChanged();
    }
}
