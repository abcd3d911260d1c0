using Catalogue.Data.Teardowns;
using Catalogue.Domain.Products;
using Catalogue.Domain.Teardowns;
using Microsoft.EntityFrameworkCore;

namespace Catalogue.Data.Products;

/// <summary>Ports of drafts.</summary>
/// <param name="contexts">Makes the context of look-ups.</param>
/// <param name="drafts">The door to drafts.</param>
public sealed class PortChanges(IDbContextFactory<CatalogueContext> contexts, DraftEditing drafts)
    : RecordChanges<Port, PortId, PortForm>(contexts, drafts)
{
    /// <inheritdoc />
    public override string Noun => "port";

    /// <summary>Adds one to the draft of a teardown.</summary>
    public Task<ChangeOutcome<PortId>> AddAsync(TeardownId teardown, PortForm form, Editor who, CancellationToken cancellationToken = default) =>
        AddAsync(
            teardown,
            form,
            who,
            async (draft, cancel) => new Port
            {
                RevisionId = draft.Revision.Id,
                Id = PortId.New(),
                Position = await NextPositionAsync(draft.Context.Ports.Where(row => row.RevisionId == draft.Revision.Id), row => row.Position, cancel),
                Name = "",
                Kind = "",
            },
            row => row.Id,
            cancellationToken);

    /// <inheritdoc />
    protected override Task<PortForm> ReadAsync(Draft draft, Port record, CancellationToken cancellationToken) => Task.FromResult(new PortForm
    {
        Name = record.Name,
        Kind = record.Kind,
        Direction = record.Direction,
        Quantity = record.Quantity,
        AsPrinted = record.AsPrinted,
        Protocols = record.Protocols,
        CapabilityWords = record.CapabilityWords,
    });

    /// <inheritdoc />
    protected override Task<Refusal?> WriteAsync(Draft draft, Port record, PortForm form, CancellationToken cancellationToken) => Task.FromResult(Write(record, form));

    private static Refusal? Write(Port record, PortForm form)
    {
        var check = new FormCheck();
        var name = check.Need(form.Name, "name", 120);
        var kind = check.Need(form.Kind, "kind", 60);
        var asPrinted = check.May(form.AsPrinted, "as_printed", 400);
        var protocols = check.List(form.Protocols, "protocols", 40, 80);
        var words = check.List(form.CapabilityWords, "capability_words", 24, 10);
        if (check.Refusal is { } refusal)
            return refusal;
        if (form.Quantity is < 1 or > 100)
            return new Refusal("quantity", $"quantity is 1 to 100; it was {form.Quantity}.");
        if (Array.Find(words, word => word.Length != 10 || !word.StartsWith("0x", StringComparison.OrdinalIgnoreCase) || !word[2..].All(char.IsAsciiHexDigit)) is { } wrong)
            return new Refusal("capability_words", $"“{wrong}” is no capability word; it is 0x and eight hex digits, such as 0x0801912C.");
        record.Name = name;
        record.Kind = kind;
        record.Direction = form.Direction;
        record.Quantity = form.Quantity;
        record.AsPrinted = asPrinted;
        record.Protocols = protocols;
        record.CapabilityWords = words;
        return null;
    }
}
