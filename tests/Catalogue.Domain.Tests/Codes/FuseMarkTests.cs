using Catalogue.Domain.Codes;
using Catalogue.Domain.Quantities;

namespace Catalogue.Domain.Tests.Codes;

public sealed class FuseMarkTests
{
    [Theory]
    [InlineData("T3.15AL250V", "T", 3.15, 'L', 250.0)]
    [InlineData("F2AH250V", "F", 2, 'H', 250.0)]
    [InlineData("T500mAL250V", "T", 0.5, 'L', 250.0)]
    [InlineData("FF10AH500V", "FF", 10, 'H', 500.0)]
    [InlineData("T 6.3A H 250V", "T", 6.3, 'H', 250.0)]
    [InlineData("T2AE250V", "T", 2, 'E', 250.0)]
    [InlineData("M1AL250V", "M", 1, 'L', 250.0)]
    [InlineData("T1.6A250V", "T", 1.6, null, 250.0)]
    [InlineData("TT0.8AH250V", "TT", 0.8, 'H', 250.0)]
    [InlineData("5A 125V", null, 5, null, 125.0)]
    [InlineData("T2A", "T", 2, null, null)]
    public void Decode_Mark_GivesItsParts_AndWhatIsNotMarkedIsUnknown(string text, string? characteristic, double ampere, char? breaking, double? volts)
    {
        var mark = FuseMark.Decode(text)!;

        Assert.Equal((characteristic, ampere, breaking, volts), (mark.Characteristic, mark.RatedCurrent.Value!.Value, mark.BreakingClass, mark.RatedVoltage?.Value));
    }

    [Theory]
    [InlineData("5A")]
    [InlineData("T0A250V")]
    [InlineData("T250V")]
    [InlineData("F1")]
    [InlineData("TOP 5A 250V")]
    [InlineData("")]
    public void Decode_OtherText_IsNoMark(string text) => Assert.Null(FuseMark.Decode(text));

    [Theory]
    [InlineData("X2 275V~ 0.47uF", "X2", 275, 4.7e-7)]
    [InlineData("MKP 0,22 uF / 275 VAC X2", "X2", 275, 2.2e-7)]
    [InlineData("X1Y2 250V~ 2n2", "X1 Y2", 250, 2.2e-9)]
    [InlineData("X1/Y1 472M 400V", "X1 Y1", 400, 4.7e-9)]
    public void SafetyCapacitorMark_ClassVoltageCapacitance_AreRead(string text, string classes, double volts, double farads)
    {
        var mark = SafetyCapacitorMark.Decode(text)!;

        Assert.Equal(classes, string.Join(' ', mark.Classes));
        Assert.Equal((volts, CurrentKind.Alternating), (Assert.Single(mark.RatedVoltages).Value!.Value, mark.RatedVoltages[0].Current));
        Assert.Equal(farads, mark.Capacitance!.Value.Value);
    }

    [Theory]
    [InlineData("100nF X7R 50V")]
    [InlineData("EX2 275V")]
    public void SafetyCapacitorMark_WithoutClass_IsNone(string text) => Assert.Null(SafetyCapacitorMark.Decode(text));
}
