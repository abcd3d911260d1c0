using Catalogue.Domain.Products;
using Catalogue.Site.Teardowns;

namespace Catalogue.Site.Tests.Teardowns;

public sealed class SupplyWordsTests
{
    [Theory]
    [InlineData("0x0002D12C", "9 V 3 A")]
    [InlineData("0xC9A43264", "5 to 21 V, 5 A, programmable, power limited")]
    [InlineData("0xE004B1F4", "9 to 15 V, 3 A; to 20 V, 5 A, adjustable")]
    [InlineData("0xD230968C", "15 to 28 V, 140 W, adjustable")]
    [InlineData("0x00000000", "padding")]
    [InlineData("nonsense", "not readable")]
    public void Of_Word_SaysItsSupply(string word, string line)
    {
        var port = new Port { RevisionId = default, Id = PortId.New(), Name = "C1", Kind = "USB-C", CapabilityWords = ["0x0801912C", word] };
        Assert.Equal(["5 V 3 A", line], SupplyWords.Of(port).Select(text => text.Replace('\u00A0', ' ')));
    }
}
