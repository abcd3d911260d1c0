using Catalogue.Domain.UsbPd;
using CsCheck;

namespace Catalogue.Domain.Tests.UsbPd;

public sealed class WordTextTests
{
    [Theory]
    [InlineData("0x0801912C")]
    [InlineData("0801912c")]
    [InlineData(" 0X0801912C\t")]
    [InlineData("0801912Ch")]
    [InlineData("0x0801_912CU")]
    [InlineData("0x0801912CUL")]
    [InlineData("0x0801912Cu32")]
    [InlineData("32'h0801912C")]
    [InlineData("0x0801'912C")]
    [InlineData("$0801912C")]
    public void Read_AnyStyle_IsTheWord(string text)
    {
        Assert.Null(WordText.Read(text, out var word));
        Assert.Equal(0x0801912Cu, word);
    }

    [Theory]
    [InlineData(null, "empty")]
    [InlineData("  ", "empty")]
    [InlineData("0x", "not hexadecimal")]
    [InlineData("0x0003C0", "too short: 6 digits")]
    [InlineData("0x0004B0960", "too long: 9 digits")]
    [InlineData("0x0O01912C", "not hexadecimal")]
    [InlineData("5 V 3 A", "not hexadecimal")]
    [InlineData("-0801912C", "not hexadecimal")]
    [InlineData("０８０１９１２Ｃ", "not hexadecimal")]
    [InlineData("0x00000000000000000000000000000000000000000801912C", "too long")]
    public void Read_WhatIsNoWord_IsRefusedWithTheReason(string? text, string reason)
    {
        Assert.Contains(reason, WordText.Read(text, out var word), StringComparison.Ordinal);
        Assert.Equal(0u, word);
    }

    [Fact]
    public void Read_AnyText_NeverThrows() => Gen.String.Sample(text => { WordText.Read(text, out _); });

    [Fact]
    public void Read_OfAPrintedWord_IsTheWord() => Gen.UInt.Sample(word =>
    {
        Assert.Null(WordText.Read(CapabilityWord.Text(word), out var read));
        Assert.Equal(word, read);
    });
}
