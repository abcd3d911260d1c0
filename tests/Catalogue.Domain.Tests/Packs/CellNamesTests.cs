using Catalogue.Domain.Packs;
using Catalogue.Domain.Quantities;
using Catalogue.Domain.Tests.Samples;
using Catalogue.Domain.Text;
using CsCheck;
using static Catalogue.Domain.Tests.Quantities.Reckoned;

namespace Catalogue.Domain.Tests.Packs;

public sealed class CellNamesTests
{
    public static TheoryData<string[]> WorkedExamples => FigureDocument.Theory("pack.md", "### Cell names");

    [Theory]
    [MemberData(nameof(WorkedExamples))]
    public void Read_WorkedExample_GivesTheDocumentedParts(string[] row)
    {
        var name = Done(CellNames.Read(row[0]));
        Assert.Equal(row[1], name.Series?.ToString(System.Globalization.CultureInfo.InvariantCulture) ?? "none");
        Assert.Equal(row[2], name.Negative is { } negative ? SnakeCase.Code(negative) : "none");
        Assert.Equal(row[3], name.Positive is { } positive ? SnakeCase.Code(positive) : "none");
        Assert.Equal(row[4], SnakeCase.Code(name.Shape));
        Near(FigureDocument.Number(row[5]), name.DiameterOrThickness * 1000);
        Assert.Equal(row[6] == "none", name.Width is null);
        if (name.Width is { } width)
            Near(FigureDocument.Number(row[6]), width * 1000);
        Near(FigureDocument.Number(row[7]), name.Height * 1000);
        Assert.Equal(FigureDocument.Count(row[8]), name.Parallel);
        Assert.Equal(row[9], SnakeCase.Code(name.Mark));
        Assert.Equal(row[9] == "low" || (row[9] == "medium" && row[0] != "606090"), name.Warnings.Count > 0);
    }

    [Fact]
    public void Read_FiveDigitsShorterThanWide_OffersTheTradeHeight()
    {
        var name = Done(CellNames.Read("32140"));

        Near(0.140, name.OtherHeight!.Value);
        Assert.Contains("measured", Assert.Single(name.Warnings), StringComparison.Ordinal);
        Assert.Null(Done(CellNames.Read("32700")).OtherHeight);
    }

    [Theory]
    [InlineData(null)]
    [InlineData("")]
    [InlineData("  ")]
    [InlineData("0")]
    [InlineData("00650")]
    [InlineData("18000")]
    [InlineData("1865")]
    [InlineData("INR19")]
    [InlineData("INR19/")]
    [InlineData("INR0/66")]
    [InlineData("0INR19/66")]
    [InlineData("INR19/66-0")]
    [InlineData("INR19/35/66")]
    [InlineData("ICP9/35")]
    [InlineData("IXR19/66")]
    [InlineData("ICP18650")]
    [InlineData("INR19/66/1/1")]
    [InlineData("１８６５０")]
    [InlineData("99999999999INR19/66")]
    public void Read_NoName_IsRefusedWithAReason(string? text)
    {
        var refusal = Assert.Single(Assert.IsType<Reckoning<CellName>.Refused>(CellNames.Read(text)).Refusals);

        Assert.Equal("cell_name", refusal.Input);
        Assert.NotEmpty(refusal.Reason);
    }

    [Fact]
    public void Read_AnyText_NeverThrows() => Gen.String[Gen.Char["0123456789INRCPt/- x"], 0, 50].Sample(text => CellNames.Read(text) is not null);

    [Fact]
    public void Read_CaseOfLetters_DoesNotMatter() => Assert.Equal(Done(CellNames.Read("INR21700")).Positive, Done(CellNames.Read(" inr21700 ")).Positive);
}
