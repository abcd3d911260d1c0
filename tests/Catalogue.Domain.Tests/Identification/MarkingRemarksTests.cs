using Catalogue.Domain.Identification;

namespace Catalogue.Domain.Tests.Identification;

public sealed class MarkingRemarksTests
{
    [Theory]
    [InlineData("QX4R0-65N")]
    [InlineData("8O8-7A\n2317")]
    [InlineData("8□8-7A")]
    [InlineData("8■8-7A µ ±5%")]
    [InlineData("ＱＸ４Ｒ０")]
    public void Of_AnOrdinaryMarking_SaysNothing(string marking) => Assert.Empty(MarkingRemarks.Of(marking));

    [Theory]
    [InlineData("808-7\u0410", "\u0410 (U+0410) for A")]
    [InlineData("808-7\u0430", "\u0430 (U+0430) for A")]
    [InlineData("\u039D808", "\u039D (U+039D) for N")]
    public void Of_AForeignLetter_NamesItAndTheOneItLooksLike(string marking, string named) => Assert.Contains(named, Assert.Single(MarkingRemarks.Of(marking)), StringComparison.Ordinal);

    [Theory]
    [InlineData("808\u202E-7A", "U+202E")]
    [InlineData("808\u200B-7A", "U+200B")]
    [InlineData("\u200F808-7A", "U+200F")]
    public void Of_ASignThatNobodySees_NamesItsCodePoint(string marking, string code)
    {
        var remark = Assert.Single(MarkingRemarks.Of(marking));
        Assert.Contains(code, remark, StringComparison.Ordinal);
        Assert.DoesNotContain(marking.First(sign => sign > 0x2000), remark);
    }

    [Fact]
    public void Of_APicture_NamesIt() => Assert.Contains("🙂 (U+1F642)", Assert.Single(MarkingRemarks.Of("808-7A🙂")), StringComparison.Ordinal);

    [Theory]
    [InlineData("")]
    [InlineData(" \n ")]
    [InlineData("--- // …")]
    [InlineData("\uD800")]
    [InlineData("漢字")]
    public void Of_NothingOfANumber_SaysSo(string marking) => Assert.Contains("Nothing in the text is a letter or a digit of a part number.", MarkingRemarks.Of(marking));

    [Fact]
    public void Of_ALongTextOfManyOddSigns_SaysHowLongAndNamesAFew()
    {
        var remarks = MarkingRemarks.Of(ForeignLetters.Letters + new string('8', 600));
        Assert.Equal(2, remarks.Count);
        Assert.Contains("has at most 500", remarks[0], StringComparison.Ordinal);
        Assert.EndsWith("more. They make candidates and join nothing.", remarks[1], StringComparison.Ordinal);
        Assert.InRange(remarks[1].Length, 1, 300);
    }
}
