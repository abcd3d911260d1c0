namespace Catalogue.Domain.UsbPd;

/// <summary>Supplies that a text states, one after the other.</summary>
/// <param name="role">Whose they are.</param>
/// <param name="line">The line of the first.</param>
internal sealed class ClaimRun(PortRole role, int line)
{
    /// <summary>The line of the first.</summary>
    public int Line => line;

    /// <summary>The supplies.</summary>
    public List<ClaimedSupply> Items { get; } = [];

    /// <summary>Other text has followed.</summary>
    public bool IsClosed { get; set; }

    /// <summary>Numbers with units stand in any text; a list is numbered, names its kinds, begins with 5 V or has several.</summary>
    public bool IsCredible => Items.Exists(item => item.Index is not null || item.Named is not null) || Items.Count > 1 || Items[0].Capability is Capability.Fixed { VoltageMv: 5000 };

    /// <summary>True where a supply cannot belong to this list any more.</summary>
    public bool Ends(ClaimedSupply next, bool afterBlank) => Items.Count >= 64 || (next.Index, Items[^1].Index) switch
    {
        ({ } index, { } last) => index <= last,
        (null, null) => afterBlank || IsClosed || (next is { IsRange: false, MaxMv: 5000 } && Items[0] is { IsRange: false, MaxMv: 5000 }),
        _ => true,
    };

    /// <summary>The list, numbered as written.</summary>
    public CapabilityList ToList()
    {
        // A list that counts from zero is one lower throughout.
        var shift = Items[0].Index == 0 ? 1 : 0;
        return new CapabilityList(Items.Select((item, i) => new PlacedCapability(item.Index + shift ?? i + 1, FirstOnly(item.Capability!, i), null, WordOrigin.Text)), role, role == PortRole.Sink ? "sink" : null);
    }

    private static Capability FirstOnly(Capability capability, int i) => i > 0 && capability is Capability.Fixed x ? x with { Flags = SourceFlags.None } : capability;
}
