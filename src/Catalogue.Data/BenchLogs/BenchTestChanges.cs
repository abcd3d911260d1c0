using Catalogue.Data.Teardowns;
using Catalogue.Domain.BenchLogs;
using Catalogue.Domain.Products;
using Catalogue.Domain.Quantities;
using Catalogue.Domain.Teardowns;
using Microsoft.EntityFrameworkCore;

namespace Catalogue.Data.BenchLogs;

/// <summary>Bench tests of drafts.</summary>
/// <param name="contexts">Makes the context of look-ups.</param>
/// <param name="drafts">The door to drafts.</param>
public sealed class BenchTestChanges(IDbContextFactory<CatalogueContext> contexts, DraftEditing drafts)
    : RecordChanges<BenchTest, BenchTestId, BenchTestForm>(contexts, drafts)
{
    /// <inheritdoc />
    public override string Noun => "bench test";

    /// <summary>Adds one to the draft of a teardown.</summary>
    public Task<ChangeOutcome<BenchTestId>> AddAsync(TeardownId teardown, BenchTestForm form, Editor who, CancellationToken cancellationToken = default) =>
        AddAsync(
            teardown,
            form,
            who,
            async (draft, cancel) => new BenchTest
            {
                RevisionId = draft.Revision.Id,
                Id = BenchTestId.New(),
                Position = await NextPositionAsync(draft.Context.BenchTests.Where(row => row.RevisionId == draft.Revision.Id), row => row.Position, cancel),
                Subject = "",
            },
            row => row.Id,
            cancellationToken);

    /// <inheritdoc />
    protected override Task<BenchTestForm> ReadAsync(Draft draft, BenchTest record, CancellationToken cancellationToken) => Task.FromResult(new BenchTestForm
    {
        Subject = record.Subject,
        Conditions = record.Conditions,
        Instrument = record.Instrument,
        CalibratedOn = record.CalibratedOn,
        AmbientDegC = record.AmbientDegC,
        Cable = record.Cable,
        Low = record.Low == record.Value ? null : record.Low,
        Value = record.Value,
        High = record.High == record.Value ? null : record.High,
        Unit = record.Unit,
        ResultText = record.ResultText,
        TakenOn = record.TakenOn,
        PortId = record.PortId?.Value,
    });

    /// <inheritdoc />
    protected override Task<Refusal?> WriteAsync(Draft draft, BenchTest record, BenchTestForm form, CancellationToken cancellationToken) => Task.FromResult(Write(record, form));

    private static Refusal? Write(BenchTest record, BenchTestForm form)
    {
        var check = new FormCheck();
        var subject = check.Need(form.Subject, "subject", 120);
        var conditions = check.May(form.Conditions, "conditions", 2000);
        var instrument = check.May(form.Instrument, "instrument", 200);
        var cable = check.May(form.Cable, "cable", 200);
        var resultText = check.May(form.ResultText, "result_text", 2000);
        if (check.Refusal is { } refusal)
            return refusal;
        if (form.Value is { } value && Interval.TryCreate(form.Low ?? value, value, form.High ?? value) is null)
            return new Refusal("value", "low, value and high are finite numbers in that order.");
        if (form.Value is null && (form.Low is not null || form.High is not null))
            return new Refusal("value", "low and high need a value between them.");
        if (form.Value is null != form.Unit is null)
            return new Refusal("unit", "value and unit come together: a number without a unit is no quantity.");
        if (form.Value is null && resultText is null)
            return new Refusal("value", "A test has a result: a value with its unit, or result_text.");
        if (form.AmbientDegC is { } ambient && !(ambient is > -90 and < 200))
            return new Refusal("ambient_deg_c", "ambient_deg_c is a temperature in degC between -90 and 200.");
        record.Subject = subject;
        record.Conditions = conditions;
        record.Instrument = instrument;
        record.CalibratedOn = form.CalibratedOn;
        record.AmbientDegC = form.AmbientDegC;
        record.Cable = cable;
        record.Low = form.Value is null ? null : form.Low ?? form.Value;
        record.Value = form.Value;
        record.High = form.Value is null ? null : form.High ?? form.Value;
        record.Unit = form.Unit;
        record.ResultText = resultText;
        record.TakenOn = form.TakenOn;
        record.PortId = form.PortId is { } port ? PortId.From(port) : null;
        return null;
    }
}
