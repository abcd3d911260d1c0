using Catalogue.Domain.Components.Lists;
using Catalogue.Domain.Tests.Samples;
using CsCheck;

namespace Catalogue.Domain.Tests.Components.Lists;

public sealed class DesignatorListTests
{
    public static TheoryData<string, string, int, bool> Sample
    {
        get
        {
            var data = new TheoryData<string, string, int, bool>();
            foreach (var line in SampleFile.TabLines("Text", "designators.tsv"))
            {
                data.Add(line[0], line[1], int.Parse(line[2], System.Globalization.CultureInfo.InvariantCulture), line[3].Length > 0);
            }
            return data;
        }
    }

    [Theory]
    [MemberData(nameof(Sample))]
    public void Read_SampleLine_ExpandsAsStated(string raw, string expanded, int count, bool warns)
    {
        var list = DesignatorList.Read(raw, null);
        Assert.Equal(expanded, string.Join(' ', list.Names));
        Assert.Equal(count, list.Names.Count);
        Assert.Equal(warns, list.Warnings.Count > 0);
    }

    [Theory]
    [InlineData("U4A, U4B, U4C", 3, "U4A U4B U4C")]
    [InlineData("U4A, U4B, U4C", 1, "U4")]
    [InlineData("Q1A, Q1B", 1, "Q1")]
    [InlineData("Q1A, Q1B", null, "Q1A Q1B")]
    [InlineData("U1A-U1D", 1, "U1")]
    [InlineData("R08-R11", null, "R08 R09 R10 R11")]
    [InlineData("Ｃ１，Ｃ２、C3", null, "C1 C2 C3")]
    [InlineData("R1~R3", null, "R1 R2 R3")]
    [InlineData("VIN,5V_OUT,BAT", null, "VIN 5V_OUT BAT")]
    [InlineData("Trafo oben, Lampe", null, "Trafo oben Lampe")]
    [InlineData("USB-C, TP-1", null, "USB-C TP-1")]
    [InlineData("R101A-R103A", null, "R101A R102A R103A")]
    public void Read_OtherStyles_ExpandsOrKeepsTheName(string raw, int? quantity, string expanded) =>
        Assert.Equal(expanded, string.Join(' ', DesignatorList.Read(raw, quantity).Names));

    [Theory]
    [InlineData("R1-C4")]
    [InlineData("C1-C99999")]
    [InlineData("R1-R99999999999999999999")]
    [InlineData("R1A-R3B")]
    public void Read_NoRange_IsKeptAsWrittenOnly(string raw)
    {
        var list = DesignatorList.Read(raw, null);
        Assert.Empty(list.Names);
        Assert.False(list.IsComplete);
        Assert.NotEmpty(list.Warnings);
    }

    [Fact]
    public void Read_AnyText_GivesEachNameOnceAndNeverThrows() =>
        Gen.String.Sample(text =>
        {
            var names = DesignatorList.Read(text, null).Names;
            return names.Distinct(StringComparer.OrdinalIgnoreCase).Count() == names.Count && names.Count <= DesignatorList.MaxDesignators;
        });
}
