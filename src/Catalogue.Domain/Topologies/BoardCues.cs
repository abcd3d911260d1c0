using Catalogue.Domain.Components;
using Catalogue.Domain.Figures;
using Catalogue.Domain.Rails;

namespace Catalogue.Domain.Topologies;

/// <summary>The cues that the recorded parts of a board give.</summary>
/// <remarks>
/// <para>Each hangs on the class of a part with its position, ratings, count or rail; words of its role only tell parts of one class apart, never stand alone.</para>
/// <para>A cue that no part can show, such as a controller that senses valleys, never fires. One that says that something is absent fires only where the parts it would
/// stand beside are recorded. House rule: high voltage is from 400 V on for switches and rectifiers, from 200 V on for bulk capacitors.</para>
/// </remarks>
public static class BoardCues
{
    private const double HighVolts = 400;
    private const double BulkVolts = 200;
    private const double LowVolts = 150;

    private static readonly (Cue Cue, Func<Stage, bool> IsPresent)[] Rules =
    [
        (Cue.HfTransformer, stage => stage.HasTransformer),
        (Cue.OneHvPrimarySwitch, stage => stage.HvPrimary.Sum(Places) == 1),
        (Cue.RcdClamp, stage => stage.Any(IsDiode, "clamp", "snubber") && stage.Any(FunctionClass.Resistor, "clamp", "snubber") && stage.Any(FunctionClass.Capacitor, "clamp", "snubber")),
        (Cue.OptocouplerOrIsolatedLink, stage => stage.Any(FunctionClass.Optocoupler)),
        (Cue.OutputRectifierOneWinding, stage => stage.Secondary.Where(part => part.Component.CircuitPosition is CircuitPosition.FlybackSecondary).Sum(Places) == 1),
        (Cue.BulkCapHv, stage => stage.Bulk.Any()),
        (Cue.NoOutputInductor, stage => stage.HasTransformer && stage.Secondary.Any() && !stage.OutputInductors.Any()),
        (Cue.AuxWindingSupply, stage => stage.HasTransformer && stage.Any(IsDiode, "auxiliary", "aux ")),
        (Cue.ResonantFilmCap, stage => stage.Parts.Any(part => IsFilmOrCeramic(part) && Says(part, "resonan") && Has(part, 5e-9, 100e-9) && Volts(part) >= 630)),
        (Cue.OutputFilterInductor, stage => stage.HasTransformer && stage.OutputInductors.Any(part => !IsOnMains(part))),
        (Cue.TwoHvPrimarySwitchesHalfBridge, stage => stage.HasTransformer && stage.HvBridge.Sum(Places) == 2 && !stage.HasClampDiodes),
        (Cue.ClampSwitchHv, stage => stage.HvSwitches.Any(part => Says(part, "clamp")) && stage.Parts.Any(part => IsFilmOrCeramic(part) && Has(part, 10e-9, 1e-6))),
        (Cue.ClampCapacitor, stage => stage.Any(FunctionClass.Capacitor, "clamp")),
        (Cue.GanPrimarySwitch, stage => stage.HvPrimary.Concat(stage.HvBridge).Any(IsGan)),
        (Cue.HalfBridgeDriver, stage => stage.Any(IsChip, "half-bridge", "half bridge", "high-side", "gate driver")),
        (Cue.TwoOutputRectifiers, stage => stage.Secondary.Sum(Places) == 2),
        (Cue.TwoHvPrimarySwitchesDiagonal, stage => stage.HasTransformer && stage.HvBridge.Sum(Places) == 2 && stage.HasClampDiodes),
        (Cue.TwoClampDiodesHv, stage => stage.HasClampDiodes),
        (Cue.ResonantInductorOrLeakageSplitBobbin, stage => stage.Any(FunctionClass.Inductor, "resonan")),
        (Cue.SyncRectifierSecondary, stage => stage.Secondary.Any(IsSwitch)),
        (Cue.SyncRectifierCentreTap, stage => stage.Secondary.Any(part => IsSwitch(part) && part.Component.CircuitPosition is CircuitPosition.CentreTappedSecondary)),
        (Cue.PfcStagePresent, stage => stage.PfcInductors.Any() && stage.HvBoostDiodes.Any()),
        (Cue.PfcInductor, stage => stage.PfcInductors.Any() && stage.Bulk.Any()),
        (Cue.HvBoostDiode, stage => stage.HvBoostDiodes.Any()),
        (Cue.BridgeRectifier, stage => stage.HasMainsBridge),
        (Cue.OneHvBoostSwitch, stage => stage.HvSwitches.Where(part => part.Component.CircuitPosition is CircuitPosition.Boost).Sum(Places) == 1),
        (Cue.InrushNtcOrRelay, stage => stage.Any(FunctionClass.Thermistor, "inrush") || stage.Any(FunctionClass.Relay, "inrush")),
        (Cue.BulkCapNear450V, stage => stage.Bulk.Any(part => Volts(part) is >= 400 and <= 450)),
        (Cue.LowVoltageOnly, stage => stage.IsLowVoltageOnly),
        (Cue.HfHvHalfBridge, stage => stage.HvBridge.Where(part => Says(part, "fast", "high-frequency")).Sum(Places) == 2),
        (Cue.LineFrequencyHvHalfBridge, stage => stage.HvBridge.Where(part => Says(part, "slow", "line-frequency", "mains-frequency")).Sum(Places) == 2),
        (Cue.GanOrSicSwitches, stage => stage.HvSwitches.Any(part => IsGan(part) || Describes(part, "SiC", "silicon carbide"))),
        (Cue.NoBridgeRectifier, stage => stage.HvBridge.Any() && stage.Parts.Any(IsOnMains) && !stage.HasMainsBridge),
        (Cue.SinglePowerInductor, stage => stage.PowerInductors.Sum(Places) == 1),
        (Cue.TwoSwitchesOrSwitchPlusDiode, stage => stage.IsSwitchedPair(CircuitPosition.Buck) || stage.IsSwitchedPair(CircuitPosition.Boost)),
        (Cue.OutputLowerThanInput, stage => stage.At(CircuitPosition.Buck).Any(stage.HasLowerDcRail)),
        (Cue.InputCeramics, stage => stage.At(CircuitPosition.Buck).Any(stage.SharesRailWithCeramic)),
        (Cue.BootstrapCapacitor, stage => stage.Count(FunctionClass.Capacitor, "bootstrap") == 1),
        (Cue.FourSwitchesOneInductor, stage => stage.PowerInductors.Sum(Places) == 1 && stage.FourLikeLowVoltageSwitches),
        (Cue.OutputHigherThanInput, stage => stage.At(CircuitPosition.Boost).Any(stage.HasLowerDcRail)),
        (Cue.OutputCeramics, stage => stage.At(CircuitPosition.Boost).Any(stage.SharesRailWithCeramic)),
        (Cue.TwoBootstrapCapacitors, stage => stage.Count(FunctionClass.Capacitor, "bootstrap") == 2),
        (Cue.CurrentSenseShunt, stage => stage.Any(FunctionClass.Shunt)),
        (Cue.UsbPdController, stage => stage.Any(FunctionClass.ProtocolChip)),
        (Cue.SrController, stage => stage.Any(FunctionClass.Controller, "synchronous rectifier", "rectifier controller")),
        (Cue.LowVoltageMosfetNearTransformer, stage => stage.HasTransformer && stage.Secondary.Any(part => IsSwitch(part) && Volts(part) <= LowVolts)),
        (Cue.SchottkyOutputRectifier, stage => stage.Secondary.Any(part => IsDiode(part) && Describes(part, "Schottky"))),
        (Cue.CentreTapLowVoltagePrimary, stage => stage.HasTransformer && stage.LowVoltagePushPull.Any()),
        (Cue.TwoBanksLowVoltageSwitches, stage => stage.LowVoltagePushPull.Select(Pieces).ToList() switch { [var only] => only % 2 == 0, [var one, var other] => one == other, _ => false }),
        (Cue.HvRectifierSecondary, stage => stage.Secondary.Any(part => IsDiode(part) && Volts(part) >= HighVolts)),
        (Cue.HvDcBusCapacitor, stage => stage.Parts.Any(part => part.Is(FunctionClass.Capacitor) && Volts(part) >= BulkVolts && part.Rail?.Rail.Kind is RailKind.DcBus)),
        (Cue.BatteryTerminalInput, stage => stage.Parts.Any(part => part.Rail?.Rail.Kind is RailKind.Pack)),
        (Cue.FourHvBridgeSwitches, stage => stage.HvBridge.Sum(Places) == 4),
        (Cue.AcOutputFilterInductor, stage => stage.OutputInductors.Any(IsOnMains)),
        (Cue.AcOutputFilmCapacitor, stage => stage.Parts.Any(part => (part.Is(FunctionClass.FilmCapacitor) || part.Is(FunctionClass.SafetyCapacitor)) && IsOnMains(part) && Says(part, "output"))),
        (Cue.CurrentSensorAc, stage => stage.Parts.Any(part => IsOnMains(part) && Says(part, "current sensor", "current transformer"))),
        (Cue.OutputRelay, stage => stage.Any(FunctionClass.Relay, "output")),
        (Cue.FlyingCapacitors, stage => stage.Count(FunctionClass.CeramicCapacitor, "flying") >= 2),
        (Cue.NoPowerInductor, stage => stage.Parts.Any(IsChip) && !stage.PowerInductors.Any()),
        (Cue.FourOrMoreSwitchIc, stage => stage.Any(IsChip, "charge pump", "switched-capacitor", "switched capacitor")),
        (Cue.SinglePassDevice, stage => stage.Parts.Where(part => Says(part, "pass device", "pass transistor", "linear charger")).Sum(Places) == 1),
        (Cue.ChargeResistorSet, stage => stage.Any(FunctionClass.Resistor, "charge current")),
        (Cue.FullBridgeEachSide, stage => stage.HasTransformer && stage.HvBridge.Sum(Places) == 4 && stage.At(CircuitPosition.Bridge).Where(part => IsSwitch(part) && Volts(part) <= LowVolts).Sum(Places) == 4),
        (Cue.SeriesInductor, stage => stage.HasTransformer && stage.Any(FunctionClass.Inductor, "series")),
    ];

    /// <summary>The cues of each board that has parts, in the order of <see cref="Cue"/>.</summary>
    public static IReadOnlyDictionary<Teardowns.BoardId, IReadOnlyList<Cue>> ByBoard(RevisionFacts facts)
    {
        ArgumentNullException.ThrowIfNull(facts);
        return facts.Arrange().Parts
            .GroupBy(part => part.Component.BoardId)
            .ToDictionary(board => board.Key, board => Of(new Stage([.. board])));
    }

    private static IReadOnlyList<Cue> Of(Stage stage) => [.. Rules.Where(rule => rule.IsPresent(stage)).Select(rule => rule.Cue).Order()];

    private static bool IsSwitch(PartFacts part) => part.Is(FunctionClass.Switch);

    private static bool IsDiode(PartFacts part) => part.Is(FunctionClass.Rectifier) || part.Is(FunctionClass.SignalDiode);

    private static bool IsChip(PartFacts part) => part.Is(FunctionClass.Controller) || part.Is(FunctionClass.Regulator);

    private static bool IsFilmOrCeramic(PartFacts part) => part.Is(FunctionClass.FilmCapacitor) || part.Is(FunctionClass.CeramicCapacitor);

    private static bool IsOnMains(PartFacts part) => part.Rail?.IsMains == true;

    private static bool IsGan(PartFacts part) => Describes(part, "GaN", "gallium nitride");

    private static bool Has(PartFacts part, double low, double high) => part.Best(RatingKind.Capacitance) is { } farads && farads.Interval.Nominal >= low && farads.Interval.Nominal <= high;

    private static double? Volts(PartFacts part) => part.Best(RatingKind.RatedVoltage)?.Interval.Nominal;

    private static bool Says(PartFacts part, params ReadOnlySpan<string> words) => Holds(part.Component.Role, words);

    private static bool Describes(PartFacts part, params ReadOnlySpan<string> words) => Holds(part.Component.Role, words) || Holds(part.Component.Description, words);

    private static bool Holds(string? text, ReadOnlySpan<string> words)
    {
        foreach (var word in words)
            if (text?.Contains(word, StringComparison.OrdinalIgnoreCase) == true)
                return true;
        return false;
    }

    // How many of it there are.
    private static int Pieces(PartFacts part) => part.Component.Quantity ?? (part.Component.ParallelCount * part.Component.SeriesCount);

    // In how many places of the circuit it stands: what shares one current or one voltage is one place.
    private static int Places(PartFacts part) => Math.Max(1, Pieces(part) / (part.Component.ParallelCount * part.Component.SeriesCount));

    private sealed class Stage(IReadOnlyList<PartFacts> parts)
    {
        public IReadOnlyList<PartFacts> Parts => parts;

        public bool HasTransformer { get; } = parts.Any(part => part.Is(FunctionClass.Transformer) && !Says(part, "current", "line-frequency", "mains transformer"));

        public IEnumerable<PartFacts> HvSwitches => parts.Where(part => IsSwitch(part) && Volts(part) >= HighVolts);

        public IEnumerable<PartFacts> HvPrimary => HvSwitches.Where(part => part.Component.CircuitPosition is CircuitPosition.FlybackPrimary || (part.Component.CircuitPosition is null && Says(part, "primary switch")));

        public IEnumerable<PartFacts> HvBridge => HvSwitches.Where(part => part.Component.CircuitPosition is CircuitPosition.Bridge);

        public IEnumerable<PartFacts> LowVoltagePushPull => At(CircuitPosition.PushPullPrimary).Where(part => IsSwitch(part) && Volts(part) is >= 40 and <= LowVolts);

        public IEnumerable<PartFacts> Secondary => parts.Where(part =>
            (IsSwitch(part) || part.Is(FunctionClass.Rectifier)) && part.Component.CircuitPosition is CircuitPosition.FlybackSecondary or CircuitPosition.CentreTappedSecondary or CircuitPosition.BridgeSecondary);

        public IEnumerable<PartFacts> Bulk => parts.Where(part => part.Is(FunctionClass.AluminiumCapacitor) && Volts(part) >= BulkVolts);

        public IEnumerable<PartFacts> OutputInductors => parts.Where(part => part.Is(FunctionClass.Inductor) && Says(part, "output"));

        public IEnumerable<PartFacts> PfcInductors => parts.Where(part => part.Is(FunctionClass.Inductor) && (Says(part, "PFC", "power-factor", "power factor") || part.Component.CircuitPosition is CircuitPosition.Boost));

        public IEnumerable<PartFacts> PowerInductors => parts.Where(part => part.Is(FunctionClass.Inductor) && !IsOnMains(part) && !Says(part, "common-mode", "common mode", "filter", "bead", "EMI"));

        public IEnumerable<PartFacts> HvBoostDiodes => At(CircuitPosition.Boost).Where(part => part.Is(FunctionClass.Rectifier) && Volts(part) >= HighVolts);

        public bool HasClampDiodes => parts.Where(part => IsDiode(part) && Says(part, "clamp") && Volts(part) >= HighVolts).Sum(Places) == 2;

        public bool HasMainsBridge => parts.Any(part => part.Is(FunctionClass.Rectifier) && part.Component.CircuitPosition is CircuitPosition.MainsBridge);

        public bool IsLowVoltageOnly
        {
            get
            {
                var volts = parts.Select(part => part.Rail).OfType<RailFacts>().Distinct().Select(rail => rail.PeakVolts).ToList();
                return volts.Count > 0 && volts.TrueForAll(peak => peak <= DischargeTime.TouchLimitVolts) && !parts.Any(part => Volts(part) >= BulkVolts);
            }
        }

        public bool FourLikeLowVoltageSwitches => parts
            .Where(part => IsSwitch(part) && Volts(part) <= LowVolts && part.Component.CircuitPosition is null or CircuitPosition.Buck or CircuitPosition.Boost or CircuitPosition.Bridge)
            .GroupBy(part => part.Component.PartNumber ?? part.Component.MarkingAsRead ?? part.Component.Name)
            .Any(alike => alike.Sum(Places) == 4);

        public IEnumerable<PartFacts> At(CircuitPosition position) => parts.Where(part => part.Component.CircuitPosition == position);

        public bool IsSwitchedPair(CircuitPosition position) => At(position).Any(IsSwitch) && At(position).Sum(Places) == 2;

        public bool Any(FunctionClass functionClass, params string[] words) => Any(part => part.Is(functionClass), words);

        public bool Any(Func<PartFacts, bool> isKind, params string[] words) => parts.Any(part => isKind(part) && (words.Length == 0 || Says(part, words)));

        public int Count(FunctionClass functionClass, params string[] words) => parts.Where(part => part.Is(functionClass) && Says(part, words)).Sum(Pieces);

        // A buck's rail is its input, a boost's its output: the other end is a dc rail of the board that lies lower.
        public bool HasLowerDcRail(PartFacts part) =>
            part.Rail is { IsMains: false } own && own.Highest is { } high
            && parts.Any(other => other.Rail is { IsMains: false } rail && rail != own && rail.Highest is { } low && low.Interval.High < high.Interval.Low);

        public bool SharesRailWithCeramic(PartFacts part) => part.Rail is { } rail && parts.Any(other => other.Is(FunctionClass.CeramicCapacitor) && other.Rail == rail);
    }
}
