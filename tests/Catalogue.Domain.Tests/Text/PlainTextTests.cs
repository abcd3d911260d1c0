using Catalogue.Domain.Text;

namespace Catalogue.Domain.Tests.Text;

public sealed class PlainTextTests
{
    // Attributes cannot hold half a character, so these stand here.
    public static TheoryData<string> Forbidden => ["a\0b", "a\u0007", "\ud83d alone", "alone \udd0b", "\udd0b\ud83d"];

    [Theory]
    [MemberData(nameof(Forbidden), DisableDiscoveryEnumeration = true)]
    public void HoldsForbidden_ControlOrHalfACharacter_IsTrueAndCleaningChangesIt(string text)
    {
        Assert.True(PlainText.HoldsForbidden(text));
        Assert.NotEqual(text, PlainText.Clean(text));
    }

    [Theory]
    [InlineData(null)]
    [InlineData("")]
    [InlineData("C1, at its pins; 4½-digit Ω")]
    [InlineData("two\r\nlines\tand a tab")]
    [InlineData("a whole one \ud83d\udd0b")]
    public void HoldsForbidden_TextAsPeopleWriteIt_IsFalse(string? text) => Assert.False(PlainText.HoldsForbidden(text));
}
