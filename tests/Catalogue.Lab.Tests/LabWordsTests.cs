using Catalogue.Data.Teardowns;

namespace Catalogue.Lab.Tests;

public sealed class LabWordsTests
{
    [Theory]
    [InlineData(1, 1, "single")]
    [InlineData(4, 1, "4 in parallel")]
    [InlineData(1, 2, "2 in series")]
    [InlineData(3, 2, "2 in series of 3 in parallel")]
    public void Arrangement_Counts_AreSaidInWords(int parallel, int series, string words) => Assert.Equal(words, LabWords.Arrangement(parallel, series));

    [Fact]
    public void Problem_RefusedField_IsNamedInWords() =>
        Assert.Equal(
            "Brand is empty; give it a text of 1 to 120 characters.",
            new ChangeOutcome<int>.Refused("product.brand", "product.brand is empty; give it a text of 1 to 120 characters.").Problem());

    [Fact]
    public void Problem_Done_IsNone() => Assert.Null(new ChangeOutcome<int>.Done(1).Problem());
}
