using System.Collections.Frozen;
using Catalogue.Domain.Components;
using Catalogue.Domain.Quantities;
using Catalogue.Domain.Text;

namespace Catalogue.Domain.Stress;

/// <summary>The voltage that a switch or rectifier must block at its place.</summary>
/// <remarks>
/// Source: the ideal circuits of the textbooks. Spikes and ringing are inputs of their own, in volt; where they exist but are not known, the stress is the
/// static one and says so.
/// </remarks>
/// <param name="Position">The place.</param>
/// <param name="Volts">The stress, in volt peak.</param>
/// <param name="LeavesOvershootOut">True when spike or ringing exists at this place and was not given.</param>
public sealed record BlockingVoltage(CircuitPosition Position, Interval Volts, bool LeavesOvershootOut)
{
    private static readonly FrozenDictionary<CircuitPosition, Rule> Rules = new Dictionary<CircuitPosition, Rule>
    {
        [CircuitPosition.InLine] = new("V_in + V_spike", true, given => given[StressInput.InputVoltage], StressInput.InputVoltage),
        [CircuitPosition.AcrossRail] = new("V_in + V_ripple", true, given => given[StressInput.InputVoltage], StressInput.InputVoltage),
        [CircuitPosition.FlybackPrimary] = new(
            "V_bus + V_reflected + V_spike, V_reflected = n · (V_out + V_f)",
            true,
            given => given[StressInput.BusVoltage] + given[StressInput.ReflectedVoltage],
            StressInput.BusVoltage,
            StressInput.ReflectedVoltage),
        [CircuitPosition.Bridge] = new("V_bus + V_ringing", true, given => given[StressInput.BusVoltage], StressInput.BusVoltage),
        [CircuitPosition.Boost] = new("V_out + V_ripple", true, given => given[StressInput.OutputVoltage], StressInput.OutputVoltage),
        [CircuitPosition.Buck] = new("V_in + V_ringing", true, given => given[StressInput.InputVoltage], StressInput.InputVoltage),
        [CircuitPosition.PushPullPrimary] = new("2 · V_in + V_spike", true, given => 2 * given[StressInput.InputVoltage], StressInput.InputVoltage),
        [CircuitPosition.FlybackSecondary] = new(
            "V_out + V_bus / n + V_spike",
            true,
            given => given[StressInput.OutputVoltage] + (given[StressInput.BusVoltage] / given.Falling(StressInput.TurnsRatio)),
            StressInput.OutputVoltage,
            StressInput.BusVoltage,
            StressInput.TurnsRatio),
        [CircuitPosition.CentreTappedSecondary] = new("2 · V_out + V_ringing", true, given => 2 * given[StressInput.OutputVoltage], StressInput.OutputVoltage),
        [CircuitPosition.BridgeSecondary] = new("V_out + V_ringing", true, given => given[StressInput.OutputVoltage], StressInput.OutputVoltage),
        [CircuitPosition.MainsBridge] = new("√2 · V_ac", false, given => Math.Sqrt(2) * given[StressInput.MainsVoltage], StressInput.MainsVoltage),
        [CircuitPosition.MainsHalfWave] = new("2 · √2 · V_ac", false, given => 2 * Math.Sqrt(2) * given[StressInput.MainsVoltage], StressInput.MainsVoltage),
    }.ToFrozenDictionary();

    /// <summary>The formula of a position, in symbols.</summary>
    public static string Formula(CircuitPosition position) => Rules[position].Formula;

    /// <summary>What a position needs, the overshoot not counted.</summary>
    public static IReadOnlyList<StressInput> Needs(CircuitPosition position) => Rules[position].Needs;

    /// <summary>The peak of a mains voltage, in volt: √2 times its rms value.</summary>
    public static Reckoning<Interval> MainsPeak(Interval? mainsVoltage) => new InputCheck()
        .Positive("mains_voltage", mainsVoltage, Unit.Volt)
        .Reckon((up, _) => Math.Sqrt(2) * up(mainsVoltage!.Value));

    /// <summary>The output voltage as it appears across the primary, in volt: <c>n · (V_out + V_f)</c>.</summary>
    public static Reckoning<Interval> Reflected(Interval? turnsRatio, Interval? outputVoltage, Interval? forwardVoltage) => new InputCheck()
        .Positive("turns_ratio", turnsRatio, Unit.Ratio)
        .Positive("output_voltage", outputVoltage, Unit.Volt)
        .NotNegative("forward_voltage", forwardVoltage, Unit.Volt)
        .Reckon((up, _) => up(turnsRatio!.Value) * (up(outputVoltage!.Value) + up(forwardVoltage!.Value)));

    /// <summary>Computes the stress, or names what is missing.</summary>
    /// <param name="position">The place.</param>
    /// <param name="given">What is known; more than is needed does no harm.</param>
    public static Reckoning<BlockingVoltage> Of(CircuitPosition position, IReadOnlyDictionary<StressInput, Interval> given)
    {
        ArgumentNullException.ThrowIfNull(given);
        var rule = Rules[position];
        if (rule.Needs.Contains(StressInput.ReflectedVoltage) && !given.ContainsKey(StressInput.ReflectedVoltage))
            return Reflected(Known(StressInput.TurnsRatio), Known(StressInput.OutputVoltage), Known(StressInput.ForwardVoltage))
                .Then(reflected => Of(position, new Dictionary<StressInput, Interval>(given) { [StressInput.ReflectedVoltage] = reflected }));

        var check = new InputCheck();
        foreach (var need in rule.Needs)
            check.Positive(SnakeCase.Code(need), Known(need), need is StressInput.TurnsRatio ? Unit.Ratio : Unit.Volt);
        var overshoot = rule.HasOvershoot ? Known(StressInput.Overshoot) : null;
        if (overshoot is not null)
            check.NotNegative(SnakeCase.Code(StressInput.Overshoot), overshoot, Unit.Volt);
        return check.Reckon(() => new BlockingVoltage(
            position,
            Spread.Of((up, down) => rule.Volts(new Ends(given, up, down)) + (overshoot is { } more ? up(more) : 0)),
            rule.HasOvershoot && overshoot is null));

        Interval? Known(StressInput input) => given.TryGetValue(input, out var value) ? value : null;
    }

    private readonly record struct Ends(IReadOnlyDictionary<StressInput, Interval> Given, Spread.End Up, Spread.End Down)
    {
        public double this[StressInput input] => Up(Given[input]);

        public double Falling(StressInput input) => Down(Given[input]);
    }

    private sealed record Rule(string Formula, bool HasOvershoot, Func<Ends, double> Volts, params IReadOnlyList<StressInput> Needs);
}
