using Catalogue.Domain.Rails;

namespace Catalogue.Domain.Figures;

/// <summary>All that the rules may take of a rail: what is recorded, what was derived where nothing is, and the parts on it.</summary>
public sealed class RailFacts
{
    private readonly Dictionary<RailQuantityKind, Given> _quantities;

    /// <summary>Facts of a rail.</summary>
    /// <param name="rail">The rail.</param>
    /// <param name="quantities">What is known of it, each kind once.</param>
    public RailFacts(Rail rail, IReadOnlyDictionary<RailQuantityKind, Given> quantities)
    {
        ArgumentNullException.ThrowIfNull(rail);
        ArgumentNullException.ThrowIfNull(quantities);
        Rail = rail;
        _quantities = new Dictionary<RailQuantityKind, Given>(quantities);
    }

    /// <summary>The rail.</summary>
    public Rail Rail { get; }

    /// <summary>True on mains, where voltages and currents are rms.</summary>
    public bool IsMains => Rail.Kind is RailKind.Mains;

    /// <summary>The fitted parts on it, in the order of the list.</summary>
    public IReadOnlyList<PartFacts> Parts { get; internal set; } = [];

    /// <summary>The fitted cells of a pack rail, in the order of the list; empty for any other rail, and where they do not agree on how many are in series.</summary>
    public IReadOnlyList<PartFacts> Cells { get; internal set; } = [];

    /// <summary>What is known of one kind, or null.</summary>
    public Given? Of(RailQuantityKind kind) => _quantities.GetValueOrDefault(kind);

    /// <summary>The highest voltage known: the highest, else the nominal one. Null when neither is known.</summary>
    public Given? Highest => Of(RailQuantityKind.MaxVoltage) ?? Of(RailQuantityKind.NominalVoltage);

    /// <summary>The highest case of any voltage known, in volt; peak on mains. Null when none is known.</summary>
    public double? PeakVolts
    {
        get
        {
            double? highest = null;
            foreach (var kind in (ReadOnlySpan<RailQuantityKind>)[RailQuantityKind.MinVoltage, RailQuantityKind.NominalVoltage, RailQuantityKind.MaxVoltage])
                if (Of(kind) is { } given && !(highest >= given.Interval.High))
                    highest = given.Interval.High;
            return IsMains ? highest * Math.Sqrt(2) : highest;
        }
    }
}
