using System.Globalization;

namespace Catalogue.Domain.UsbPd;

/// <summary>A source's list beside the rules for the power it declares. Facts for a person to judge; nothing here certifies a product.</summary>
/// <remarks>Source: <see cref="PowerRules"/>.</remarks>
public sealed class PowerRuleCheck
{
    private PowerRuleCheck(CapabilityList list, PowerRules rules)
    {
        Rules = rules;
        var standardOnly = !list.IsExtended && list.Flags.HasFlag(SourceFlags.EprCapable);
        Voltages = [.. rules.Voltages.Select(required => Compare(required, list, standardOnly && rules.PdpW > PowerRules.ExtendedAboveW))];
        SprAvs = SprAvsOf(list, rules);
        EprAvs = EprAvsOf(list, rules);
        Outside = [.. OutsideOf(list, rules)];
        Programmable = [.. list.Items.Where(item => item.Capability is Capability.SprPps).Select(item => ProgrammableOf(item.Position, (Capability.SprPps)item.Capability, rules))];
        BestFixedPowerMw = list.BestFixedPowerMw;
        Words = [.. Sentences(list, standardOnly)];
    }

    /// <summary>The rules it was compared with.</summary>
    public PowerRules Rules { get; }

    /// <summary>Each required voltage, rising.</summary>
    public IReadOnlyList<CheckedVoltage> Voltages { get; }

    /// <summary>Required voltages that are missing or too low, in mV, rising.</summary>
    public IEnumerable<int> BelowRuleMv => Voltages.Where(voltage => voltage.Outcome is VoltageOutcome.Missing or VoltageOutcome.TooLow).Select(voltage => voltage.Required.VoltageMv);

    /// <summary>True where every required fixed voltage carries at least the current asked for. Says nothing of the adjustable supplies.</summary>
    public bool SupportsDeclaredPower => !BelowRuleMv.Any();

    /// <summary>The adjustable supply of the standard range.</summary>
    public AvsState SprAvs { get; }

    /// <summary>The adjustable supply of the extended range.</summary>
    public AvsState EprAvs { get; }

    /// <summary>Fixed voltages beyond the rules, in order of position.</summary>
    public IReadOnlyList<OutsideVoltage> Outside { get; }

    /// <summary>The programmable supplies, in order of position.</summary>
    public IReadOnlyList<CheckedProgrammable> Programmable { get; }

    /// <summary>The highest power of a fixed object in mW; null where there is none.</summary>
    public int? BestFixedPowerMw { get; }

    /// <summary>All of it in sentences, what falls short first.</summary>
    public IReadOnlyList<string> Words { get; }

    /// <summary>A required voltage beside what is offered.</summary>
    /// <param name="Required">What the rule asks for.</param>
    /// <param name="OfferedMa">The current offered there in mA; null where the voltage is not offered.</param>
    /// <param name="Outcome">How they compare.</param>
    public sealed record CheckedVoltage(RequiredVoltage Required, int? OfferedMa, VoltageOutcome Outcome);

    /// <summary>A fixed voltage beyond the rules; common in the field and no fault by itself.</summary>
    /// <param name="Position">Where it stands.</param>
    /// <param name="VoltageMv">In mV.</param>
    /// <param name="AboveClass">True where the voltage is of the list but of a higher power; false where the R3.2 list does not have it.</param>
    public sealed record OutsideVoltage(int Position, int VoltageMv, bool AboveClass);

    /// <summary>A programmable supply.</summary>
    /// <param name="Position">Where it stands.</param>
    /// <param name="Class">Its class.</param>
    /// <param name="FloorMv">Where its range begins, in mV.</param>
    /// <param name="HasOlderFloor">True where that is below the 5 V of revision 3.2.</param>
    /// <param name="WantedMa">The current this class should reach at this power, in mA; null where the class is not asked for.</param>
    /// <param name="OfferedMa">The current offered, in mA.</param>
    public sealed record CheckedProgrammable(int Position, PpsClass Class, int FloorMv, bool HasOlderFloor, int? WantedMa, int OfferedMa);

    /// <summary>Compares a list with the rules.</summary>
    /// <param name="list">A source's list.</param>
    /// <param name="rules">The rules for the power it declares.</param>
    public static PowerRuleCheck Of(CapabilityList list, PowerRules rules)
    {
        ArgumentNullException.ThrowIfNull(list);
        ArgumentNullException.ThrowIfNull(rules);
        if (list.Role != PortRole.Source)
            throw new ArgumentException("What a sink wants is no offer.", nameof(list));
        return new PowerRuleCheck(list, rules);
    }

    /// <summary>The class of a programmable supply.</summary>
    public static PpsClass ClassOf(Capability.SprPps supply)
    {
        ArgumentNullException.ThrowIfNull(supply);
        return supply.MaxMv switch
        {
            <= 6000 => PpsClass.FiveVolts,
            >= 10_900 and <= 11_100 => PpsClass.NineVolts,
            >= 15_900 and <= 16_100 => PpsClass.FifteenVolts,
            >= 20_900 and <= 21_100 => PpsClass.TwentyVolts,
            _ => PpsClass.Other,
        };
    }

    private static CheckedVoltage Compare(RequiredVoltage required, CapabilityList list, bool isStandardMode)
    {
        var offered = list.Fixed.Where(supply => supply.VoltageMv == required.VoltageMv).Select(supply => (int?)supply.MaxCurrentMa).Max();
        return new CheckedVoltage(required, offered, offered switch
        {
            null => VoltageOutcome.Missing,
            { } ma when ma > required.MostMa => VoltageOutcome.TooHigh,
            { } ma when ma >= required.LeastMa => VoltageOutcome.Met,
            > CapabilityList.UnmarkedCableMa when isStandardMode && required.VoltageMv == CapabilityList.HighestStandardMv => VoltageOutcome.LessInStandardMode,
            _ => VoltageOutcome.TooLow,
        });
    }

    private static AvsState SprAvsOf(CapabilityList list, PowerRules rules)
    {
        if (!rules.WantsAvsTo15V)
            return AvsState.NotRequired;
        Capability.SprAvs[] offered = [.. list.Items.Select(item => item.Capability).OfType<Capability.SprAvs>()];
        if (offered.Length == 0)
            return AvsState.Missing;
        return Array.Exists(offered, supply => supply.CurrentTo15VMa >= Least(15_000) && (!rules.WantsAvsTo20V || supply.CurrentTo20VMa >= Least(20_000))) ? AvsState.Present : AvsState.Below;

        // The current of the fixed object beside it; where that one is missing, what the rule asks of it.
        int Least(int voltageMv) => Math.Min(
            rules.Voltages.Single(required => required.VoltageMv == voltageMv).LeastMa,
            list.Fixed.Where(supply => supply.VoltageMv == voltageMv).Select(supply => (int?)supply.MaxCurrentMa).Max() ?? int.MaxValue);
    }

    private static AvsState EprAvsOf(CapabilityList list, PowerRules rules)
    {
        if (rules.ExtendedAvsToMv is not { } to)
            return AvsState.NotRequired;
        Capability.EprAvs[] offered = [.. list.Items.Select(item => item.Capability).OfType<Capability.EprAvs>()];
        if (offered.Length == 0)
            return AvsState.Missing;
        return Array.Exists(offered, supply => supply.MinMv <= 15_000 && supply.MaxMv >= to && supply.PdpW >= Math.Floor(rules.PdpW)) ? AvsState.Present : AvsState.Below;
    }

    private static IEnumerable<OutsideVoltage> OutsideOf(CapabilityList list, PowerRules rules)
    {
        foreach (var item in list.Items)
        {
            if (item.Capability is not Capability.Fixed { VoltageMv: var voltage } || rules.Voltages.Any(required => required.VoltageMv == voltage))
                continue;
            // Any further voltage up to 9 V is the maker's choice.
            if (voltage > 9000 || PowerRules.IsListed(voltage))
                yield return new OutsideVoltage(item.Position, voltage, PowerRules.IsListed(voltage));
        }
    }

    private static CheckedProgrammable ProgrammableOf(int position, Capability.SprPps supply, PowerRules rules)
    {
        var pps = ClassOf(supply);
        return new CheckedProgrammable(position, pps, supply.MinMv, supply.MinMv < 5000, rules.ProgrammableMa(pps), supply.MaxCurrentMa);
    }

    private IEnumerable<string> Sentences(CapabilityList list, bool standardOnly)
    {
        foreach (var (required, offered, outcome) in Voltages)
        {
            var (volts, least) = (Volts(required.VoltageMv), Amperes(required.LeastMa));
            if (outcome == VoltageOutcome.Missing)
                yield return Text($"{volts} is missing; {Rules.PdpW:0.##} W asks for {least} there.");
            else if (outcome == VoltageOutcome.TooLow)
                yield return Text($"{volts} offers {Amperes(offered!.Value)}; {Rules.PdpW:0.##} W asks for {least}.");
            else if (outcome == VoltageOutcome.TooHigh)
                yield return Text($"{volts} offers {Amperes(offered!.Value)}; at {Rules.PdpW:0.##} W the rule allows {Amperes(required.MostMa)}.");
            else if (outcome == VoltageOutcome.LessInStandardMode)
                yield return Text($"{volts} offers {Amperes(offered!.Value)}; an extended source may offer less than 5 A there while in standard mode.");
        }

        yield return BestFixedPowerMw is { } best ? Text($"The best fixed object gives {best / 1000m:0.##} W of {Rules.PdpW:0.##} W declared.") : "No fixed object is offered.";
        if (!SupportsDeclaredPower && !list.NeedsFiveAmpereCable && Rules.PdpW > 60)
            yield return "No current is above 3 A: read through a cable that is not marked for 5 A, a source offers no more. Compare only with the cable recorded.";
        if (standardOnly && Rules.PdpW > PowerRules.ExtendedAboveW)
            yield return "The source says that it can do extended power, but the list is its standard one; read the extended list before comparing.";
        if (SprAvs is AvsState.Missing)
            yield return "SPR AVS is not offered; revision 3.2 asks for it above 27 W, revisions 3.0 and 3.1 did not have it.";
        else if (SprAvs is AvsState.Below)
            yield return "SPR AVS is offered with less current or range than the fixed objects beside it.";
        if (EprAvs is AvsState.Missing)
            yield return "EPR AVS is not offered; above 100 W it is asked for from 15 V to the highest extended voltage.";
        else if (EprAvs is AvsState.Below)
            yield return "EPR AVS is offered with less range or power than asked for.";
        foreach (var outside in Outside)
            yield return outside.AboveClass
                ? Text($"Object {outside.Position}: {Volts(outside.VoltageMv)} is above the class of {Rules.PdpW:0.##} W.")
                : Text($"Object {outside.Position}: {Volts(outside.VoltageMv)} is not in the R3.2 list of voltages, though common in the field.");
        foreach (var pps in Programmable)
            if (pps.WantedMa > pps.OfferedMa)
                yield return Text($"Object {pps.Position}: this programmable supply offers {Amperes(pps.OfferedMa)}; its class asks for {Amperes(pps.WantedMa.Value)} at {Rules.PdpW:0.##} W.");
        if (!Rules.IsWholeStep)
            yield return "Powers are declared in whole watts from 10 W and in half watts below; this one is not.";
    }

    private static string Volts(int mv) => Text($"{mv / 1000m:0.##} V");

    private static string Amperes(int ma) => Text($"{ma / 1000m:0.###} A");

    private static string Text(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}
