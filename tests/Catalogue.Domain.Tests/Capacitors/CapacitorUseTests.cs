using Catalogue.Domain.Capacitors;
using Catalogue.Domain.Quantities;
using Catalogue.Domain.Tests.Samples;
using static Catalogue.Domain.Tests.Quantities.Reckoned;

namespace Catalogue.Domain.Tests.Capacitors;

public sealed class CapacitorUseTests
{
    private static readonly (double, double)[] Ranges = [(10, 400), (0, 20), (25, 630)];

    public static TheoryData<string[]> WorkedExamples => FigureDocument.Theory("capacitors.md", "### Energy, charge, bleeding");

    [Theory]
    [MemberData(nameof(WorkedExamples))]
    public void Of_WorkedExample_GivesTheDocumentedNumbers(string[] row)
    {
        var (capacitance, voltage, bleeder) = (FigureDocument.Known(row[0], 1e-6), FigureDocument.Known(row[1]), FigureDocument.Known(row[7], 1e3));
        var use = Done(CapacitorUse.Of(voltage, Exactly(0), FigureDocument.Known(row[2])));
        Near(FigureDocument.Number(row[3]), use.Utilisation.Nominal);
        Near(FigureDocument.Number(row[4]), use.Margin.Nominal);
        var stored = Done(StoredCharge.Of(capacitance, voltage));
        Near(FigureDocument.Number(row[5]), stored.Energy.Nominal);
        Near(FigureDocument.Number(row[6]) * 1e-6, stored.Charge.Nominal);
        if (bleeder is null)
        {
            Assert.Equal(["bleed_resistance"], Refused(Bleed.Time(bleeder, capacitance, voltage, FigureDocument.Known(row[8]))));
            return;
        }

        Near(FigureDocument.Number(row[9]), Done(Bleed.Time(bleeder, capacitance, voltage, FigureDocument.Known(row[8]))).Nominal);
        Near(FigureDocument.Number(row[10]), Done(Bleed.Power(bleeder, voltage)).Nominal);
    }

    [Fact]
    public void Of_RippleOnTop_Counts() =>
        // (400 + 10) / 450.
        Near(0.911111, Done(CapacitorUse.Of(Exactly(400), Exactly(10), Exactly(450))).Utilisation.Nominal);

    [Fact]
    public void Of_SpreadInputs_HoldsEveryCase() => HoldsEveryCase(Margin, Ranges);

    [Fact]
    public void Of_MoreStress_NeverMoreMargin()
    {
        Moves(Margin, 0, -1, Ranges);
        Moves(Margin, 1, -1, Ranges);
        Moves(Margin, 2, 1, Ranges);
    }

    [Fact]
    public void Of_VoltagesInAnotherUnit_SameUtilisation() => Scales(Margin, [1, 1, 1], 0, Ranges);

    [Fact]
    public void Of_AbsurdInputs_AreRefused() => RefusesTheAbsurd(given => CapacitorUse.Of(given[0], given[1], given[2]), 400, 10, 450);

    private static Reckoning<Interval> Margin(Interval[] given) =>
        CapacitorUse.Of(given[0], given[1], given[2]).Then(use => new Reckoning<Interval>.Done(use.Margin));
}
