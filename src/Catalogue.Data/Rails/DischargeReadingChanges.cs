using System.Globalization;
using Catalogue.Data.Teardowns;
using Catalogue.Domain.Rails;
using Catalogue.Domain.Teardowns;
using Microsoft.EntityFrameworkCore;

namespace Catalogue.Data.Rails;

/// <summary>Discharge readings of drafts.</summary>
/// <param name="contexts">Makes the context of look-ups.</param>
/// <param name="drafts">The door to drafts.</param>
/// <param name="clock">Tells which moments have not been yet.</param>
public sealed class DischargeReadingChanges(IDbContextFactory<CatalogueContext> contexts, DraftEditing drafts, TimeProvider clock)
    : RecordChanges<DischargeReading, DischargeReadingId, DischargeReadingForm>(contexts, drafts)
{
    /// <inheritdoc />
    public override string Noun => "discharge reading";

    /// <summary>Adds one to the draft of a teardown.</summary>
    public Task<ChangeOutcome<DischargeReadingId>> AddAsync(TeardownId teardown, DischargeReadingForm form, Editor who, CancellationToken cancellationToken = default) =>
        AddAsync(
            teardown,
            form,
            who,
            async (draft, cancel) => new DischargeReading
            {
                RevisionId = draft.Revision.Id,
                Id = DischargeReadingId.New(),
                Position = await NextPositionAsync(draft.Context.DischargeReadings.Where(row => row.RevisionId == draft.Revision.Id), row => row.Position, cancel),
                Place = "",
                LowV = 0,
                NominalV = 0,
                HighV = 0,
                TakenAt = default,
            },
            row => row.Id,
            cancellationToken);

    /// <inheritdoc />
    protected override Task<DischargeReadingForm> ReadAsync(Draft draft, DischargeReading record, CancellationToken cancellationToken) => Task.FromResult(new DischargeReadingForm
    {
        RailId = record.RailId?.Value,
        Place = record.Place,
        LowV = record.LowV == record.NominalV ? null : record.LowV,
        NominalV = record.NominalV,
        HighV = record.HighV == record.NominalV ? null : record.HighV,
        TakenAt = record.TakenAt,
        Instrument = record.Instrument,
    });

    /// <inheritdoc />
    protected override Task<Refusal?> WriteAsync(Draft draft, DischargeReading record, DischargeReadingForm form, CancellationToken cancellationToken) => Task.FromResult(Write(record, form));

    private Refusal? Write(DischargeReading record, DischargeReadingForm form)
    {
        var check = new FormCheck(refusesControls: true);
        var place = check.Need(form.Place, "place", DischargeReadingForm.MaxPlaceLength);
        var instrument = check.May(form.Instrument, "instrument", 200);
        var cases = check.Cases(form.LowV, form.NominalV, form.HighV, "v");
        if (check.Refusal is { } refusal)
            return refusal;
        if (cases is not { } volts)
            return new Refusal("nominal_v", "nominal_v is missing: a reading has a value in volt.");
        if (volts.Low < 0)
            return new Refusal(form.LowV is null ? "nominal_v" : "low_v", "Give the volts without their sign: it only says which way round the probes were.");
        if (volts.High > DischargeReading.HighestVolts)
            return new Refusal(form.HighV is null ? "nominal_v" : "high_v", string.Create(CultureInfo.InvariantCulture, $"A reading is at most {DischargeReading.HighestVolts} V; more is not read in a power product."));
        if (form.TakenAt is not { } takenAt)
            return new Refusal("taken_at", "taken_at is missing: a reading without its moment tells nothing.");
        if (takenAt < DischargeReading.Earliest)
            return new Refusal("taken_at", string.Create(CultureInfo.InvariantCulture, $"taken_at is before {DischargeReading.Earliest:yyyy}; give the moment of the reading."));
        if (takenAt > clock.GetUtcNow() + DischargeReading.ClockDifference)
            return new Refusal("taken_at", "taken_at is in the future; give the moment of the reading, with its offset from UTC.");
        record.RailId = form.RailId is { } rail ? RailId.From(rail) : null;
        record.Place = place;
        (record.LowV, record.NominalV, record.HighV) = (volts.Low, volts.Nominal, volts.High);
        record.TakenAt = takenAt.ToUniversalTime();
        record.Instrument = instrument;
        return null;
    }
}
