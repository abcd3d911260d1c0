using System.Globalization;
using System.Text.Json;
using Catalogue.Data.Imports;
using Catalogue.Domain.Articles;
using Catalogue.Domain.Products;
using Catalogue.Domain.Publishing;
using Catalogue.Domain.Text;
using Microsoft.AspNetCore.Components;
using Microsoft.JSInterop;
using MudBlazor;

namespace Catalogue.Lab.Imports;

/// <summary>An old article: chosen, looked at, what it does not say filled in, then opened as a draft by an import run.</summary>
public sealed partial class ArticleDialog
{
    private static readonly ProductCategory?[] Categories = [.. Enum.GetValues<ProductCategory>().Cast<ProductCategory?>()];

    private readonly Dictionary<int, ArticleSectionKind> _kinds = [];
    private readonly Dictionary<int, string> _boards = [];
    private readonly CancellationTokenSource _leaving = new();
    private IJSObjectReference? _module;
    private IJSObjectReference? _sender;
    private ElementReference _input;
    private ArticleRunReport? _report;
    private ProductCategory? _category;
    private string? _title;
    private string? _brand;
    private string? _name;
    private string? _model;
    private string? _problem;
    private bool _isBusy;

    [CascadingParameter]
    private IMudDialogInstance Dialog { get; set; } = default!;

    [Inject]
    private IJSRuntime Script { get; set; } = default!;

    [Inject]
    private ImportRuns Runs { get; set; } = default!;

    [Inject]
    private NavigationManager Navigation { get; set; } = default!;

    /// <summary>The token against forged requests.</summary>
    [Parameter, EditorRequired]
    public required string FormToken { get; set; }

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
    }

    private static bool IsTaken(ArticleRunReport.Picture picture) => picture.Outcome is not "refused";

    private static string Count(int count, string noun) => count == 1 ? $"1 {noun}" : FormattableString.Invariant($"{count} {noun}s");

    private static string Word(ArticleSectionKind kind) => kind switch
    {
        ArticleSectionKind.Step => "a step",
        ArticleSectionKind.Finding => "a finding",
        ArticleSectionKind.Method => "how the work was done",
        _ => "nothing, leave it out",
    };

    private void Choose(int section, ChangeEventArgs change)
    {
        if (Enum.TryParse<ArticleSectionKind>(change.Value as string, out var kind))
            _kinds[section] = kind;
    }

    private async Task PreviewAsync()
    {
        (_report, _problem) = (null, null);
        _kinds.Clear();
        _boards.Clear();
        _module ??= await Script.InvokeAsync<IJSObjectReference>("import", PhotosDialog.Module);
        if (_sender is not null)
            await _sender.DisposeAsync();
        _sender = await _module.InvokeAsync<IJSObjectReference>("open", _input, null, FormToken);
        if (await RunAsync([KeyValuePair.Create("dry_run", "true")], []) is not { } report)
            return;
        (_report, _title, _brand, _name, _model, _category) = (report, report.Title, report.Brand, report.Name, report.Model, report.Category);
    }

    private async Task OpenAsync()
    {
        var options = new Dictionary<string, string?>
        {
            ["title"] = _title,
            ["brand"] = _brand,
            ["name"] = _name,
            ["model"] = _model,
            ["category"] = _category is { } category ? SnakeCase.Code(category) : null,
        };
        var fields = new Dictionary<string, string>
        {
            ["sections"] = JsonSerializer.Serialize(_kinds.ToDictionary(pair => pair.Key.ToString(CultureInfo.InvariantCulture), pair => SnakeCase.Code(pair.Value))),
            ["boards"] = JsonSerializer.Serialize(_boards.ToDictionary(pair => pair.Key.ToString(CultureInfo.InvariantCulture), pair => pair.Value)),
        };
        var given = options.Where(option => PlainText.Clean(option.Value) is not null).Select(option => KeyValuePair.Create(option.Key, option.Value!.Trim()));
        if (await RunAsync([.. given], fields) is { Teardown: { } slug })
            Navigation.NavigateTo(Addresses.Workbench(slug));
    }

    private async Task<ArticleRunReport?> RunAsync(IReadOnlyList<KeyValuePair<string, string>> options, Dictionary<string, string> fields)
    {
        if (_isBusy)
            return null;
        (_isBusy, _problem) = (true, null);
        StateHasChanged();
        try
        {
            var sent = await _sender!.InvokeAsync<SentRun>("sendRun", _leaving.Token, LabAddresses.ImportArticle(options), fields);
            (var report, _problem) = await sent.FollowAsync<ArticleRunReport>(Runs, null, _leaving.Token);
            return report;
        }
        catch (OperationCanceledException) when (_leaving.IsCancellationRequested)
        {
            // The dialog was left; the run goes on by itself.
            return null;
        }
        catch (JSException exception)
        {
            _problem = $"the browser could not do it: {exception.Message}";
            return null;
        }
        finally
        {
            _isBusy = false;
        }
    }
}
