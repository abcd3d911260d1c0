using Catalogue.Domain.UsbPd;

namespace Catalogue.Domain.Tests.UsbPd;

public sealed class SupplyWordsTests
{
    [Theory]
    [InlineData("0x0002D12C", "9 V 3 A")]
    [InlineData("0xC9A43264", "5 to 21 V, 5 A, programmable, power limited")]
    [InlineData("0xE004B1F4", "9 to 15 V, 3 A; to 20 V, 5 A, adjustable")]
    [InlineData("0xD230968C", "15 to 28 V, 140 W, adjustable")]
    [InlineData("0x00000000", "padding")]
    [InlineData("nonsense", "not readable")]
    public void Of_Word_SaysItsSupply(string word, string line) =>
        Assert.Equal(["5 V 3 A", line], SupplyWords.Of(["0x0801912C", word]).Select(text => text.Replace('\u00A0', ' ')));
}
