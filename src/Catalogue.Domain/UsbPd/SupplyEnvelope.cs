namespace Catalogue.Domain.UsbPd;

/// <summary>What a source can give over voltage, as data for a drawing.</summary>
/// <remarks>
/// Fixed, variable and programmable supplies have one current over their window, SPR AVS one on each side of 15 V; battery and EPR AVS have a
/// power, so <c>I = P / V</c>, the latter at most 5 A. A programmable supply with the power-limited flag has <c>min(I, PDP / V)</c> where the
/// declared power is known. Source: USB Power Delivery 3.2, clauses 6.4.1.2 and 10.2.
/// </remarks>
public sealed class SupplyEnvelope
{
    // A curve P / V is drawn as this many chords for each doubling of the voltage; a chord is then off by less than 0.05 %.
    private const int ChordsPerDoubling = 16;

    private SupplyEnvelope(IReadOnlyList<SupplyRegion> regions, IReadOnlyList<EnvelopePoint> outer)
    {
        Regions = regions;
        Outer = outer;
    }

    /// <summary>One region for each object that offers something, in order of position.</summary>
    public IReadOnlyList<SupplyRegion> Regions { get; }

    /// <summary>
    /// The highest current at any voltage: a line from (lowest voltage, 0) to (highest voltage, 0), voltages never falling; a fixed supply
    /// alone at its voltage is a spike, a gap between supplies runs along zero. Empty where nothing is offered.
    /// </summary>
    public IReadOnlyList<EnvelopePoint> Outer { get; }

    /// <summary>The envelope of a list.</summary>
    /// <param name="list">A source's list.</param>
    /// <param name="declaredPdpW">The declared power in W, which limits power-limited supplies; null where it is not known.</param>
    public static SupplyEnvelope Of(CapabilityList list, double? declaredPdpW = null)
    {
        ArgumentNullException.ThrowIfNull(list);
        if (declaredPdpW is not (null or (> 0 and < double.PositiveInfinity)))
            throw new ArgumentOutOfRangeException(nameof(declaredPdpW), declaredPdpW, "A declared power is above zero.");
        var supplies = list.Items.Select(item => (item.Position, item.Capability, Bands: Bands(item.Capability, declaredPdpW))).Where(supply => supply.Bands.Length > 0).ToList();
        return new SupplyEnvelope(
            [.. supplies.Select(supply => new SupplyRegion(supply.Position, supply.Capability.Kind, Edge(supply.Bands), declaredPdpW is null && supply.Capability is Capability.SprPps { IsPowerLimited: true }))],
            OuterOf([.. supplies.SelectMany(supply => supply.Bands)]));
    }

    /// <summary>The highest current in A at a voltage in V, from the capabilities themselves; 0 where none has it.</summary>
    public static double CurrentAt(CapabilityList list, double voltageV, double? declaredPdpW = null)
    {
        ArgumentNullException.ThrowIfNull(list);
        return list.Items.SelectMany(item => Bands(item.Capability, declaredPdpW)).Where(band => voltageV >= band.From && voltageV <= band.To).Select(band => band.At(voltageV)).DefaultIfEmpty(0).Max();
    }

    private static Band[] Bands(Capability capability, double? declaredPdpW)
    {
        const double Unlimited = double.PositiveInfinity;
        Band[] bands = capability switch
        {
            Capability.Fixed x => [new(x.VoltageMv, x.VoltageMv, x.MaxCurrentMa, Unlimited)],
            Capability.Battery x => [new(x.MinMv, x.MaxMv, int.MaxValue, x.MaxPowerMw)],
            Capability.Variable x => [new(x.MinMv, x.MaxMv, x.MaxCurrentMa, Unlimited)],
            Capability.SprPps x => [new(x.MinMv, x.MaxMv, x.MaxCurrentMa, x.IsPowerLimited && declaredPdpW is { } pdp ? pdp * 1000 : Unlimited)],
            Capability.SprAvs x => [new(Capability.SprAvs.LowestMv, Capability.SprAvs.SplitMv, x.CurrentTo15VMa, Unlimited), new(Capability.SprAvs.SplitMv, Capability.SprAvs.HighestMv, x.CurrentTo20VMa, Unlimited)],
            Capability.EprAvs x => [new(x.MinMv, x.MaxMv, Capability.EprAvs.CurrentLimitMa, x.PdpW * 1000.0)],
            _ => [],
        };
        return Array.FindAll(bands, band => band.From > 0 && band.To >= band.From && band is { Current: > 0, Power: > 0 });
    }

    private static List<EnvelopePoint> Edge(Band[] bands)
    {
        var edge = new List<EnvelopePoint>();
        foreach (var band in bands)
            Draw(edge, band, band.From, band.To);
        return edge;
    }

    private static List<EnvelopePoint> OuterOf(Band[] bands)
    {
        // Between two neighbouring corners (ends, knees and crossings of bands) one and the same band is on top.
        var corners = new SortedSet<double>(bands.SelectMany(band => new[] { band.From, band.To }));
        foreach (var curve in bands.Where(band => double.IsFinite(band.Power)))
            foreach (var level in bands.Select(band => curve.Power / band.Current))
                if (level > curve.From && level < curve.To)
                    corners.Add(level);
        var outer = new List<EnvelopePoint>();
        double? before = null;
        foreach (var corner in corners)
        {
            if (before is { } from)
            {
                var middle = (from + corner) / 2;
                var top = Top(bands.Where(band => band.From <= from && band.To >= corner), middle);
                Draw(outer, top ?? new Band(from, corner, 0, double.PositiveInfinity), from, corner);
            }
            else
            {
                outer.Add(new EnvelopePoint(corner, 0));
            }

            // The supplies that touch this corner may stand above both sides of it.
            if (Top(bands.Where(band => band.From <= corner && band.To >= corner), corner) is { } here)
                Add(outer, new EnvelopePoint(corner, here.At(corner)));
            before = corner;
        }

        if (before is { } last)
            Add(outer, new EnvelopePoint(last, 0));
        return outer;
    }

    private static Band? Top(IEnumerable<Band> bands, double voltage)
    {
        Band? top = null;
        foreach (var band in bands)
            if (top is not { } other || band.At(voltage) > other.At(voltage))
                top = band;
        return top;
    }

    private static void Draw(List<EnvelopePoint> line, Band band, double from, double to)
    {
        Add(line, new EnvelopePoint(from, band.At(from)));
        var knee = Math.Clamp(band.Power / band.Current, from, to);
        if (band.Current > 0 && knee < to)
        {
            var chords = (int)Math.Ceiling(Math.Log2(to / knee) * ChordsPerDoubling);
            for (var i = 0; i < chords; i++)
            {
                var voltage = knee * Math.Pow(to / knee, (double)i / chords);
                Add(line, new EnvelopePoint(voltage, band.At(voltage)));
            }
        }

        Add(line, new EnvelopePoint(to, band.At(to)));
    }

    private static void Add(List<EnvelopePoint> line, EnvelopePoint point)
    {
        if (line.Count == 0 || line[^1] != point)
            line.Add(point);
    }

    /// <summary>A window with a current and a power: <c>I(V) = min(I, P / V)</c>.</summary>
    private readonly record struct Band
    {
        public Band(double fromMv, double toMv, double currentMa, double powerMw)
        {
            (From, To, Current, Power) = (fromMv / 1000, toMv / 1000, currentMa / 1000, powerMw / 1000);
        }

        public double From { get; }

        public double To { get; }

        public double Current { get; }

        public double Power { get; }

        public double At(double voltage) => Math.Min(Current, Power / voltage);
    }
}
