namespace Catalogue.Domain.UsbPd;

/// <summary>A fixed voltage that a source of some declared power has to offer.</summary>
/// <param name="VoltageMv">In mV.</param>
/// <param name="LeastMa">The least current that meets the rule, in mA.</param>
/// <param name="MostMa">The most the rule allows, in mA; never below <paramref name="LeastMa"/>.</param>
public sealed record RequiredVoltage(int VoltageMv, int LeastMa, int MostMa);
