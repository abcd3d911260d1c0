using System.Collections.Frozen;

namespace Catalogue.Domain.Topologies;

/// <summary>Which cues speak for and against a topology.</summary>
/// <remarks>The circuits are of the textbooks; which cues count, and their weights, is a house rule, to be tuned on reviewed records.</remarks>
/// <param name="Required">Without any one of them the score is zero; weight 3 each.</param>
/// <param name="Support">Weight 1 each.</param>
/// <param name="Against">Weight −2 each.</param>
public sealed record TopologyCues(IReadOnlyList<Cue> Required, IReadOnlyList<Cue> Support, IReadOnlyList<Cue> Against)
{
    /// <summary>Weight of a required cue.</summary>
    public const int RequiredWeight = 3;

    /// <summary>Weight of a supporting cue.</summary>
    public const int SupportWeight = 1;

    /// <summary>Weight of a cue against.</summary>
    public const int AgainstWeight = -2;

    private static readonly FrozenDictionary<Topology, TopologyCues> All = new Dictionary<Topology, TopologyCues>
    {
        [Topology.Flyback] = new(
            [Cue.HfTransformer, Cue.OneHvPrimarySwitch],
            [Cue.RcdClamp, Cue.OptocouplerOrIsolatedLink, Cue.OutputRectifierOneWinding, Cue.BulkCapHv, Cue.NoOutputInductor, Cue.AuxWindingSupply],
            [Cue.ResonantFilmCap, Cue.OutputFilterInductor, Cue.TwoHvPrimarySwitchesHalfBridge]),
        [Topology.QuasiResonantFlyback] = new(
            [Cue.HfTransformer, Cue.OneHvPrimarySwitch, Cue.ValleySenseController],
            [Cue.OptocouplerOrIsolatedLink, Cue.SyncRectifierSecondary, Cue.BulkCapHv, Cue.NoOutputInductor, Cue.GanPrimarySwitch],
            [Cue.ResonantFilmCap, Cue.ClampSwitchHv]),
        [Topology.ActiveClampFlyback] = new(
            [Cue.HfTransformer, Cue.OneHvPrimarySwitch, Cue.ClampSwitchHv],
            [Cue.ClampCapacitor, Cue.HalfBridgeDriver, Cue.SyncRectifierSecondary, Cue.GanPrimarySwitch, Cue.BulkCapHv],
            [Cue.OutputFilterInductor]),
        [Topology.ForwardSingleSwitch] = new(
            [Cue.HfTransformer, Cue.OneHvPrimarySwitch, Cue.OutputFilterInductor],
            [Cue.TwoOutputRectifiers, Cue.ResetWindingOrClamp, Cue.BulkCapHv],
            [Cue.ResonantFilmCap]),
        [Topology.ForwardTwoSwitch] = new(
            [Cue.HfTransformer, Cue.TwoHvPrimarySwitchesDiagonal, Cue.OutputFilterInductor],
            [Cue.TwoClampDiodesHv, Cue.BulkCapHv, Cue.TwoOutputRectifiers],
            [Cue.ResonantFilmCap]),
        [Topology.HalfBridgeLlc] = new(
            [Cue.HfTransformer, Cue.TwoHvPrimarySwitchesHalfBridge, Cue.ResonantFilmCap],
            [Cue.ResonantInductorOrLeakageSplitBobbin, Cue.HalfBridgeDriver, Cue.SyncRectifierCentreTap, Cue.NoOutputInductor, Cue.PfcStagePresent],
            [Cue.OutputFilterInductor]),
        [Topology.PfcBoost] = new(
            [Cue.PfcInductor, Cue.HvBoostDiode, Cue.BulkCapHv],
            [Cue.BridgeRectifier, Cue.OneHvBoostSwitch, Cue.InrushNtcOrRelay, Cue.BulkCapNear450V],
            [Cue.LowVoltageOnly]),
        [Topology.PfcBridgelessTotemPole] = new(
            [Cue.PfcInductor, Cue.HfHvHalfBridge, Cue.LineFrequencyHvHalfBridge],
            [Cue.GanOrSicSwitches, Cue.BulkCapHv, Cue.NoBridgeRectifier],
            [Cue.BridgeRectifier]),
        [Topology.Buck] = new(
            [Cue.SinglePowerInductor, Cue.TwoSwitchesOrSwitchPlusDiode, Cue.OutputLowerThanInput],
            [Cue.InputCeramics, Cue.BootstrapCapacitor],
            [Cue.HfTransformer, Cue.FourSwitchesOneInductor]),
        [Topology.Boost] = new(
            [Cue.SinglePowerInductor, Cue.TwoSwitchesOrSwitchPlusDiode, Cue.OutputHigherThanInput],
            [Cue.OutputCeramics],
            [Cue.HfTransformer, Cue.FourSwitchesOneInductor, Cue.PfcInductor]),
        [Topology.BuckBoostFourSwitch] = new(
            [Cue.SinglePowerInductor, Cue.FourSwitchesOneInductor],
            [Cue.TwoBootstrapCapacitors, Cue.CurrentSenseShunt, Cue.UsbPdController],
            [Cue.HfTransformer]),
        [Topology.SynchronousRectification] = new(
            [Cue.SyncRectifierSecondary],
            [Cue.SrController, Cue.LowVoltageMosfetNearTransformer],
            [Cue.SchottkyOutputRectifier]),
        [Topology.PushPullIsolatedDcDc] = new(
            [Cue.HfTransformer, Cue.CentreTapLowVoltagePrimary, Cue.TwoBanksLowVoltageSwitches],
            [Cue.HvRectifierSecondary, Cue.HvDcBusCapacitor, Cue.BatteryTerminalInput],
            [Cue.HalfBridgeDriverHvOnly]),
        [Topology.HBridgeInverter] = new(
            [Cue.FourHvBridgeSwitches, Cue.HvDcBusCapacitor, Cue.AcOutputFilterInductor],
            [Cue.AcOutputFilmCapacitor, Cue.HalfBridgeDriver, Cue.CurrentSensorAc, Cue.OutputRelay],
            []),
        [Topology.ChargePump] = new(
            [Cue.FlyingCapacitors, Cue.NoPowerInductor, Cue.FourOrMoreSwitchIc],
            [Cue.SmallCeramicArray, Cue.FixedRatioOutput],
            [Cue.SinglePowerInductor, Cue.HfTransformer]),
        [Topology.LinearCharger] = new(
            [Cue.NoPowerInductor, Cue.SinglePassDevice, Cue.ChargeResistorSet],
            [Cue.SmallIcNearCell, Cue.ThermalPad],
            [Cue.SinglePowerInductor, Cue.FlyingCapacitors]),
        [Topology.BidirectionalDualActiveBridge] = new(
            [Cue.HfTransformer, Cue.FullBridgeEachSide],
            [Cue.SeriesInductor, Cue.BatteryTerminalInput, Cue.HvDcBusCapacitor],
            [Cue.HvRectifierSecondary]),
    }.ToFrozenDictionary();

    /// <summary>The cues of a topology.</summary>
    public static TopologyCues Of(Topology topology) => All[topology];
}
