namespace Catalogue.Domain.UsbPd;

/// <summary>The capability list of one message, in the order of its positions.</summary>
/// <remarks>Source: USB Power Delivery 3.2, clauses 6.4.1.4 and 6.5.15.1.</remarks>
public sealed class CapabilityList
{
    /// <summary>A standard list has at most this many objects.</summary>
    public const int LongestStandard = 7;

    /// <summary>The position of the first object of the extended range.</summary>
    public const int FirstExtended = 8;

    /// <summary>An extended list has at most this many objects.</summary>
    public const int LongestExtended = 11;

    /// <summary>The standard range ends here, in mV; what is above needs an EPR cable.</summary>
    public const int HighestStandardMv = 20_000;

    /// <summary>The limit of an unmarked cable, in mA; what is above needs a marked 5 A cable.</summary>
    public const int UnmarkedCableMa = 3000;

    private readonly PlacedCapability[] _items;

    /// <summary>A list.</summary>
    /// <param name="items">The objects; positions from 1, rising.</param>
    /// <param name="role">Whose list it is.</param>
    /// <param name="label">What the text called it, such as <c>list b</c>; null where it said nothing.</param>
    public CapabilityList(IEnumerable<PlacedCapability> items, PortRole role = PortRole.Source, string? label = null)
    {
        ArgumentNullException.ThrowIfNull(items);
        _items = [.. items.Select(item => role == PortRole.Sink ? AsSink(item) : item)];
        for (var i = 0; i < _items.Length; i++)
            if (_items[i].Position <= (i == 0 ? 0 : _items[i - 1].Position))
                throw new ArgumentException("Positions begin at 1 and rise.", nameof(items));
        Role = role;
        Label = label;
        Facts = role == PortRole.Source ? [.. FactsOf()] : [.. DamageOf()];
    }

    /// <summary>Whose list it is.</summary>
    public PortRole Role { get; }

    /// <summary>What the text called it; null where it said nothing.</summary>
    public string? Label { get; }

    /// <summary>The objects, padding and damaged words included, in rising position.</summary>
    public IReadOnlyList<PlacedCapability> Items => _items;

    /// <summary>What is noticed of the list, in the order of positions where it concerns one.</summary>
    public IReadOnlyList<ListFact> Facts { get; }

    /// <summary>True where the list has a part from position 8 on.</summary>
    public bool IsExtended => _items.Any(item => item.Position >= FirstExtended && item.Capability is Capability.Fixed { VoltageMv: > HighestStandardMv } or Capability.EprAvs);

    /// <summary>The highest power of a fixed object in mW, rounded down; null where there is none.</summary>
    public int? BestFixedPowerMw => Fixed.Select(supply => (int?)supply.PowerMw).Max();

    /// <summary>True where an object offers more than 3 A.</summary>
    /// <remarks>Source: USB Power Delivery 3.2, tables 2.1 to 2.3.</remarks>
    public bool NeedsFiveAmpereCable => _items.Any(item => item.Capability.HighestCurrentMa > UnmarkedCableMa);

    /// <summary>True where an object offers more than 20 V. A programmable supply of the standard range, which ends at 21 V, does not count.</summary>
    public bool NeedsEprCable => _items.Any(item => item.Capability is not Capability.SprPps && item.Capability.Window?.MaxMv > HighestStandardMv);

    /// <summary>What the first object says of the port.</summary>
    public SourceFlags Flags => _items is [{ Position: 1, Capability: Capability.Fixed first }, ..] ? first.Flags : SourceFlags.None;

    /// <summary>The fixed supplies, in order.</summary>
    public IEnumerable<Capability.Fixed> Fixed => _items.Select(item => item.Capability).OfType<Capability.Fixed>();

    /// <summary>A source's list of words, numbered from 1.</summary>
    public static CapabilityList Of(IEnumerable<uint> words)
    {
        ArgumentNullException.ThrowIfNull(words);
        return new CapabilityList(words.Select((word, i) => PlacedCapability.Of(i + 1, word, WordOrigin.Word)));
    }

    /// <summary>The same list with the bytes of each word in the opposite order, as it stands where the bytes of the wire were printed as words.</summary>
    public CapabilityList Swapped() => new(_items.Select(item => item.Word is { } word ? PlacedCapability.Of(item.Position, CapabilityWord.Swapped(word), item.Origin) : item), Role, Label);

    /// <summary>
    /// True where the list makes no sense as written but does with its bytes swapped: the first object is 5 V only then. A person has to say
    /// which is meant.
    /// </summary>
    public bool LooksSwapped => _items is [{ Position: 1, Word: { } first }, ..] && !CapabilityWord.IsFiveVolts(first) && CapabilityWord.IsFiveVolts(CapabilityWord.Swapped(first));

    /// <summary>True where both hold the same objects at the same positions.</summary>
    public bool SameAs(CapabilityList other)
    {
        ArgumentNullException.ThrowIfNull(other);
        return Role == other.Role && _items.Select(item => (item.Position, item.Capability)).SequenceEqual(other._items.Select(item => (item.Position, item.Capability)));
    }

    // In a sink's list the bits of the peak code and half of the flags mean something else.
    private static PlacedCapability AsSink(PlacedCapability item) => item.Capability is Capability.Fixed x
        ? item with { Capability = x with { Peak = PeakCurrent.None, Flags = x.Flags & (SourceFlags.DualRolePower | SourceFlags.UnconstrainedPower | SourceFlags.UsbComm | SourceFlags.DualRoleData) } }
        : item;

    private IEnumerable<ListFact> DamageOf() =>
        from item in _items
        let damage = item.Capability as Capability.Unreadable
        where damage is not null
        select new ListFact.Damaged(item.Position, damage.AsRead, damage.Reason);

    private IEnumerable<ListFact> FactsOf()
    {
        if (_items.Length == 0)
            yield break;
        if (_items[0] is not { Position: 1, Capability: Capability.Fixed { VoltageMv: 5000 } first })
            yield return new ListFact.FirstIsNotFiveVolts();
        else if (first.MaxCurrentMa == 0)
            yield return new ListFact.OffersNothingNow();
        foreach (var fact in _items.SelectMany(FactsOf))
            yield return fact;
        foreach (var fact in Order().Concat(Places()))
            yield return fact;
    }

    private static IEnumerable<ListFact> FactsOf(PlacedCapability item)
    {
        var (position, capability) = (item.Position, item.Capability);
        if (item.Word is { } word)
        {
            if (CapabilityWord.ReservedBits(word, position) is not 0 and var bits)
                yield return new ListFact.ReservedBits(position, word, bits);
            if (position > 1 && capability is Capability.Fixed { Flags: not SourceFlags.None })
                yield return new ListFact.FlagsNotFirst(position);
        }

        if (capability is Capability.ReservedApdo reserved)
            yield return new ListFact.ReservedType(position, reserved.Word);
        if (capability is Capability.Unreadable damage)
            yield return new ListFact.Damaged(position, damage.AsRead, damage.Reason);
        if (capability is Capability.Fixed { VoltageMv: 0 })
            yield return new ListFact.NoVoltage(position);
        if (capability.Window is var (lowest, highest) && lowest > highest)
            yield return new ListFact.WindowUpsideDown(position);
        else if (capability is Capability.Variable x && x.MinMv * 5L < x.MaxMv * 4L)
            yield return new ListFact.VariableTooWide(position);
    }

    // Standard and extended part are ordered each for itself.
    private IEnumerable<ListFact> Order()
    {
        var seen = new Dictionary<int, int>();
        (int Position, (int Kind, int Voltage) Rank)? highest = null;
        foreach (var item in _items)
        {
            if (highest is { } other && other.Position < FirstExtended && item.Position >= FirstExtended)
                highest = null;
            if (item.Capability is Capability.Fixed { VoltageMv: > 0 and var voltage } && !seen.TryAdd(voltage, item.Position))
                yield return new ListFact.SameVoltageTwice(seen[voltage], item.Position, voltage);
            if (Rank(item.Capability) is not { } rank)
                continue;
            if (highest is { } before && rank.CompareTo(before.Rank) < 0)
                yield return new ListFact.OutOfOrder(item.Position, before.Position);
            else
                highest = (item.Position, rank);
        }
    }

    private static (int Kind, int Voltage)? Rank(Capability capability) => capability switch
    {
        Capability.Fixed x => (0, x.VoltageMv),
        Capability.Battery x => (1, x.MinMv),
        Capability.Variable x => (2, x.MinMv),
        Capability.SprAvs => (3, 0),
        Capability.SprPps x => (4, x.MaxMv),
        Capability.EprAvs => (5, 0),
        _ => null,
    };

    private IEnumerable<ListFact> Places()
    {
        var last = _items[^1].Position;
        if (last > LongestExtended)
            yield return new ListFact.TooMany(_items.Length);
        else if (last > LongestStandard && !IsExtended)
            yield return new ListFact.LongWithoutExtended(_items.Length);
        int[] padding = [.. _items.Where(item => item.Capability is Capability.Padding).Select(item => item.Position)];
        if (padding.Length > 0)
            yield return IsExtended ? new ListFact.Padded(padding, padding[^1] < last) : new ListFact.ZeroInStandardList(padding);
        int[] skipped = [.. Enumerable.Range(1, Math.Min(last, LongestExtended)).Except(_items.Select(item => item.Position))];
        if (skipped.Length > 0)
            yield return new ListFact.Skipped(skipped);
        foreach (var item in _items)
        {
            var extended = item.Capability is Capability.EprAvs or Capability.Fixed { VoltageMv: > HighestStandardMv };
            if (extended && item.Position < FirstExtended)
                yield return new ListFact.ExtendedOutsideItsPlace(item.Position, item.Capability.Kind);
            else if (IsExtended && !extended && item.Position is >= FirstExtended and <= LongestExtended && item.Capability is not (Capability.Padding or Capability.Unreadable or Capability.ReservedApdo))
                yield return new ListFact.StandardInExtendedPlace(item.Position);
        }

        var avs = _items.Count(item => item.Position >= FirstExtended && item.Capability is Capability.EprAvs);
        if (IsExtended && avs != 1)
            yield return new ListFact.ExtendedAvsCount(avs);
    }
}
