using Catalogue.Data.Accounts;
using Catalogue.Data.Figures;
using Catalogue.Data.Queue;
using Catalogue.Data.Teardowns;
using Catalogue.Domain.Figures;
using Microsoft.EntityFrameworkCore;

namespace Catalogue.Data.Publishing;

/// <summary>Changes the lab's settings.</summary>
/// <param name="contexts">Makes the context of each change.</param>
/// <param name="clock">Tells the time.</param>
public sealed class ChangeSettings(IDbContextFactory<CatalogueContext> contexts, TimeProvider clock)
{
    /// <summary>Saves the settings.</summary>
    /// <param name="form">The settings.</param>
    /// <param name="expectedVersion">The version that the editor saw, or null.</param>
    /// <param name="who">Who changes them.</param>
    /// <param name="cancellationToken">Cancels the change.</param>
    public async Task<ChangeOutcome<uint>> RunAsync(SettingsForm form, uint? expectedVersion, Editor who, CancellationToken cancellationToken = default)
    {
        ArgumentNullException.ThrowIfNull(form);
        ArgumentNullException.ThrowIfNull(who);
        var check = new FormCheck();
        var name = check.Need(form.LabName, "lab_name", 120);
        var address = check.May(form.PublicBaseAddress, "public_base_address", 300)?.TrimEnd('/');
        var licence = check.May(form.ContentLicence, "content_licence", 200);
        var contact = check.May(form.Contact, "contact", 300);
        if (check.Refusal is { } refusal)
            return new ChangeOutcome<uint>.Refused(refusal.Field, refusal.Reason);
        if (address is not null && !(Uri.TryCreate(address, UriKind.Absolute, out var uri) && uri.Scheme is "http" or "https" && uri.PathAndQuery == "/" && uri.Fragment.Length == 0))
            return new ChangeOutcome<uint>.Refused("public_base_address", "The address is scheme and host only, such as https://bench.example.");

        foreach (var (code, value) in form.ChangedLines)
            if (LineTable.Refuse(code, value) is { } reason)
                return new ChangeOutcome<uint>.Refused(code, reason);

        await using var context = await contexts.CreateDbContextAsync(cancellationToken);
        var settings = await context.LabSettings.SingleAsync(cancellationToken);
        if (expectedVersion is { } expected)
            context.Entry(settings).Property(row => row.Version).OriginalValue = expected;
        settings.LabName = name;
        settings.PublicBaseAddress = address;
        settings.ContentLicence = licence;
        settings.Contact = contact;
        settings.RequiresApproval = form.RequiresApproval;
        var before = FigureRules.Stamp(settings.LineTable);
        settings.DeratingPreset = form.DeratingPreset;
        settings.ChangedLines = new Dictionary<string, double>(form.ChangedLines);
        var after = FigureRules.Stamp(settings.LineTable);
        context.AuditEntries.Add(new AuditEntry { At = clock.GetUtcNow(), Who = who.Name, Action = "change settings" });
        try
        {
            await using var transaction = await context.Database.BeginTransactionAsync(cancellationToken);
            await context.SaveChangesAsync(cancellationToken);
            if (after != before)
                await JobQueue.EnqueueAsync(context, RecomputeEverything.JobKind, after, clock.GetUtcNow(), cancellationToken);
            await transaction.CommitAsync(cancellationToken);
        }
        catch (DbUpdateConcurrencyException)
        {
            return new ChangeOutcome<uint>.Stale("Somebody else changed the settings first. Read them again, compare, and save once more.");
        }

        return new ChangeOutcome<uint>.Done(settings.Version);
    }
}
