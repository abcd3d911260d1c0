using Catalogue.Domain.Packs;
using Catalogue.Domain.Quantities;
using Catalogue.Domain.Tests.Samples;
using Catalogue.Domain.Text;
using static Catalogue.Domain.Tests.Quantities.Reckoned;

namespace Catalogue.Domain.Tests.Packs;

public sealed class CapacityClaimTests
{
    public static TheoryData<string[]> WorkedExamples => FigureDocument.Theory("pack.md", "### Claims against each other");

    [Theory]
    [MemberData(nameof(WorkedExamples))]
    public void Compare_WorkedExample_GivesTheDocumentedNumbers(string[] row)
    {
        var implied = Done(CapacityClaim.ImpliedEnergy(FigureDocument.Known(row[0]), CapacityConvention.CellVoltage, FigureDocument.Known(row[2])));
        Near(FigureDocument.Number(row[3]), implied.Nominal);
        var claimed = Done(CapacityClaim.Compare(FigureDocument.Known(row[1]), implied));
        Near(FigureDocument.Number(row[4]), claimed.Ratio.Nominal);
        Assert.Equal(row[5], SnakeCase.Code(claimed.Label));
        if (FigureDocument.Known(row[6]) is { } output)
        {
            var efficiency = Done(CapacityClaim.ImpliedEfficiency(output, FigureDocument.Known(row[7]), implied));
            Near(FigureDocument.Number(row[8]), efficiency.Ratio.Nominal);
            Assert.Equal(row[9], SnakeCase.Code(efficiency.Label));
        }

        Near(FigureDocument.Number(row[11]), Done(CapacityClaim.Compare(FigureDocument.Known(row[10]), FigureDocument.Known(row[1]))).Ratio.Nominal);
    }

    [Theory]
    [InlineData(97, EnergyLabel.Consistent)]
    [InlineData(103, EnergyLabel.Consistent)]
    [InlineData(96.9, EnergyLabel.Loose)]
    [InlineData(103.1, EnergyLabel.Loose)]
    [InlineData(90, EnergyLabel.Loose)]
    [InlineData(110, EnergyLabel.Loose)]
    [InlineData(89.9, EnergyLabel.Inconsistent)]
    [InlineData(110.1, EnergyLabel.Inconsistent)]
    public void Compare_OnAndBesideTheLines_GivesTheLabel(double claimed, EnergyLabel label) =>
        Assert.Equal(label, Done(CapacityClaim.Compare(Exactly(claimed), Exactly(100))).Label);

    [Theory]
    [InlineData(98, 100, 102, true)]
    [InlineData(95, 96, 105, false)]
    [InlineData(95, 96, 96.5, true)]
    [InlineData(80, 100, 120, false)]
    public void Compare_SpreadOverLabels_IsNotSettled(double low, double nominal, double high, bool settled) =>
        Assert.Equal(settled, Done(CapacityClaim.Compare(Interval.Create(low, nominal, high), Exactly(100))).IsSettled);

    [Theory]
    [InlineData(5.9, EfficiencyLabel.CheckVoltageConvention)]
    [InlineData(6, EfficiencyLabel.Plausible)]
    [InlineData(9.5, EfficiencyLabel.Plausible)]
    [InlineData(9.6, EfficiencyLabel.Unlikely)]
    [InlineData(10, EfficiencyLabel.Unlikely)]
    [InlineData(10.1, EfficiencyLabel.Impossible)]
    public void ImpliedEfficiency_OnAndBesideTheLines_GivesTheLabel(double outputAh, EfficiencyLabel label) =>
        Assert.Equal(label, Done(CapacityClaim.ImpliedEfficiency(Exactly(outputAh), Exactly(5), Exactly(50))).Label);

    [Fact]
    public void ImpliedEfficiency_SpreadInputs_HoldsEveryCase() => HoldsEveryCase(
        given => CapacityClaim.ImpliedEfficiency(given[0], given[1], given[2]).Then(labelled => new Reckoning<Interval>.Done(labelled.Ratio)), (5, 20), (4.8, 5.2), (30, 100));

    [Theory]
    [InlineData(CapacityConvention.CellVoltage, "cell_voltage")]
    [InlineData(CapacityConvention.OutputVoltage, "output_voltage")]
    [InlineData(CapacityConvention.PackVoltage, "pack_voltage")]
    public void ImpliedEnergy_VoltageNotKnown_NamesTheOneOfTheConvention(CapacityConvention convention, string input) =>
        Assert.Equal([input], Refused(CapacityClaim.ImpliedEnergy(Exactly(20), convention, null)));

    [Fact]
    public void Sums_AbsurdInputs_AreRefused()
    {
        RefusesTheAbsurd(given => CapacityClaim.ImpliedEnergy(given[0], CapacityConvention.PackVoltage, given[1]), 20, 3.7);
        RefusesTheAbsurd(given => CapacityClaim.ImpliedEfficiency(given[0], given[1], given[2]), 12, 5, 74);
        Assert.Equal(["reference_energy"], Refused(CapacityClaim.Compare(Exactly(74), null)));
        Assert.Equal(["energy"], Refused(CapacityClaim.Compare(Exactly(0), Exactly(74))));
    }
}
