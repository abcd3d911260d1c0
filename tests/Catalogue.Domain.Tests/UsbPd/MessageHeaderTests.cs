using Catalogue.Domain.UsbPd;

namespace Catalogue.Domain.Tests.UsbPd;

public sealed class MessageHeaderTests
{
    [Theory]
    [InlineData(0x41A1, 4, 0, true, "3.x", PortRole.Source)]
    [InlineData(0x17A1, 1, 3, true, "3.x", PortRole.Source)]
    [InlineData(0x63A1, 6, 1, true, "3.x", PortRole.Source)]
    [InlineData(0x1161, 1, 0, true, "2.0", PortRole.Source)]
    [InlineData(0xFDB1, 7, 6, true, "3.x", PortRole.Source)] // extended
    [InlineData(0x1084, 1, 0, false, "3.x", PortRole.Sink)]
    [InlineData(0x0241, 0, 1, false, "2.0", null)]           // good CRC
    [InlineData(0x1082, 1, 0, false, "3.x", null)]           // request
    [InlineData(0x11E1, 1, 0, true, null, PortRole.Source)]  // reserved revision
    [InlineData(0x1101, 1, 0, true, "1.0", PortRole.Source)]
    public void Header_Fields_AreThoseOfItsBits(int value, int objects, int id, bool isFromSource, string? revision, PortRole? capabilities)
    {
        var header = new MessageHeader((ushort)value);
        Assert.Equal((objects, id, isFromSource, revision, capabilities), (header.ObjectCount, header.MessageId, header.IsFromSource, header.Revision, header.Capabilities));
    }

    [Theory]
    [InlineData(0x8024, true, 0, false, 36)]
    [InlineData(0x8824, true, 1, false, 36)]
    [InlineData(0x8C00, true, 1, true, 0)]
    [InlineData(0x0024, false, 0, false, 36)]
    public void ExtendedHeader_Fields_AreThoseOfItsBits(int value, bool isChunked, int chunk, bool isRequest, int size)
    {
        var header = new ExtendedHeader((ushort)value);
        Assert.Equal((isChunked, chunk, isRequest, size), (header.IsChunked, header.Chunk, header.IsRequest, header.Size));
    }
}
