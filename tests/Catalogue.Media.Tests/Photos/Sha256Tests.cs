using Catalogue.Media.Photos;

namespace Catalogue.Media.Tests.Photos;

public sealed class Sha256Tests
{
    // The digest of "abc", FIPS 180-4's own example.
    private const string Abc = "ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad";

    [Fact]
    public async Task OfAsync_KnownText_GivesThePublishedDigest() =>
        Assert.Equal(Abc, (await Sha256.OfAsync(new MemoryStream("abc"u8.ToArray()), default)).Text);

    [Fact]
    public void Parse_ItsOwnText_GivesAnEqualValue() => Assert.Equal(Sha256.Parse(Abc), Sha256.FromBytes(Convert.FromHexString(Abc)));

    [Theory]
    [InlineData(null)]
    [InlineData("")]
    [InlineData("ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015a")]
    [InlineData("ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad0")]
    [InlineData("BA7816BF8F01CFEA414140DE5DAE2223B00361A396177A9CB410FF61F20015AD")]
    [InlineData("../../../../../../../../../../../../../../../../../../etc/passwd0")]
    public void TryParse_AnythingElse_IsRefused(string? text) => Assert.False(Sha256.TryParse(text, out _));
}
