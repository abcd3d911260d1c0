using Catalogue.Domain.Packs;
using Catalogue.Domain.Quantities;
using Catalogue.Domain.Tests.Samples;
using static Catalogue.Domain.Tests.Quantities.Reckoned;

namespace Catalogue.Domain.Tests.Packs;

public sealed class PackOfCellsTests
{
    private static readonly (double, double)[] Ranges = [(0.5, 20), (3.2, 3.7)];

    public static TheoryData<string[]> WorkedExamples => FigureDocument.Theory("pack.md", "### Energy and voltage");

    [Theory]
    [MemberData(nameof(WorkedExamples))]
    public void Compute_WorkedExample_GivesTheDocumentedNumbers(string[] row)
    {
        var chemistry = CellChemistry.Find(row[0])!;
        var pack = Done(PackOfCells.Compute(PackOfCells.Cells.Of(chemistry, FigureDocument.Count(row[1]), FigureDocument.Count(row[2]), FigureDocument.Known(row[3]))));
        Near(FigureDocument.Number(row[4]), pack.NominalVoltage.Nominal);
        Near(FigureDocument.Number(row[5]), pack.FullVoltage.Nominal);
        Near(FigureDocument.Number(row[6]), pack.EndVoltage.Nominal);
        Near(FigureDocument.Number(row[7]), pack.Capacity.Nominal);
        Near(FigureDocument.Number(row[8]), pack.Energy.Nominal);
        var usable = Done(PackOfCells.Usable(Exactly(pack.Energy.Nominal), FigureDocument.Known(row[9]), FigureDocument.Known(row[10])));
        Near(FigureDocument.Number(row[11]), usable.Nominal);
        if (FigureDocument.Known(row[12]) is { } output)
            Near(FigureDocument.Number(row[13]), Done(PackOfCells.OutputCharge(usable, output)).Nominal);
        Assert.Equal(row[14], TransportScreen.Sign(Done(TransportScreen.Of(pack.Energy)).Band));
    }

    [Fact]
    public void Compute_EnergyOfSpreadCells_HoldsEveryCase() => HoldsEveryCase(Energy, Ranges);

    [Fact]
    public void Compute_TwiceTheCells_TwiceTheEnergy()
    {
        var one = Done(PackOfCells.Compute(PackOfCells.Cells.Of(CellChemistry.Find("lfp")!, 4, 2, Exactly(20))));
        var two = Done(PackOfCells.Compute(PackOfCells.Cells.Of(CellChemistry.Find("lfp")!, 8, 2, Exactly(20))));

        Assert.Equal(2 * one.Energy.Nominal, two.Energy.Nominal);
        Assert.Equal(one.Capacity, two.Capacity);
    }

    [Fact]
    public void Compute_AbsurdInputs_AreRefused() =>
        RefusesTheAbsurd(given => PackOfCells.Compute(new PackOfCells.Cells(4, 2, given[0], given[1], given[2], given[3])), 5, 3.6, 4.2, 2.5);

    [Theory]
    [InlineData(0, 1, "series")]
    [InlineData(-4, 1, "series")]
    [InlineData(4, 0, "parallel")]
    [InlineData(4, int.MaxValue, "parallel")]
    public void Compute_CountsThatCannotBe_AreRefused(int series, int parallel, string input) =>
        Assert.Equal([input], Refused(PackOfCells.Compute(PackOfCells.Cells.Of(CellChemistry.Find("nmc")!, series, parallel, Exactly(5)))));

    [Fact]
    public void Compute_VoltagesOutOfOrder_AreRefused() =>
        Assert.Equal(["cell_nominal_voltage"], Refused(PackOfCells.Compute(new PackOfCells.Cells(1, 1, Exactly(5), Exactly(4.3), Exactly(4.2), Exactly(2.5)))));

    [Fact]
    public void Compute_ChemistryThatMayNotBeADefault_NamesTheVoltages() =>
        Assert.Equal(
            ["cell_nominal_voltage", "cell_full_voltage", "cell_end_voltage"],
            Refused(PackOfCells.Compute(PackOfCells.Cells.Of(CellChemistry.Find("na_ion")!, 4, 1, Exactly(10)))));

    [Fact]
    public void Usable_ShareAboveOne_IsRefused()
    {
        Assert.Equal(["usable_fraction"], Refused(PackOfCells.Usable(Exactly(100), Exactly(1.1), Exactly(0.9))));
        Assert.Equal(["efficiency"], Refused(PackOfCells.Usable(Exactly(100), Exactly(1), Exactly(90))));
        Assert.Equal(["efficiency"], Refused(PackOfCells.Usable(Exactly(100), Exactly(1), null)));
    }

    [Fact]
    public void OutputCharge_AbsurdInputs_AreRefused() => RefusesTheAbsurd(given => PackOfCells.OutputCharge(given[0], given[1]), 62.9, 5);

    private static Reckoning<Interval> Energy(Interval[] given) =>
        PackOfCells.Compute(new PackOfCells.Cells(4, 3, given[0], given[1], Exactly(4.2), Exactly(2.5))).Then(pack => new Reckoning<Interval>.Done(pack.Energy));
}
