namespace Catalogue.Domain.UsbPd;

/// <summary>A supply as a text states it: what somebody printed or another program decoded.</summary>
internal sealed record ClaimedSupply
{
    // No word can say more; what is above is the mains side of a label.
    private const int HighestMv = 51_150;

    /// <summary>The number written before it; null where there is none.</summary>
    public int? Index { get; set; }

    /// <summary>The kind it is called.</summary>
    public SupplyKind? Named { get; set; }

    /// <summary>Lowest and only or highest voltage in mV.</summary>
    public int? MinMv { get; set; }

    /// <summary>Highest voltage in mV.</summary>
    public int? MaxMv { get; set; }

    /// <summary>Current in mA.</summary>
    public int? Ma { get; set; }

    /// <summary>The second current of an adjustable supply, above 15 V.</summary>
    public int? MaTo20V { get; set; }

    /// <summary>Power in mW.</summary>
    public int? Mw { get; set; }

    /// <summary>Flags named beside it.</summary>
    public SourceFlags Flags { get; set; }

    /// <summary>It is said to be limited by power.</summary>
    public bool IsPowerLimited { get; set; }

    /// <summary>A window rather than one voltage.</summary>
    public bool IsRange => MinMv != MaxMv;

    /// <summary>A voltage, and a current or power with it.</summary>
    public bool IsWhole => MaxMv is not null && (Ma is not null || (Mw is not null && (IsRange || Named is SupplyKind.Battery or SupplyKind.EprAvs)));

    /// <summary>What it claims; null where that cannot be said without guessing.</summary>
    public Capability? Capability => this switch
    {
        { MinMv: not { } or < 0 } or { MaxMv: not { } or > HighestMv } => null,
        { Named: SupplyKind.Battery, Mw: { } mw } => new Capability.Battery(MinMv.Value, MaxMv.Value, mw),
        { Named: SupplyKind.EprAvs, Mw: { } mw } => new Capability.EprAvs(MinMv.Value, MaxMv.Value, mw / 1000),
        { Named: SupplyKind.Variable, Ma: { } ma } => new Capability.Variable(MinMv.Value, MaxMv.Value, ma),
        { Named: SupplyKind.SprAvs, Ma: { } ma, MinMv: Capability.SprAvs.LowestMv, MaxMv: <= Capability.SprAvs.SplitMv or Capability.SprAvs.HighestMv } =>
            new Capability.SprAvs(ma, MaTo20V ?? (MaxMv > Capability.SprAvs.SplitMv ? ma : 0)),
        { Named: SupplyKind.SprPps or null, Ma: { } ma, IsRange: true } => new Capability.SprPps(MinMv.Value, MaxMv.Value, ma, IsPowerLimited),
        { Named: SupplyKind.Fixed or null, Ma: { } ma, IsRange: false } => new Capability.Fixed(MaxMv.Value, ma, PeakCurrent.None, Flags),
        _ => null,
    };

    /// <summary>True where nothing it states contradicts a decoded object, within the digits that are usually printed.</summary>
    public bool AgreesWith(Capability decoded)
    {
        if (decoded.Window is not var (lowest, highest))
            return false;
        if (MaxMv is { } max && (!Near(max, highest) || !Near(MinMv ?? max, lowest)))
            return false;
        return Ma is not { } ma || (decoded is Capability.SprAvs x ? Near(ma, x.CurrentTo15VMa) || Near(ma, x.CurrentTo20VMa) : decoded.HighestCurrentMa is not { } offered || Near(ma, offered));
    }

    private static bool Near(int stated, int decoded) => Math.Abs((long)stated - decoded) <= 50 + (decoded / 200);
}
