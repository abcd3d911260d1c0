using Catalogue.Domain.Packs;
using Catalogue.Domain.Quantities;

namespace Catalogue.Domain.Tests.Packs;

public sealed class CellChemistryTests
{
    [Fact]
    public void All_Codes_AreDifferentAndFound()
    {
        Assert.Equal(CellChemistry.All.Count, CellChemistry.All.Select(row => row.Code).Distinct().Count());
        Assert.All(CellChemistry.All, row => Assert.Same(row, CellChemistry.Find(row.Code)));
        Assert.Null(CellChemistry.Find("NMC"));
        Assert.Null(CellChemistry.Find(null));
    }

    [Fact]
    public void All_Voltages_AreInOrder() => Assert.All(CellChemistry.All, row =>
    {
        Assert.True(row.End.IsPositive);
        Assert.True(row.End.High < row.Nominal.Low, row.Code);
        Assert.True(row.Nominal.High < row.Full.Low, row.Code);
    });

    [Fact]
    public void MayBeDefault_LowMark_IsFalse() =>
        Assert.Equal(["na_ion"], CellChemistry.All.Where(row => !row.MayBeDefault).Select(row => row.Code));

    [Fact]
    public void All_Marks_AreNeverHigh() => Assert.DoesNotContain(CellChemistry.All, row => row.Mark is Confidence.High);
}
