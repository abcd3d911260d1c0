using Catalogue.Domain.Components;
using Catalogue.Domain.Figures;
using Catalogue.Domain.Quantities;
using Catalogue.Domain.Rails;
using Catalogue.Domain.Teardowns;
using CsCheck;

namespace Catalogue.Domain.Tests.Figures;

public sealed class BreakingCapacityTests
{
    public static IEnumerable<TheoryDataRow<IReadOnlyDictionary<string, string>>> Examples => WorkedExamples.Of("breaking-capacity.md");

    [Theory]
    [MemberData(nameof(Examples))]
    public void Compute_WorkedExample_GivesTheDocumentedNumbers(IReadOnlyDictionary<string, string> row)
    {
        var isRecorded = !row.ContainsKey("S");
        var figure = Bench.Computed(
            Pack(
                [Bench.Rating(RatingKind.BreakingCurrent, row.Number("I_break"))],
                isRecorded ? [] : [Bench.Rating(RatingKind.CellResistance, row.Number("R_cell") / 1000)],
                row.Count("S"),
                row.Count("P"),
                isRecorded
                    ? [(RailQuantityKind.ProspectiveCurrent, Interval.Exactly(row.Number("I_short")))]
                    : [(RailQuantityKind.PathResistance, Interval.Exactly(row.Number("R_path") / 1000)), (RailQuantityKind.MaxVoltage, Interval.Exactly(row.Number("V_max")))]),
            BreakingCapacity.Rule);
        WorkedExamples.Near(row.Number("ratio"), figure.Value.Nominal);
        Assert.Equal((Unit.Ratio, row.Number("ratio") < 1 ? Verdict.OverRating : Verdict.Adequate), (figure.Unit, figure.Verdict));
        if (!isRecorded)
            WorkedExamples.Near(row.Number("I_short"), figure.Working.Steps.Single(step => step.Symbol == "I_short").Nominal);
    }

    [Fact]
    public void Compute_NothingKnownOfThePath_NamesAllThatIsMissing()
    {
        var figure = Bench.Unknown(Pack([], [Bench.Rating(RatingKind.CellResistance, 0.02)]), BreakingCapacity.Rule);
        Assert.Equal(["breaking_current", "path_resistance", "max_voltage"], figure.Missing.Select(missing => missing.Code));
    }

    [Fact]
    public void Compute_CellsOfUnknownResistance_IsUnknown()
    {
        var figure = Bench.Unknown(Pack([Bench.Rating(RatingKind.BreakingCurrent, 1000)], []), BreakingCapacity.Rule);
        Assert.Equal(["cell_resistance", "path_resistance", "max_voltage"], figure.Missing.Select(missing => missing.Code));
    }

    [Fact]
    public void Compute_CapacityForAcOnADcRail_DoesNotCount()
    {
        var known = ((RailQuantityKind, Interval)[])[(RailQuantityKind.ProspectiveCurrent, Interval.Exactly(900))];
        var figure = Bench.Unknown(Pack([Bench.Rating(RatingKind.BreakingCurrent, 1500, "at 250 V ac")], [], known: known), BreakingCapacity.Rule);
        Assert.Equal(("breaking_current", "the fuse's breaking capacity for dc; one stated for ac does not count there"), (figure.Missing[0].Code, figure.Missing[0].Words));
        Assert.Equal(1000 / 900.0, Bench.Computed(Pack([Bench.Rating(RatingKind.BreakingCurrent, 1500, "at 250 V ac"), Bench.Rating(RatingKind.BreakingCurrent, 1000, "at 32 V dc")], [], known: known), BreakingCapacity.Rule).Value.Nominal, 1e-12);
    }

    [Fact]
    public void Compute_MainsFuse_TakesTheCapacityForAcAndOnlyARecordedCurrent()
    {
        var rail = Bench.Rail(max: 264, mains: true);
        var rating = Bench.Rating(RatingKind.BreakingCurrent, 35, "at 250 V ac");
        Assert.Equal("prospective_current", Assert.Single(Bench.Unknown(Bench.Part(FunctionClass.IecCartridgeFuse, rail, [rating]), BreakingCapacity.Rule).Missing).Code);
        rail.Known.Add(Bench.Quantity(rail.Rail, RailQuantityKind.ProspectiveCurrent, 140));
        Assert.Equal(0.25, Bench.Computed(Bench.Part(FunctionClass.IecCartridgeFuse, rail, [rating]), BreakingCapacity.Rule).Value.Nominal);
    }

    [Fact]
    public void Compute_FusesSideBySide_DoNotAddUp()
    {
        var facts = Pack([Bench.Rating(RatingKind.BreakingCurrent, 1000)], [], known: [(RailQuantityKind.ProspectiveCurrent, Interval.Exactly(2000))]);
        facts.Components[0].ParallelCount = 3;
        var figure = Bench.Computed(facts, BreakingCapacity.Rule);
        Assert.Equal(0.5, figure.Value.Nominal);
        Assert.Contains(figure.Working.Notes, note => note.StartsWith("Fuses side by side", StringComparison.Ordinal));
    }

    [Fact]
    public void Compute_TwoLinesOfCells_AreNotAddedUp()
    {
        var facts = Pack([Bench.Rating(RatingKind.BreakingCurrent, 1000)], [Bench.Rating(RatingKind.CellResistance, 0.02)], known: [(RailQuantityKind.PathResistance, Interval.Exactly(0)), (RailQuantityKind.MaxVoltage, Interval.Exactly(16.8))]);
        var second = Pack([], []).Components[1];
        second.RailId = facts.Rails[0].Id;
        var figure = Bench.Unknown(facts with { Components = [.. facts.Components, second] }, BreakingCapacity.Rule);
        Assert.Equal("prospective_current", Assert.Single(figure.Missing).Code);
    }

    [Fact]
    public void Compute_FuseWithoutEither_HasNoSuchFigure() =>
        Assert.DoesNotContain(RevisionFigures.Compute(RevisionId.New(), Pack([Bench.Rating(RatingKind.RatedCurrent, 35)], []), LineTable.Default), figure => figure.Rule == BreakingCapacity.Rule);

    [Fact]
    public void Compute_SpreadInputs_HoldsEveryCaseAndMoreResistanceNeverLessRatio() =>
        Gen.Select(Gen.Double[0, 1].Array[12], Gen.Int[1, 16], Gen.Int[1, 8], Gen.Double[0, 1].Array[4], Gen.Double[1, 3]).Sample((random, series, parallel, at, more) =>
        {
            var (capacity, cell, path, volts) = (Of(0, 100, 2000), Of(1, 0.0005, 0.05), Of(2, 0, 0.01), Of(3, 3, 60));
            var whole = Compute(capacity, cell, path, volts);
            var one = Compute(Point(capacity, 0), Point(cell, 1), Point(path, 2), Point(volts, 3));
            Assert.InRange(one.Nominal, whole.Low * (1 - 1e-9), whole.High * (1 + 1e-9));
            var eased = Compute(capacity, Interval.Create(cell.Low * more, cell.Nominal * more, cell.High * more), path, volts);
            Assert.True(eased.Low >= whole.Low * (1 - 1e-9) && eased.Nominal >= whole.Nominal * (1 - 1e-9) && eased.High >= whole.High * (1 - 1e-9));

            Interval Compute(Interval breaks, Interval ohm, Interval along, Interval full) => Bench.Computed(
                Pack([Bench.Rating(RatingKind.BreakingCurrent, breaks)], [Bench.Rating(RatingKind.CellResistance, ohm)], series, parallel, [(RailQuantityKind.PathResistance, along), (RailQuantityKind.MaxVoltage, full)]),
                BreakingCapacity.Rule).Value;
            Interval Of(int index, double low, double high)
            {
                var ends = random.Skip(3 * index).Take(3).Order().Select(value => low + (value * (high - low))).ToArray();
                return Interval.Create(ends[0], ends[1], ends[2]);
            }

            Interval Point(Interval interval, int index) => Interval.Exactly(Math.Clamp(interval.Low + (at[index] * (interval.High - interval.Low)), interval.Low, interval.High));
        });

    // A fuse and the cells of a pack on one rail.
    private static RevisionFacts Pack(IEnumerable<Rating> ofFuse, IEnumerable<Rating> ofCell, int series = 4, int parallel = 1, IEnumerable<(RailQuantityKind Kind, Interval Value)>? known = null)
    {
        var rail = Bench.Rail(kind: RailKind.Pack);
        rail.Known.AddRange((known ?? []).Select(quantity => Bench.Quantity(rail.Rail, quantity.Kind, quantity.Value)));
        var (fuse, cells) = (Bench.Part(FunctionClass.BladeFuse, rail, ofFuse), Bench.Part(FunctionClass.Cell, rail, ofCell, series: series, parallel: parallel));
        return fuse with { Components = [.. fuse.Components, .. cells.Components], Ratings = [.. fuse.Ratings, .. cells.Ratings] };
    }
}
