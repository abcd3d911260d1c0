namespace Catalogue.Domain.UsbPd;

/// <summary>What a source of a declared power (PDP) has to offer at which voltage.</summary>
/// <remarks>
/// <para>
/// Below the class of a voltage nothing is asked for; within it <c>PDP / V</c>, which may be advertised rounded up or down to 10 mA, so both
/// are met; above it 3 A at least and <c>PDP / V</c> at most. Above 100 W, 20 V is 5 A, and the extended voltages follow the same way at 5 A.
/// </para>
/// <para>Source: USB Power Delivery 3.2, clause 10.2, tables 10.2, 10.10 to 10.12.</para>
/// </remarks>
public sealed class PowerRules
{
    /// <summary>The least power that is declared, in W.</summary>
    public const double LowestPdpW = 0.5;

    /// <summary>The most, in W.</summary>
    public const double HighestPdpW = 240;

    /// <summary>Above this power in W the extended range is asked for.</summary>
    public const int ExtendedAboveW = 100;

    private const int FullStandardMa = 3000, FullExtendedMa = 5000;

    // Each voltage with the power in W above which it is asked for and up to which it carries PDP / V.
    private static readonly (int Mv, int AboveW, int ToW, int FullMa)[] Classes =
    [
        (5000, 0, 15, FullStandardMa), (9000, 15, 27, FullStandardMa), (15_000, 27, 45, FullStandardMa), (20_000, 45, 100, FullExtendedMa),
        (28_000, 100, 140, FullExtendedMa), (36_000, 140, 180, FullExtendedMa), (48_000, 180, 240, FullExtendedMa),
    ];

    private readonly long _pdpMw;

    private PowerRules(double pdpW)
    {
        PdpW = pdpW;
        _pdpMw = (long)Math.Round(pdpW * 1000);
        Voltages = [.. Classes.Where(entry => _pdpMw > entry.AboveW * 1000L).Select(Required)];
    }

    /// <summary>The declared power in W.</summary>
    public double PdpW { get; }

    /// <summary>The fixed voltages it has to offer, rising.</summary>
    public IReadOnlyList<RequiredVoltage> Voltages { get; }

    /// <summary>True where 9 V to 15 V adjustable is asked for. Since revision 3.2 only.</summary>
    public bool WantsAvsTo15V => _pdpMw > 27_000;

    /// <summary>True where it is asked for up to 20 V.</summary>
    public bool WantsAvsTo20V => _pdpMw > 45_000;

    /// <summary>Up to which voltage in mV an EPR AVS object has to reach from 15 V; null up to 100 W.</summary>
    public int? ExtendedAvsToMv => Voltages[^1].VoltageMv is > CapabilityList.HighestStandardMv and var highest ? highest : null;

    /// <summary>True for a power that is declared the usual way: whole watts from 10 W, half watts below.</summary>
    public bool IsWholeStep => _pdpMw % (_pdpMw >= 10_000 ? 1000 : 500) == 0;

    /// <summary>The rules for a declared power.</summary>
    /// <param name="pdpW">In W.</param>
    /// <returns>Null where it is no number from 0.5 to 240.</returns>
    public static PowerRules? For(double pdpW) => pdpW is >= LowestPdpW and <= HighestPdpW ? new PowerRules(pdpW) : null;

    /// <summary>True for a voltage of the list of the current edition, whatever the power.</summary>
    public static bool IsListed(int voltageMv) => Array.Exists(Classes, entry => entry.Mv == voltageMv);

    /// <summary>The current in mA that a programmable supply of a class has to reach at this power, rounded down to 50 mA; null where the class is not asked for.</summary>
    /// <remarks>Such supplies are optional: this is what is asked of a source that has one.</remarks>
    public int? ProgrammableMa(PpsClass pps) => pps switch
    {
        PpsClass.NineVolts => Programmable(9, 15, 27, 45),
        PpsClass.FifteenVolts => Programmable(15, 27, 45, 60),
        PpsClass.TwentyVolts when _pdpMw > ExtendedAboveW * 1000 => FullExtendedMa,
        PpsClass.TwentyVolts => Programmable(20, 45, 100, 100),
        _ => null,
    };

    // Between two class points the lower class stays asked for, at 3 A; at the upper point it is no more.
    private int? Programmable(int volts, int aboveW, int toW, int stays) =>
        _pdpMw <= aboveW * 1000 ? null
        : _pdpMw <= toW * 1000 ? (int)(_pdpMw / volts / 50) * 50
        : _pdpMw < stays * 1000 ? FullStandardMa
        : null;

    private RequiredVoltage Required((int Mv, int AboveW, int ToW, int FullMa) entry)
    {
        var tenths = entry.Mv * 10L;
        var (down, up) = ((int)(_pdpMw * 1000 / tenths) * 10, (int)((_pdpMw * 1000 + tenths - 1) / tenths) * 10);
        if (_pdpMw <= entry.ToW * 1000L)
            return new RequiredVoltage(entry.Mv, down, up);
        return new RequiredVoltage(entry.Mv, entry.FullMa, entry.FullMa == FullExtendedMa ? FullExtendedMa : Math.Min(up, FullExtendedMa));
    }
}
