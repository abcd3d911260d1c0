using Catalogue.Data.Families;
using Catalogue.Data.Teardowns;
using Catalogue.Domain.Components;
using Catalogue.Domain.Families;
using Catalogue.Domain.Makers;
using Catalogue.Domain.Quantities;
using Catalogue.Domain.Teardowns;
using Catalogue.Lab.Accounts;
using Catalogue.Lab.Workbench;
using Microsoft.AspNetCore.Components;
using MudBlazor;

namespace Catalogue.Lab.Families;

/// <summary>What is known of one part family, and changing it.</summary>
/// <param name="records">Reads it.</param>
/// <param name="neighbours">Finds the families beside it.</param>
/// <param name="changes">Changes it.</param>
/// <param name="merges">Undoes merges.</param>
/// <param name="splits">Undoes splits.</param>
/// <param name="editor">Who is signed in.</param>
/// <param name="dialogs">Opens dialogs.</param>
/// <param name="clock">Tells the time.</param>
public sealed partial class FamilyRecordPage(
    FamilyRecordQuery records, FamilyNeighboursQuery neighbours, FamilyChanges changes, MergeFamilies merges, SplitFamily splits, CurrentEditor editor, IDialogService dialogs, TimeProvider clock)
{
    private static readonly IReadOnlyList<FunctionClass?> Classes = [.. Enum.GetValues<FunctionClass>().Select(functionClass => (FunctionClass?)functionClass)];

    private FamilyRecordQuery.Record? _record;
    private FamilyNeighboursQuery.Answer.Found? _neighbours;
    private FamilyForm? _form;
    private FamilyForm? _theirs;
    private string? _packages;
    private uint _version;
    private bool _isMissing;
    private bool _isBusy;
    private SaveState _state = SaveState.Untouched;

    /// <summary>The family's address.</summary>
    [Parameter]
    public string Slug { get; set; } = "";

    private IReadOnlyList<FamilyRecordQuery.Use> Published => [.. _record!.Uses.Where(use => use.State is RevisionState.Published)];

    /// <inheritdoc />
    protected override async Task OnParametersSetAsync()
    {
        _state = SaveState.Untouched;
        await ReadAsync(alsoForm: true);
    }

    private static string Words(FamilyForm form) => string.Join("; ", new[]
    {
        $"number {form.Name}",
        form.FunctionClass is { } functionClass ? functionClass.Word() : "function not decided",
        form.Packages.Count > 0 ? string.Join(", ", form.Packages) : "no package",
        form.DatasheetUrl ?? "no datasheet",
        form.Note is { } note ? $"note “{note}”" : "no note",
    });

    private static string Words(FamilyRecordQuery.Mark mark) => string.Join(", ", new[]
    {
        mark.Maker is { } maker ? $"of {maker}" : "maker not known",
        mark.TopMark.Package,
        mark.SharedBy > 0 ? (mark.SharedBy == 1 ? "shared with one other family" : FormattableString.Invariant($"shared with {mark.SharedBy} other families")) : null,
        mark.TopMark.Source,
    }.OfType<string>());

    private static string Words(FamilyRating rating) => string.Join(", ", new[]
    {
        QuantityText.Of(Interval.Create(rating.Low, rating.Nominal, rating.High), rating.Kind.Unit()),
        rating.Condition,
        rating.Evidence.Word(),
        rating.Source,
    }.OfType<string>());

    private static string Words(FamilyRecordQuery.Relation relation) => string.Join(", ", new[] { LabWords.Relation(relation.Said.Kind), relation.Said.Note, $"said by {relation.Said.Who}" }.OfType<string>());

    private static string When(DateTimeOffset at, string who, string? note, DateTimeOffset? undoneAt, string? undoneBy) =>
        FormattableString.Invariant($"{at:d MMM yyyy}, {who}{(note is null ? "" : $": {note}")}{(undoneAt is { } undone ? $"; undone {undone:d MMM yyyy} by {undoneBy}" : "")} ");

    private async Task ReadAsync(bool alsoForm)
    {
        _record = await records.RunAsync(Slug);
        _neighbours = await neighbours.RunAsync(Slug, seesDrafts: true) as FamilyNeighboursQuery.Answer.Found;
        _isMissing = _record is null;
        if (_record is null || !alsoForm)
            return;
        _theirs = null;
        _form = FamilyForm.Of(_record.Family);
        _packages = string.Join(", ", _form.Packages);
        _version = _record.Family.Version;
    }

    private async Task SaveAsync()
    {
        if (_isBusy || _form is not { } form)
            return;
        _isBusy = true;
        try
        {
            form.Packages = [.. (_packages ?? "").Split([',', ';'], StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries)];
            switch (await changes.AmendAsync(Slug, _version, _ => new ChangeOutcome<FamilyForm>.Done(form), await editor.GetAsync()))
            {
                case ChangeOutcome<FamilyId>.Done:
                    await ReadAsync(alsoForm: true);
                    _state = SaveState.Saved(clock.GetLocalNow());
                    break;
                case ChangeOutcome<FamilyId>.Stale:
                    // Both stand on the screen; saving again keeps what was typed here.
                    await ReadAsync(alsoForm: false);
                    _theirs = FamilyForm.Of(_record!.Family);
                    _version = _record.Family.Version;
                    _state = SaveState.NotSaved("somebody else saved first");
                    break;
                case { } refused:
                    _state = SaveState.NotSaved(refused.Problem()!);
                    break;
            }
        }
        finally
        {
            _isBusy = false;
        }
    }

    private Task TakeTheirs() => ReadAsync(alsoForm: true);

    private Task UndoAsync(FamilyRecordQuery.Merge merge) => UndoAsync(async who => (await merges.UndoAsync(merge.Row.Id, who)).Problem());

    private Task UndoAsync(FamilyRecordQuery.Split split) => UndoAsync(async who => (await splits.UndoAsync(split.Row.Id, who)).Problem());

    private async Task UndoAsync(Func<Editor, Task<string?>> undo)
    {
        if (_isBusy)
            return;
        _isBusy = true;
        try
        {
            var problem = await undo(await editor.GetAsync());
            await ReadAsync(alsoForm: true);
            _state = problem is null ? SaveState.Saved(clock.GetLocalNow()) : SaveState.NotSaved(problem);
        }
        finally
        {
            _isBusy = false;
        }
    }

    private async Task SavedAsync()
    {
        await ReadAsync(alsoForm: false);
        // A version that only names or ratings moved is no conflict with the facts.
        _version = _record?.Family.Version ?? _version;
        _state = SaveState.Saved(clock.GetLocalNow());
        StateHasChanged();
    }

    private Task MergeAsync() => OpenAsync<MergeDialog>("Merge", new DialogParameters<MergeDialog> { { dialog => dialog.Record, _record! }, { dialog => dialog.Saved, SavedAsync } });

    private Task SplitAsync() => OpenAsync<SplitDialog>("Split", new DialogParameters<SplitDialog> { { dialog => dialog.Record, _record! }, { dialog => dialog.Saved, SavedAsync } });

    private Task EditAliasAsync(FamilyAlias? alias) =>
        OpenAsync<AliasDialog>("Number", new DialogParameters<AliasDialog> { { dialog => dialog.Slug, Slug }, { dialog => dialog.Alias, alias }, { dialog => dialog.Saved, SavedAsync } });

    private Task EditMarkAsync(FamilyRecordQuery.Mark? mark) =>
        OpenAsync<TopMarkDialog>("Top mark", new DialogParameters<TopMarkDialog> { { dialog => dialog.Slug, Slug }, { dialog => dialog.Mark, mark }, { dialog => dialog.Saved, SavedAsync } });

    private Task EditMakerAsync(Maker? maker) =>
        OpenAsync<FamilyMakerDialog>("Maker", new DialogParameters<FamilyMakerDialog> { { dialog => dialog.Slug, Slug }, { dialog => dialog.Maker, maker }, { dialog => dialog.Saved, SavedAsync } });

    private Task EditRatingAsync(FamilyRating? rating) =>
        OpenAsync<FamilyRatingDialog>("Rating", new DialogParameters<FamilyRatingDialog> { { dialog => dialog.Slug, Slug }, { dialog => dialog.Rating, rating }, { dialog => dialog.Saved, SavedAsync } });

    private Task EditRelationAsync(FamilyRecordQuery.Relation? relation) =>
        OpenAsync<RelationDialog>("Other family", new DialogParameters<RelationDialog> { { dialog => dialog.Slug, Slug }, { dialog => dialog.Relation, relation }, { dialog => dialog.Saved, SavedAsync } });

    private async Task OpenAsync<TDialog>(string title, DialogParameters parameters)
        where TDialog : ComponentBase =>
        await dialogs.ShowAsync<TDialog>(title, parameters);
}
