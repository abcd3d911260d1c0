using Catalogue.Data.Teardowns;
using Catalogue.Domain.Products;
using Catalogue.Domain.Quantities;
using Catalogue.Domain.Rails;
using Catalogue.Domain.Teardowns;
using Microsoft.EntityFrameworkCore;

namespace Catalogue.Data.Rails;

/// <summary>Rails of drafts, with what is known of them.</summary>
/// <param name="contexts">Makes the context of look-ups.</param>
/// <param name="drafts">The door to drafts.</param>
public sealed class RailChanges(IDbContextFactory<CatalogueContext> contexts, DraftEditing drafts)
    : RecordChanges<Rail, RailId, RailForm>(contexts, drafts)
{
    /// <inheritdoc />
    public override string Noun => "rail";

    /// <summary>Adds one to the draft of a teardown.</summary>
    public Task<ChangeOutcome<RailId>> AddAsync(TeardownId teardown, RailForm form, Editor who, CancellationToken cancellationToken = default) =>
        AddAsync(
            teardown,
            form,
            who,
            async (draft, cancel) => new Rail
            {
                RevisionId = draft.Revision.Id,
                Id = RailId.New(),
                Position = await NextPositionAsync(draft.Context.Rails.Where(row => row.RevisionId == draft.Revision.Id), row => row.Position, cancel),
                Name = "",
            },
            row => row.Id,
            cancellationToken);

    /// <inheritdoc />
    protected override async Task<RailForm> ReadAsync(Draft draft, Rail record, CancellationToken cancellationToken)
    {
        var known = await draft.Context.RailQuantities.AsNoTracking()
            .Where(row => row.RevisionId == draft.Revision.Id && row.RailId == record.Id)
            .ToDictionaryAsync(row => row.Kind, cancellationToken);
        GivenQuantity? Of(RailQuantityKind kind) => known.TryGetValue(kind, out var row)
            ? new GivenQuantity
            {
                // An end that equals the value is not given, so that a change of the value alone carries it along.
                Low = row.Low == row.Nominal ? null : row.Low,
                Nominal = row.Nominal,
                High = row.High == row.Nominal ? null : row.High,
                Evidence = row.Evidence,
                Source = row.Source,
            }
            : null;
        return new RailForm
        {
            Name = record.Name,
            Kind = record.Kind,
            Note = record.Note,
            MinVoltageV = Of(RailQuantityKind.MinVoltage),
            NominalVoltageV = Of(RailQuantityKind.NominalVoltage),
            MaxVoltageV = Of(RailQuantityKind.MaxVoltage),
            MaxCurrentA = Of(RailQuantityKind.MaxCurrent),
            MaxPowerW = Of(RailQuantityKind.MaxPower),
            Efficiency = Of(RailQuantityKind.Efficiency),
            PowerFactor = Of(RailQuantityKind.PowerFactor),
            LineFrequencyHz = Of(RailQuantityKind.LineFrequency),
            LineVoltageV = Of(RailQuantityKind.LineVoltage),
            BleedResistanceOhm = Of(RailQuantityKind.BleedResistance),
            PathResistanceOhm = Of(RailQuantityKind.PathResistance),
            ProspectiveCurrentA = Of(RailQuantityKind.ProspectiveCurrent),
            PortId = record.PortId?.Value,
        };
    }

    /// <inheritdoc />
    protected override async Task<Refusal?> WriteAsync(Draft draft, Rail record, RailForm form, CancellationToken cancellationToken)
    {
        var check = new FormCheck();
        var name = check.Need(form.Name, "name", 120);
        var note = check.May(form.Note, "note", 2000);
        if (check.Refusal is { } refusal)
            return refusal;
        var given = new List<(RailQuantityKind Kind, GivenQuantity Quantity, Interval Interval, string? Source)>();
        foreach (var (kind, field, quantity) in Fields(form))
        {
            if (quantity is null)
                continue;
            if (quantity.TryInterval(field, out var interval) is { } wrong)
                return wrong;
            var source = check.May(quantity.Source, field + ".source", 400);
            if (check.Refusal is { } tooLong)
                return tooLong;
            if (kind.Refuse(interval) is { } reason)
                return new Refusal(field, reason);
            given.Add((kind, quantity, interval, source));
        }

        if (Contradiction(given.ToDictionary(item => item.Kind, item => item.Interval)) is { } contradiction)
            return contradiction;
        record.Name = name;
        record.Kind = form.Kind;
        record.Note = note;
        record.PortId = form.PortId is { } port ? PortId.From(port) : null;
        var standing = await draft.Context.RailQuantities.Where(row => row.RevisionId == draft.Revision.Id && row.RailId == record.Id).ToListAsync(cancellationToken);
        draft.Context.RailQuantities.RemoveRange(standing.Where(row => given.TrueForAll(item => item.Kind != row.Kind)));
        foreach (var (kind, quantity, interval, source) in given)
        {
            var row = standing.Find(row => row.Kind == kind);
            if (row is null)
            {
                row = new RailQuantity
                {
                    RevisionId = draft.Revision.Id,
                    Id = RailQuantityId.New(),
                    RailId = record.Id,
                    Kind = kind,
                    Low = 0,
                    Nominal = 0,
                    High = 0,
                };
                draft.Context.RailQuantities.Add(row);
            }

            (row.Low, row.Nominal, row.High) = (interval.Low, interval.Nominal, interval.High);
            row.Evidence = quantity.Evidence ?? Evidence.Guess;
            row.Source = source;
        }

        // A rail and what is known of it are one record to whoever edits it: a change of a quantity moves the rail's version too.
        var rail = draft.Context.Entry(record);
        if (rail.State is not EntityState.Detached && draft.Context.ChangeTracker.Entries<RailQuantity>().Any(entry => entry.State is not EntityState.Unchanged))
            rail.Property(row => row.Note).IsModified = true;
        return null;
    }

    /// <inheritdoc />
    protected override async Task<bool> IsStillAsync(Draft draft, Rail record, Rail published, CancellationToken cancellationToken)
    {
        if (!Untouched.Is(draft.Context, record, published))
            return false;
        var both = await draft.Context.RailQuantities.AsNoTracking()
            .Where(row => row.RailId == record.Id && (row.RevisionId == record.RevisionId || row.RevisionId == published.RevisionId))
            .ToListAsync(cancellationToken);
        var now = both.Where(row => row.RevisionId == record.RevisionId).ToDictionary(row => row.Kind);
        var then = both.Where(row => row.RevisionId == published.RevisionId).ToDictionary(row => row.Kind);
        return now.Count == then.Count && now.All(pair => then.TryGetValue(pair.Key, out var other) && Untouched.Is(draft.Context, pair.Value, other));
    }

    private static Refusal? Contradiction(Dictionary<RailQuantityKind, Interval> known)
    {
        if (known.TryGetValue(RailQuantityKind.MinVoltage, out var min) && known.TryGetValue(RailQuantityKind.MaxVoltage, out var max) && min.Nominal > max.Nominal)
            return new Refusal("min_voltage_v", "The lowest voltage is above the highest.");
        if (!known.TryGetValue(RailQuantityKind.NominalVoltage, out var nominal))
            return null;
        if (known.TryGetValue(RailQuantityKind.MinVoltage, out min) && min.Nominal > nominal.Nominal)
            return new Refusal("min_voltage_v", "The lowest voltage is above the nominal one.");
        return known.TryGetValue(RailQuantityKind.MaxVoltage, out max) && max.Nominal < nominal.Nominal
            ? new Refusal("max_voltage_v", "The highest voltage is below the nominal one.")
            : null;
    }

    private static (RailQuantityKind Kind, string Field, GivenQuantity? Quantity)[] Fields(RailForm form) =>
    [
        (RailQuantityKind.MinVoltage, "min_voltage_v", form.MinVoltageV),
        (RailQuantityKind.NominalVoltage, "nominal_voltage_v", form.NominalVoltageV),
        (RailQuantityKind.MaxVoltage, "max_voltage_v", form.MaxVoltageV),
        (RailQuantityKind.MaxCurrent, "max_current_a", form.MaxCurrentA),
        (RailQuantityKind.MaxPower, "max_power_w", form.MaxPowerW),
        (RailQuantityKind.Efficiency, "efficiency", form.Efficiency),
        (RailQuantityKind.PowerFactor, "power_factor", form.PowerFactor),
        (RailQuantityKind.LineFrequency, "line_frequency_hz", form.LineFrequencyHz),
        (RailQuantityKind.LineVoltage, "line_voltage_v", form.LineVoltageV),
        (RailQuantityKind.BleedResistance, "bleed_resistance_ohm", form.BleedResistanceOhm),
        (RailQuantityKind.PathResistance, "path_resistance_ohm", form.PathResistanceOhm),
        (RailQuantityKind.ProspectiveCurrent, "prospective_current_a", form.ProspectiveCurrentA),
    ];
}
