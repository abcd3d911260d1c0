using Catalogue.Domain.Derating;
using Catalogue.Domain.Quantities;
using Catalogue.Domain.Tests.Samples;
using Catalogue.Domain.Text;
using CsCheck;
using static Catalogue.Domain.Tests.Quantities.Reckoned;

namespace Catalogue.Domain.Tests.Derating;

public sealed class DeratingPresetsTests
{
    public static TheoryData<string[]> WorkedExamples => FigureDocument.Theory("derating.md", "## Worked examples");

    [Theory]
    [MemberData(nameof(WorkedExamples))]
    public void Find_WorkedExample_GivesTheDocumentedLine(string[] row)
    {
        var line = DeratingPresets.Find(
            SnakeCase.TryParse<DeratingPreset>(row[0])!.Value,
            SnakeCase.TryParse<DeratingPart>(row[1])!.Value,
            SnakeCase.TryParse<DeratingParameter>(row[2])!.Value,
            FigureDocument.Known(row[3]),
            FigureDocument.Known(row[4])?.Nominal);
        switch (row[6])
        {
            case "none":
                Assert.IsType<DeratingLine.None>(line);
                break;
            case "not applied":
                var notApplied = Assert.IsType<DeratingLine.NotApplied>(line);
                Assert.Equal(row[5], SnakeCase.Code(notApplied.Guideline.Source));
                Assert.NotEmpty(notApplied.Reason);
                break;
            default:
                var applied = Assert.IsType<DeratingLine.Applied>(line);
                Assert.Equal(row[5], SnakeCase.Code(applied.Guideline.Source));
                Near(FigureDocument.Number(row[6]), applied.Value.Nominal);
                break;
        }
    }

    [Fact]
    public void Find_AnyPreset_NeverGivesARowMarkedLow()
    {
        var lines = (from preset in Enum.GetValues<DeratingPreset>()
                     from part in Enum.GetValues<DeratingPart>()
                     from parameter in Enum.GetValues<DeratingParameter>()
                     select DeratingPresets.Find(preset, part, parameter, Exactly(40), 5)).OfType<DeratingLine.Applied>().ToList();

        Assert.True(lines.Count > 200, $"Only {lines.Count} lines were found.");
        Assert.DoesNotContain(lines, line => line.Guideline.Mark is Confidence.Low);
    }

    [Fact]
    public void Find_SpreadOfTemperature_HoldsEveryCase() =>
        Gen.Select(Gen.Double[20, 110].Array[3], Gen.Double[0, 1]).Sample((drawn, at) =>
        {
            var three = drawn.Order().ToArray();
            var whole = Value(Interval.Create(three[0], three[1], three[2]));
            var one = Value(Exactly(three[0] + (at * (three[2] - three[0]))));
            Assert.InRange(one.Nominal, whole.Low - 1e-12, whole.High + 1e-12);
        });

    [Fact]
    public void Find_Warmer_NeverAHigherFactor() => Gen.Select(Gen.Double[-40, 110], Gen.Double[-40, 110]).Sample((one, other) =>
        Value(Exactly(Math.Max(one, other))).Nominal <= Value(Exactly(Math.Min(one, other))).Nominal);

    [Fact]
    public void Find_WarmestCaseBeyondTheLine_IsNotApplied() => Assert.IsType<DeratingLine.NotApplied>(
        DeratingPresets.Find(DeratingPreset.Space, DeratingPart.SolidTantalumCapacitor, DeratingParameter.Voltage, Interval.Create(80, 100, 115)));

    private static Interval Value(Interval temperature) => Assert.IsType<DeratingLine.Applied>(
        DeratingPresets.Find(DeratingPreset.Space, DeratingPart.SolidTantalumCapacitor, DeratingParameter.Voltage, temperature)).Value;
}
