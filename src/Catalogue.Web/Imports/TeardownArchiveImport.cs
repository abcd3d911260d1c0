using Catalogue.Data.Accounts;
using Catalogue.Data.Archives;
using Catalogue.Data.Publishing;
using Catalogue.Data.Teardowns;
using Catalogue.Domain.Imports;

namespace Catalogue.Web.Imports;

/// <summary>Brings in whole teardowns.</summary>
/// <param name="import">Does it.</param>
/// <param name="photos">Where pictures are taken in.</param>
/// <param name="settings">Says whether publishing needs a second person.</param>
internal sealed class TeardownArchiveImport(ImportArchive import, ArchivePhotos photos, SettingsQuery settings) : IImportWorker
{
    private const string DryRun = "dry_run";
    private const string KeepPublished = "keep_published";

    /// <inheritdoc />
    public ImportKind Kind => ImportKind.TeardownArchive;

    /// <inheritdoc />
    public long MaxFileBytes => ArchiveForm.MaxFileBytes;

    /// <inheritdoc />
    public IReadOnlyDictionary<string, string> Options { get; } = new Dictionary<string, string>
    {
        [DryRun] = "true to tell what would happen and change nothing; else false.",
        [KeepPublished] = "true to bring published revisions in as published, for a signed-in administrator alone; else false.",
    };

    /// <inheritdoc />
    public Task<Refusal?> CheckAsync(IReadOnlyDictionary<string, string> options, string? role, CancellationToken cancellationToken)
    {
        foreach (var (name, value) in options)
            if (value is not ("true" or "false"))
                return Task.FromResult<Refusal?>(new Refusal(name, $"{name} is {Options[name]}"));
        return Task.FromResult(IsSet(options, KeepPublished) && role != Roles.Administrator
            ? new Refusal(KeepPublished, "Only a signed-in administrator, or the admin command, brings other labs' revisions in as published; without it they arrive as drafts for review.")
            : null);
    }

    /// <inheritdoc />
    public async Task<ImportOutcome> RunAsync(ImportWork work, CancellationToken cancellationToken)
    {
        var mayPublish = work.Run.Role == Roles.Administrator || !(await settings.RunAsync(cancellationToken)).RequiresApproval;
        var request = new ImportArchive.Request(work.Run.Editor, IsSet(work.Run.Options, DryRun), IsSet(work.Run.Options, KeepPublished), mayPublish);
        return await import.RunAsync(work.File, request, photos, work.ReportAsync, cancellationToken) switch
        {
            ImportArchive.Outcome.Done done => new ImportOutcome.Done(done.Report),
            ImportArchive.Outcome.Refused refused => new ImportOutcome.Refused(refused.Reason),
            _ => throw new InvalidOperationException("Every end of an import is known."),
        };
    }

    private static bool IsSet(IReadOnlyDictionary<string, string> options, string name) => options.GetValueOrDefault(name) == "true";
}
