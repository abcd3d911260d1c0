using Catalogue.Domain.Quantities;

namespace Catalogue.Domain.Packs;

/// <summary>The transport band of a battery's energy: the band only, no permission of any kind.</summary>
/// <remarks>Source: UN Model Regulations, special provision 188, and the air-travel rules for passengers' spare batteries.</remarks>
/// <param name="Energy">The energy that was compared, in watt-hour.</param>
/// <param name="Band">The band of its nominal case.</param>
/// <param name="HighestBand">The band of its highest case.</param>
public sealed record TransportScreen(Interval Energy, TransportBand Band, TransportBand HighestBand)
{
    /// <summary>Stands beside every band.</summary>
    public const string Caution =
        "The band follows from the energy alone. The watt-hours marked on the battery, the carrier and the rules in force decide; "
        + "limits on charge and on power banks change often.";

    private const double SmallLimitWh = 100;
    private const double ApprovalLimitWh = 160;

    /// <summary>The band of an energy, or why there is none.</summary>
    /// <param name="energy">Energy of one battery, in watt-hour.</param>
    public static Reckoning<TransportScreen> Of(Interval? energy) => new InputCheck()
        .Positive("energy", energy, Unit.WattHour)
        .Reckon(() => new TransportScreen(energy!.Value, BandOf(energy.Value.Nominal), BandOf(energy.Value.High)));

    /// <summary>The sign of a band: <c>&lt;=100</c>, <c>&lt;=160</c> or <c>&gt;160</c>, in watt-hour.</summary>
    public static string Sign(TransportBand band) => band switch
    {
        TransportBand.UpTo100Wh => "<=100",
        TransportBand.UpTo160Wh => "<=160",
        _ => ">160",
    };

    /// <summary>What the line of a band is, in words.</summary>
    public static string Words(TransportBand band) => band switch
    {
        TransportBand.UpTo100Wh => "up to 100 Wh, the line for small lithium-ion batteries (UN Model Regulations, special provision 188)",
        TransportBand.UpTo160Wh => "above 100 and up to 160 Wh, where air-travel rules ask for the operator's approval",
        _ => "above 160 Wh, dangerous-goods freight",
    };

    private static TransportBand BandOf(double energy) =>
        !Line.IsBelow(SmallLimitWh, energy) ? TransportBand.UpTo100Wh
        : !Line.IsBelow(ApprovalLimitWh, energy) ? TransportBand.UpTo160Wh
        : TransportBand.Above160Wh;
}
