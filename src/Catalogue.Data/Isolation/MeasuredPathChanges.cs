using Catalogue.Data.Teardowns;
using Catalogue.Domain.Isolation;
using Catalogue.Domain.Teardowns;
using Microsoft.EntityFrameworkCore;

namespace Catalogue.Data.Isolation;

/// <summary>Measured paths of drafts, from which isolation notes are computed.</summary>
/// <param name="contexts">Makes the context of look-ups.</param>
/// <param name="drafts">The door to drafts.</param>
public sealed class MeasuredPathChanges(IDbContextFactory<CatalogueContext> contexts, DraftEditing drafts)
    : RecordChanges<MeasuredPath, MeasuredPathId, MeasuredPathForm>(contexts, drafts)
{
    /// <inheritdoc />
    public override string Noun => "isolation path";

    /// <summary>Adds one to the draft of a teardown.</summary>
    public Task<ChangeOutcome<MeasuredPathId>> AddAsync(TeardownId teardown, MeasuredPathForm form, Editor who, CancellationToken cancellationToken = default) =>
        AddAsync(
            teardown,
            form,
            who,
            async (draft, cancel) => new MeasuredPath
            {
                RevisionId = draft.Revision.Id,
                Id = MeasuredPathId.New(),
                Position = await NextPositionAsync(draft.Context.IsolationPaths.Where(row => row.RevisionId == draft.Revision.Id), row => row.Position, cancel),
                From = "",
                To = "",
            },
            row => row.Id,
            cancellationToken);

    /// <inheritdoc />
    protected override Task<MeasuredPathForm> ReadAsync(Draft draft, MeasuredPath record, CancellationToken cancellationToken) => Task.FromResult(new MeasuredPathForm
    {
        BoardId = record.BoardId?.Value,
        From = record.From,
        To = record.To,
        PathKind = record.PathKind,
        LowMm = record.LowMm == record.NominalMm ? null : record.LowMm,
        NominalMm = record.NominalMm,
        HighMm = record.HighMm == record.NominalMm ? null : record.HighMm,
        Method = record.Method,
        NarrowestGrooveMm = record.NarrowestGrooveMm,
        WorkingVoltageV = record.WorkingVoltageV,
        Insulation = record.Insulation,
        OvervoltageCategory = record.OvervoltageCategory,
        PollutionDegree = record.PollutionDegree,
        MaterialGroup = record.MaterialGroup,
        AltitudeM = record.AltitudeM,
        FrequencyHz = record.FrequencyHz,
        IsCoated = record.IsCoated,
        Remark = record.Remark,
    });

    /// <inheritdoc />
    protected override Task<Refusal?> WriteAsync(Draft draft, MeasuredPath record, MeasuredPathForm form, CancellationToken cancellationToken) => Task.FromResult(Write(record, form));

    private static Refusal? Write(MeasuredPath record, MeasuredPathForm form)
    {
        var check = new FormCheck(refusesControls: true);
        var from = check.Need(form.From, "from", MeasuredPathForm.MaxEndLength);
        var to = check.Need(form.To, "to", MeasuredPathForm.MaxEndLength);
        var method = check.May(form.Method, "method", 200);
        var remark = check.May(form.Remark, "remark", 2000);
        var distance = check.Cases(form.LowMm, form.NominalMm, form.HighMm, "mm");
        check.AboveZero(distance?.Low, form.LowMm is null ? "nominal_mm" : "low_mm", MeasuredPath.LongestMm);
        check.AboveZero(distance?.High, form.HighMm is null ? "nominal_mm" : "high_mm", MeasuredPath.LongestMm);
        check.AboveZero(form.NarrowestGrooveMm, "narrowest_groove_mm", MeasuredPath.LongestMm);
        check.AboveZero(form.WorkingVoltageV, "working_voltage_v", MeasuredPath.HighestVolts);
        check.Between(form.OvervoltageCategory, "overvoltage_category", 1, MeasuredPath.HighestOvervoltageCategory);
        check.Between(form.PollutionDegree, "pollution_degree", 1, MeasuredPath.HighestPollutionDegree);
        check.Between(form.AltitudeM, "altitude_m", MeasuredPath.LowestAltitudeM, MeasuredPath.HighestAltitudeM);
        check.Between(form.FrequencyHz, "frequency_hz", 0, MeasuredPath.HighestHertz);
        if (check.Refusal is { } refusal)
            return refusal;
        record.BoardId = form.BoardId is { } board ? BoardId.From(board) : null;
        (record.From, record.To, record.PathKind) = (from, to, form.PathKind);
        (record.LowMm, record.NominalMm, record.HighMm) = (distance?.Low, distance?.Nominal, distance?.High);
        (record.Method, record.NarrowestGrooveMm) = (method, form.NarrowestGrooveMm);
        (record.WorkingVoltageV, record.Insulation) = (form.WorkingVoltageV, form.Insulation);
        (record.OvervoltageCategory, record.PollutionDegree) = (form.OvervoltageCategory, form.PollutionDegree);
        (record.MaterialGroup, record.AltitudeM, record.FrequencyHz) = (form.MaterialGroup, form.AltitudeM, form.FrequencyHz);
        (record.IsCoated, record.Remark) = (form.IsCoated, remark);
        return null;
    }
}
