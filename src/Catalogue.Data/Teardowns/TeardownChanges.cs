using Catalogue.Domain.Products;
using Catalogue.Domain.Teardowns;
using Microsoft.EntityFrameworkCore;

namespace Catalogue.Data.Teardowns;

/// <summary>What a draft says of the product and the sample, and its way to review.</summary>
/// <param name="contexts">Makes the context of look-ups.</param>
/// <param name="drafts">The door to drafts.</param>
public sealed class TeardownChanges(IDbContextFactory<CatalogueContext> contexts, DraftEditing drafts)
{
    /// <summary>The id of the teardown at an address, or null.</summary>
    public async Task<TeardownId?> FindAsync(string slug, CancellationToken cancellationToken = default)
    {
        await using var context = await contexts.CreateDbContextAsync(cancellationToken);
        return await FindTeardown.BySlugAsync(context, slug, cancellationToken);
    }

    /// <summary>Changes the facts of the draft.</summary>
    /// <param name="id">The teardown.</param>
    /// <param name="expectedVersion">The version of the revision that the editor saw, or null to save whatever it is by now.</param>
    /// <param name="amend">Makes the new form of the present one, or refuses.</param>
    /// <param name="who">Who makes the change.</param>
    /// <param name="cancellationToken">Cancels the change as a whole.</param>
    public Task<ChangeOutcome<TeardownId>> AmendAsync(
        TeardownId id, uint? expectedVersion, Func<TeardownForm, ChangeOutcome<TeardownForm>> amend, Editor who, CancellationToken cancellationToken = default)
    {
        ArgumentNullException.ThrowIfNull(amend);
        return drafts.EditAsync<TeardownId>(
            id,
            who,
            "amend teardown",
            (draft, _) => Task.FromResult(Amend(draft, expectedVersion, amend, id)),
            cancellationToken);
    }

    /// <summary>Sends the draft to a second person. One that waits already stays with whoever sent it.</summary>
    public Task<ChangeOutcome<TeardownId>> SubmitAsync(TeardownId id, Editor who, CancellationToken cancellationToken = default) => drafts.SubmitAsync(id, who, cancellationToken);

    private static ChangeOutcome<TeardownId> Amend(Draft draft, uint? expectedVersion, Func<TeardownForm, ChangeOutcome<TeardownForm>> amend, TeardownId id)
    {
        var revision = draft.Revision;
        // Of a draft that this very change opened, the editor saw the published row.
        if (expectedVersion is { } expected && (draft.CopiedFrom?.Version ?? revision.Version) != expected)
            return new ChangeOutcome<TeardownId>.Stale("Somebody else saved this teardown's facts first. Read them again, compare, and save once more.");
        var amended = amend(Read(revision));
        if (amended is not ChangeOutcome<TeardownForm>.Done { Value: var form })
            return amended.As<TeardownId>();
        return Write(revision, form) is { } refusal
            ? new ChangeOutcome<TeardownId>.Refused(refusal.Field, refusal.Reason)
            : new ChangeOutcome<TeardownId>.Done(id);
    }

    private static TeardownForm Read(Revision revision) => new()
    {
        Title = revision.Title,
        Standfirst = revision.Standfirst,
        ProductName = revision.ProductName,
        Model = revision.Model,
        Category = revision.Category,
        Year = revision.Year,
        MassKg = revision.MassKg,
        TakenApartOn = revision.TakenApartOn,
        TakenApartBy = revision.TakenApartBy,
        Obtained = revision.Obtained,
        ObtainedNote = revision.ObtainedNote,
        Condition = revision.Condition,
        Firmware = revision.Firmware,
        CellChemistry = revision.CellChemistry,
        MethodMarkdown = revision.MethodMarkdown,
    };

    private static Refusal? Write(Revision revision, TeardownForm form)
    {
        var check = new FormCheck();
        var title = check.Need(form.Title, "title", Revision.MaxTitleLength);
        var standfirst = check.May(form.Standfirst, "standfirst", Revision.MaxStandfirstLength);
        var name = check.Need(form.ProductName, "product_name", Product.MaxNameLength);
        var model = check.Need(form.Model, "model", Product.MaxNameLength);
        var by = check.May(form.TakenApartBy, "taken_apart_by", 120);
        var note = check.May(form.ObtainedNote, "obtained_note", 400);
        var condition = check.May(form.Condition, "condition", 400);
        var firmware = check.May(form.Firmware, "firmware", 120);
        var chemistry = check.May(form.CellChemistry, "cell_chemistry", 120);
        var method = check.May(form.MethodMarkdown, "method_markdown", 50_000);
        if (check.Refusal is { } refusal)
            return refusal;
        if (form.Year is < 1950 or > 2100)
            return new Refusal("year", "year is 1950 to 2100.");
        if (form.MassKg is { } mass && !(mass is > 0 and < 10_000))
            return new Refusal("mass_kg", "mass_kg is above 0 and below 10000.");
        revision.Title = title;
        revision.Standfirst = standfirst;
        revision.ProductName = name;
        revision.Model = model;
        revision.Category = form.Category;
        revision.Year = form.Year;
        revision.MassKg = form.MassKg;
        revision.TakenApartOn = form.TakenApartOn;
        revision.TakenApartBy = by;
        revision.Obtained = form.Obtained;
        revision.ObtainedNote = note;
        revision.Condition = condition;
        revision.Firmware = firmware;
        revision.CellChemistry = chemistry;
        revision.MethodMarkdown = method;
        return null;
    }
}
