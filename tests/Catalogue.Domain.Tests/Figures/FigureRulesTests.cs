using Catalogue.Domain.Components;
using Catalogue.Domain.Figures;
using Catalogue.Domain.Quantities;
using Catalogue.Domain.Rails;
using Catalogue.Domain.Teardowns;
using CsCheck;

namespace Catalogue.Domain.Tests.Figures;

/// <summary>What holds for every rule, whatever is recorded.</summary>
public sealed class FigureRulesTests
{
    private static readonly FunctionClass[] Classes =
        [FunctionClass.BladeFuse, FunctionClass.Switch, FunctionClass.BipolarTransistor, FunctionClass.Rectifier, FunctionClass.AluminiumCapacitor, FunctionClass.SafetyCapacitor, FunctionClass.Connector, FunctionClass.Cell];

    private static readonly CircuitPosition?[] Positions = [null, .. Enum.GetValues<CircuitPosition>()];

    private static readonly double[] OddValues = [0, -1, -1e308, double.Epsilon, 1e-300, 1e300, double.MaxValue];

    // What makes more of a stress, never less of it.
    private static readonly RatingKind[] Stresses =
        [RatingKind.PeakVoltage, RatingKind.RippleVoltage, RatingKind.SpikeVoltage, RatingKind.RmsCurrent, RatingKind.MeanCurrent, RatingKind.AmbientTemperature, RatingKind.PartTemperature, RatingKind.TemperatureSlope, RatingKind.OutputVoltage, RatingKind.ForwardVoltage];

    private static readonly Gen<RevisionFacts> GenFacts = Gen.Select(
        Gen.Int[0, Classes.Length - 1], Gen.Int[0, Positions.Length - 1], Gen.Select(Gen.Int[1, 4], Gen.Int[1, 3]), Gen.Bool,
        Gen.Double[0, 1].Array[3 * Enum.GetValues<RatingKind>().Length], Gen.Double[0, 1].Array[3 * Enum.GetValues<RailQuantityKind>().Length], Gen.Bool,
        (functionClass, position, count, mains, ratings, quantities, isComplete) =>
        {
            var rail = Bench.Rail(mains: mains);
            foreach (var kind in Enum.GetValues<RailQuantityKind>())
                // With a line voltage a bus has a valley, without one a ripple.
                if (kind is RailQuantityKind.LineVoltage ? quantities[3 * (int)kind] > 0.5 : isComplete || quantities[3 * (int)kind] > 0.2)
                    rail.Known.Add(Bench.Quantity(rail.Rail, kind, Spread(kind.Unit(), kind is RailQuantityKind.MaxVoltage ? 1.5 : 1, quantities, (int)kind)));
            var own = Enum.GetValues<RatingKind>()
                .Where(kind => kind is not (RatingKind.PeakVoltage or RatingKind.RmsCurrent or RatingKind.MeanCurrent) || ratings[3 * (int)kind] > 0.5)
                .Where(kind => isComplete || ratings[3 * (int)kind] > 0.2)
                .Select(kind => Bench.Rating(kind, kind is RatingKind.PartTemperature ? Evidence.Measured : Evidence.ReadOnPart, kind is RatingKind.TemperatureFactor ? Interval.Create(1.2, 1.5, 1.9) : kind is RatingKind.TemperatureSlope ? Interval.Create(0.001, 0.002, 0.003) : Spread(kind.Unit(), 1, ratings, (int)kind)));
            return Bench.Part(Classes[functionClass], rail, own.ToList(), Positions[position], count.Item1, count.Item2) with { CellChemistry = "lfp" };
        });

    [Fact]
    public void Codes_AreOnesOwnAndTheirRulesAreFoundByThem()
    {
        Assert.Equal(FigureRules.All.Count, FigureRules.All.Select(rule => rule.Code).Distinct().Count());
        Assert.All(FigureRules.All, rule => Assert.Same(rule, FigureRules.Find(rule.Code)));
    }

    [Fact]
    public void Generator_ReachesEveryRule()
    {
        var seen = new HashSet<string>();
        // The rarest rule is reached once in some thousand draws: a fixed number of them would miss it now and then.
        for (var round = 0; round < 30 && seen.Count < FigureRules.All.Count; round++)
            GenFacts.Sample(facts => { lock (seen) seen.UnionWith(Computed(facts).Keys.Select(key => key.Rule)); }, iter: 2000);
        Assert.Equal(FigureRules.All.Select(rule => rule.Code).Order(), seen.Order());
    }

    [Fact]
    public void Compute_AnyCaseWithinTheInputs_LiesWithinTheInterval() =>
        Gen.Select(GenFacts, Gen.Double[0, 1].Array[64]).Sample((facts, at) =>
        {
            var whole = Computed(facts);
            var one = Computed(Within(facts, at));
            foreach (var (key, figure) in whole)
                if (one.TryGetValue(key, out var point))
                    Assert.InRange(point.Nominal!.Value, Below(figure.Low!.Value), Above(figure.High!.Value));
        });

    [Fact]
    public void Compute_MoreStress_NeverWidensAMargin() =>
        Gen.Select(GenFacts, Gen.Int[0, Stresses.Length + 3], Gen.Double[1, 3]).Sample((facts, which, more) =>
        {
            var before = Computed(facts);
            var after = Computed(which < Stresses.Length
                ? facts with { Ratings = [.. facts.Ratings.Select(rating => rating.Kind == Stresses[which] ? Scaled(rating, more) : rating)] }
                : facts with { RailQuantities = [.. facts.RailQuantities.Select(quantity => quantity.Kind == Rail(which) ? Bench.Quantity(facts.Rails[0], quantity.Kind, Times(quantity.Interval, more)) : quantity)] });
            foreach (var (key, figure) in before)
            {
                if (FigureRules.Find(key.Rule)!.MoreIsBetter is not true || !after.TryGetValue(key, out var stressed))
                    continue;
                Assert.True(stressed.Low <= Above(figure.Low!.Value) && stressed.Nominal <= Above(figure.Nominal!.Value) && stressed.High <= Above(figure.High!.Value), key.Rule);
                Assert.True(stressed.Verdict <= figure.Verdict, $"{key.Rule}: {figure.Verdict} became {stressed.Verdict}");
            }
        });

    [Fact]
    public void Compute_VoltagesScaledAlike_MarginsOfVoltageStay() =>
        Gen.Select(GenFacts, Gen.Double[0.01, 100]).Sample((facts, factor) =>
        {
            var scaled = facts with
            {
                Ratings = [.. facts.Ratings.Select(rating => rating.Kind.Unit() is Unit.Volt ? Scaled(rating, factor) : rating)],
                RailQuantities = [.. facts.RailQuantities.Select(quantity => quantity.Kind.Unit() is Unit.Volt ? Bench.Quantity(facts.Rails[0], quantity.Kind, Times(quantity.Interval, factor)) : quantity)],
            };
            var after = Computed(scaled);
            foreach (var (key, figure) in Computed(facts).Where(pair => pair.Key.Rule == VoltageMargin.Rule))
            {
                Assert.Equal(figure.Nominal!.Value, after[key].Nominal!.Value, 1e-9 * Math.Max(1, Math.Abs(figure.Nominal.Value)));
                Assert.Equal(figure.Low!.Value, after[key].Low!.Value, 1e-9 * Math.Max(1, Math.Abs(figure.Low.Value)));
            }
        });

    [Fact]
    public void Compute_ValuesOfAnySize_NeverCrashAndStayFinite() =>
        Gen.Select(GenFacts, Gen.Int[0, OddValues.Length - 1], Gen.Int[0, 200]).Sample((facts, odd, which) =>
        {
            var value = Interval.Exactly(OddValues[odd]);
            var count = facts.Ratings.Count + facts.RailQuantities.Count;
            if (count == 0)
                return;
            which %= count;
            var strange = which < facts.Ratings.Count
                ? facts with { Ratings = [.. facts.Ratings.Select((rating, index) => index == which ? With(rating, value) : rating)] }
                : facts with { RailQuantities = [.. facts.RailQuantities.Select((quantity, index) => index == which - facts.Ratings.Count ? Bench.Quantity(facts.Rails[0], quantity.Kind, value) : quantity)] };
            foreach (var figure in RevisionFigures.Compute(RevisionId.New(), strange, LineTable.Default))
            {
                Assert.Equal(figure.Verdict is Verdict.Unknown, figure.Missing.Count > 0);
                Assert.Equal(figure.Nominal is null, figure.Missing.Count > 0);
                if (figure.Nominal is not null)
                    Assert.True(double.IsFinite(figure.Low!.Value) && double.IsFinite(figure.Nominal.Value) && double.IsFinite(figure.High!.Value));
            }
        });

    [Fact]
    public void Stamp_AnyLineChanged_Differs()
    {
        var stamps = new[]
        {
            LineTable.Default,
            new LineTable(Domain.Derating.DeratingPreset.Space, new Dictionary<string, double>()),
            new LineTable(Domain.Derating.DeratingPreset.Industrial, new Dictionary<string, double> { ["ample_headroom"] = 1.4 }),
        }.Select(FigureRules.Stamp).ToList();
        Assert.Equal(3, stamps.Distinct().Count());
        Assert.Equal(stamps[0], FigureRules.Stamp(new LineTable(Domain.Derating.DeratingPreset.Industrial, new Dictionary<string, double>())));
    }

    private static Dictionary<(Guid Subject, string Rule), Figure> Computed(RevisionFacts facts) =>
        RevisionFigures.Compute(RevisionId.New(), facts, LineTable.Default).Where(figure => figure.Nominal is not null).ToDictionary(figure => (figure.Subject, figure.Rule));

    private static RailQuantityKind Rail(int which) => (which - Stresses.Length) switch
    {
        0 => RailQuantityKind.MaxVoltage,
        1 => RailQuantityKind.MaxCurrent,
        2 => RailQuantityKind.ProspectiveCurrent,
        _ => RailQuantityKind.MaxPower,
    };

    private static Interval Spread(Unit unit, double scale, double[] random, int index)
    {
        var (low, high) = unit switch
        {
            Unit.Ratio => (0.3, 1),
            Unit.Farad => (1e-6, 1e-3),
            Unit.Ohm => (1e-3, 1e5),
            Unit.Hertz => (45.0, 65),
            Unit.DegreeCelsius => (20, 120),
            _ => (5.0, 500),
        };
        var ends = new[] { random[3 * index], random[(3 * index) + 1], random[(3 * index) + 2] }.Order().Select(value => scale * (low + (value * (high - low)))).ToArray();
        return Interval.Create(ends[0], ends[1], ends[2]);
    }

    private static RevisionFacts Within(RevisionFacts facts, double[] at) => facts with
    {
        Ratings = [.. facts.Ratings.Select((rating, index) => With(rating, Point(rating.Interval, at[index % at.Length])))],
        RailQuantities = [.. facts.RailQuantities.Select((quantity, index) => Bench.Quantity(facts.Rails[0], quantity.Kind, Point(quantity.Interval, at[(index + 40) % at.Length])))],
    };

    private static Interval Point(Interval interval, double at) => Interval.Exactly(Math.Clamp(interval.Low + (at * (interval.High - interval.Low)), interval.Low, interval.High));

    private static Interval Times(Interval interval, double factor) => Interval.Create(interval.Low * factor, interval.Nominal * factor, interval.High * factor);

    private static Rating Scaled(Rating rating, double factor) => With(rating, Times(rating.Interval, factor));

    private static Rating With(Rating rating, Interval value) => new()
    {
        RevisionId = rating.RevisionId,
        Id = rating.Id,
        ComponentId = rating.ComponentId,
        Kind = rating.Kind,
        Low = value.Low,
        Nominal = value.Nominal,
        High = value.High,
        Condition = rating.Condition,
        Evidence = rating.Evidence,
    };

    private static double Below(double value) => value - (1e-9 * Math.Max(1, Math.Abs(value)));

    private static double Above(double value) => value + (1e-9 * Math.Max(1, Math.Abs(value)));
}
