using Catalogue.Domain.Components;
using Catalogue.Domain.Figures;
using Catalogue.Domain.Rails;
using Catalogue.Domain.Teardowns;
using Catalogue.Domain.Tests.Figures;
using Catalogue.Domain.Topologies;
using CsCheck;

namespace Catalogue.Domain.Tests.Topologies;

public sealed class BoardTopologiesTests
{
    private static readonly Board Board = new() { RevisionId = RevisionId.New(), Id = BoardId.New(), Name = "main board" };

    private readonly List<BoardComponent> _parts = [];
    private readonly List<Rating> _ratings = [];
    private readonly List<Rail> _rails = [];
    private readonly List<RailQuantity> _known = [];

    [Fact]
    public void Suggest_OneHvSwitchAtATransformer_IsAFlybackWithItsReasons()
    {
        var bus = Rail(RailKind.DcBus, 373);
        Part(FunctionClass.Transformer, "flyback transformer");
        Part(FunctionClass.Switch, "primary switch", volts: 650, position: CircuitPosition.FlybackPrimary, rail: bus);
        Part(FunctionClass.Rectifier, "output rectifier", volts: 100, position: CircuitPosition.FlybackSecondary);
        Part(FunctionClass.AluminiumCapacitor, "bulk capacitor", volts: 400, rail: bus);
        Part(FunctionClass.Optocoupler, "feedback");
        var flyback = Assert.Single(Suggest());
        Assert.Equal(Topology.Flyback, flyback.Topology);
        Assert.Equal("There is a high-frequency transformer with two or more windings.", flyback.Reasons()[0]);
        Assert.Contains("Would strengthen it, not recorded: fast diode, resistor and capacitor across the primary.", flyback.Reasons());
    }

    [Fact]
    public void Suggest_TwoBanksAndABridge_AreThePushPullAndTheInverter()
    {
        var (pack, bus, output) = (Rail(RailKind.Pack, 29.2), Rail(RailKind.DcBus, 400), Rail(RailKind.Mains, 240));
        Part(FunctionClass.Transformer, "push-pull transformer");
        Part(FunctionClass.Switch, "push-pull switches", volts: 100, position: CircuitPosition.PushPullPrimary, rail: pack, quantity: 4, parallel: 2);
        Part(FunctionClass.Rectifier, "bus rectifier", volts: 650, position: CircuitPosition.BridgeSecondary, rail: bus, quantity: 4);
        Part(FunctionClass.AluminiumCapacitor, "bus capacitors", volts: 450, rail: bus);
        Part(FunctionClass.Switch, "bridge switches", volts: 650, position: CircuitPosition.Bridge, rail: bus, quantity: 4);
        Part(FunctionClass.Inductor, "output inductor", rail: output);
        Assert.Equal([Topology.PushPullIsolatedDcDc, Topology.HBridgeInverter], Suggest().Select(score => score.Topology));
    }

    [Fact]
    public void Suggest_FourSwitchesAroundOneInductor_IsTheFourSwitchBuckBoost()
    {
        Part(FunctionClass.Switch, "buck-boost switches", volts: 40, quantity: 4);
        Part(FunctionClass.Inductor, "buck-boost inductor");
        Part(FunctionClass.Shunt, "current shunt");
        Part(FunctionClass.ProtocolChip, "port controller");
        Assert.Contains(Topology.BuckBoostFourSwitch, Suggest().Select(score => score.Topology));
    }

    [Fact]
    public void Suggest_SwitchAndDiodeBetweenTwoRails_IsABuck()
    {
        var (input, output) = (Rail(RailKind.DcBus, 24), Rail(RailKind.LowVoltage, 5));
        Part(FunctionClass.Switch, "high side", volts: 60, position: CircuitPosition.Buck, rail: input);
        Part(FunctionClass.Rectifier, "freewheeling", volts: 60, position: CircuitPosition.Buck, rail: input);
        Part(FunctionClass.Inductor, "power inductor", rail: output);
        Assert.Equal([Topology.Buck], Suggest().Select(score => score.Topology));
    }

    [Theory]
    [InlineData("flyback")]
    [InlineData("Flyback")]
    public void Suggest_TaggedAlready_IsNotSuggestedAgain(string tag)
    {
        Part(FunctionClass.Transformer, "flyback transformer");
        Part(FunctionClass.Switch, "primary switch", volts: 650, position: CircuitPosition.FlybackPrimary);
        Part(FunctionClass.AluminiumCapacitor, "bulk capacitor", volts: 400);
        Assert.NotEmpty(Suggest());
        Assert.Empty(Suggest(tag));
    }

    [Theory]
    [InlineData("four-switch buck-boost", true)]
    [InlineData("buck_boost_four_switch", true)]
    [InlineData("Four Switch Buck Boost", true)]
    [InlineData("buck", false)]
    public void IsTagged_WordOrCode_CountsHoweverItIsWritten(string tag, bool isTagged) => Assert.Equal(isTagged, BoardTopologies.IsTagged(Topology.BuckBoostFourSwitch, [tag]));

    [Fact]
    public void Suggest_PlacesLeftEmpty_DoNotCount()
    {
        Part(FunctionClass.Transformer, "flyback transformer");
        Part(FunctionClass.Switch, "primary switch", volts: 650, position: CircuitPosition.FlybackPrimary);
        Part(FunctionClass.AluminiumCapacitor, "bulk capacitor", volts: 400);
        foreach (var part in _parts)
            part.IsFitted = false;
        Assert.Empty(Suggest());
    }

    [Fact]
    public void Suggest_WordsAlone_SuggestNothing()
    {
        foreach (var role in new[] { "flyback transformer", "primary switch", "PFC inductor", "flying capacitors", "charge pump", "resonant capacitor" })
            Part(FunctionClass.OtherPart, role);
        Assert.Empty(Suggest());
    }

    [Fact]
    public void Suggest_AnyParts_NeverThrowsAndStaysAboveItsLine() =>
        Gen.Select(Gen.Int[0, Enum.GetValues<FunctionClass>().Length - 1], Gen.Int[-1, Enum.GetValues<CircuitPosition>().Length - 1], Gen.Double[0, 900], Gen.Int[0, 5], Gen.Int[1, 3])
            .Array[0, 25]
            .Sample(drawn =>
            {
                var test = new BoardTopologiesTests();
                var rails = new RailId?[] { null, test.Rail(RailKind.DcBus, 400), test.Rail(RailKind.Mains, 240), test.Rail(RailKind.LowVoltage, 12) };
                foreach (var (functionClass, position, volts, quantity, parallel) in drawn)
                    test.Part((FunctionClass)functionClass, "output", volts > 0 ? volts : null, position < 0 ? null : (CircuitPosition)position, rails[quantity % 4], quantity, parallel);
                Assert.All(test.Suggest(), score => Assert.InRange(score.Score, TopologyScore.SuggestedFrom, 1));
            }, iter: 500, threads: 1);

    private IReadOnlyList<TopologyScore> Suggest(params string[] tags)
    {
        var board = new Board { RevisionId = Board.RevisionId, Id = Board.Id, Name = Board.Name, Topology = tags };
        return BoardTopologies.Suggest(new RevisionFacts(_parts, _ratings, _rails, _known), [board]).GetValueOrDefault(board.Id) ?? [];
    }

    private RailId Rail(RailKind kind, double volts)
    {
        var (rail, known) = Bench.Rail(max: volts, kind: kind);
        _rails.Add(rail);
        _known.AddRange(known);
        return rail.Id;
    }

    private void Part(FunctionClass functionClass, string role, double? volts = null, CircuitPosition? position = null, RailId? rail = null, int? quantity = null, int parallel = 1)
    {
        var part = new BoardComponent
        {
            RevisionId = Board.RevisionId,
            Id = ComponentId.New(),
            BoardId = Board.Id,
            FunctionClass = functionClass,
            Role = role,
            CircuitPosition = position,
            RailId = rail,
            Quantity = quantity,
            ParallelCount = parallel,
        };
        _parts.Add(part);
        if (volts is { } rated)
            _ratings.Add(new Rating { RevisionId = part.RevisionId, Id = RatingId.New(), ComponentId = part.Id, Kind = RatingKind.RatedVoltage, Low = rated, Nominal = rated, High = rated });
    }
}
