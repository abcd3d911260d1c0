using Catalogue.Domain.Quantities;

namespace Catalogue.Domain.Topologies;

/// <summary>What the voltages of an ideal converter have to do with each other; for seeing whether a tag is plausible.</summary>
/// <remarks>Source: textbook circuits without losses, continuous current. Voltages in volt, ratios primary over secondary turns unless said otherwise.</remarks>
public static class ConverterRelations
{
    /// <summary>Duty of a buck converter: <c>V_out / V_in</c>; refused where the output is not below the input.</summary>
    public static Reckoning<Interval> BuckDuty(Interval? inputVoltage, Interval? outputVoltage) => Voltages(inputVoltage, outputVoltage)
        .Require(() => outputVoltage!.Value.High < inputVoltage!.Value.Low, "output_voltage", "a buck converter's output lies below its input")
        .Reckon((up, down) => up(outputVoltage!.Value) / down(inputVoltage!.Value));

    /// <summary>Duty of a boost converter: <c>1 − V_in / V_out</c>; refused where the output is not above the input.</summary>
    public static Reckoning<Interval> BoostDuty(Interval? inputVoltage, Interval? outputVoltage) => Voltages(inputVoltage, outputVoltage)
        .Require(() => outputVoltage!.Value.Low > inputVoltage!.Value.High, "output_voltage", "a boost converter's output lies above its input")
        .Reckon((up, down) => 1 - (down(inputVoltage!.Value) / up(outputVoltage!.Value)));

    /// <summary>Output of a flyback converter: <c>V_bus · D / (1 − D) / n</c>.</summary>
    public static Reckoning<Interval> FlybackOutput(Interval? busVoltage, Interval? duty, Interval? turnsRatio) => new InputCheck()
        .Positive("bus_voltage", busVoltage, Unit.Volt)
        .Share("duty", duty, 0.99)
        .Positive("turns_ratio", turnsRatio, Unit.Ratio)
        .Reckon((up, down) => up(busVoltage!.Value) * up(duty!.Value) / (1 - up(duty.Value)) / down(turnsRatio!.Value));

    /// <summary>Output of an LLC half bridge near resonance with a centre-tapped secondary: <c>V_bus / (2 n)</c>.</summary>
    public static Reckoning<Interval> HalfBridgeLlcOutput(Interval? busVoltage, Interval? turnsRatio) => new InputCheck()
        .Positive("bus_voltage", busVoltage, Unit.Volt)
        .Positive("turns_ratio", turnsRatio, Unit.Ratio)
        .Reckon((up, down) => up(busVoltage!.Value) / (2 * down(turnsRatio!.Value)));

    /// <summary>Resonance, in hertz: <c>1 / (2π · √(L · C))</c>.</summary>
    /// <param name="inductance">In henry.</param>
    /// <param name="capacitance">In farad.</param>
    public static Reckoning<Interval> Resonance(Interval? inductance, Interval? capacitance) => new InputCheck()
        .Positive("inductance", inductance, Unit.Henry)
        .Positive("capacitance", capacitance, Unit.Farad)
        .Reckon((_, down) => 1 / (2 * Math.PI * Math.Sqrt(down(inductance!.Value) * down(capacitance!.Value))));

    /// <summary>Bus behind a push-pull stage and its rectifier: <c>V_batt · n</c>.</summary>
    /// <param name="batteryVoltage">In volt.</param>
    /// <param name="stepUp">Secondary over primary turns.</param>
    public static Reckoning<Interval> PushPullBus(Interval? batteryVoltage, Interval? stepUp) => new InputCheck()
        .Positive("battery_voltage", batteryVoltage, Unit.Volt)
        .Positive("step_up", stepUp, Unit.Ratio)
        .Reckon((up, _) => up(batteryVoltage!.Value) * up(stepUp!.Value));

    /// <summary>Output of a full bridge, in volt rms: <c>V_bus · m / √2</c>.</summary>
    /// <param name="busVoltage">In volt.</param>
    /// <param name="modulation">m, above 0 to 1.</param>
    public static Reckoning<Interval> FullBridgeOutput(Interval? busVoltage, Interval? modulation) => new InputCheck()
        .Positive("bus_voltage", busVoltage, Unit.Volt)
        .Share("modulation", modulation)
        .Reckon((up, _) => up(busVoltage!.Value) * up(modulation!.Value) / Math.Sqrt(2));

    private static InputCheck Voltages(Interval? input, Interval? output) => new InputCheck()
        .Positive("input_voltage", input, Unit.Volt)
        .Positive("output_voltage", output, Unit.Volt);
}
