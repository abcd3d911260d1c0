using System.Diagnostics;
using System.Text;
using Catalogue.Domain.Components.Lists;
using Catalogue.Domain.Tests.Samples;

namespace Catalogue.Domain.Tests.Components.Lists;

public sealed class ComponentListDamageTests
{
    private static readonly TimeSpan Limit = TimeSpan.FromSeconds(20);

    [Fact]
    public void Read_TruncatedSamples_NeverThrows()
    {
        foreach (var name in SampleFile.Names("Lists"))
        {
            var original = SampleFile.Bytes("Lists", name);
            for (var length = 0; length < original.Length; length += 7)
            {
                Assert.NotNull(ComponentList.Read(original.AsMemory(0, length), name));
            }
        }
    }

    [Theory]
    [InlineData("Ref\uFFFE,Qty,Value\nR1,1\uFFFE,10k\uFFFF\n")]
    [InlineData("Ref,Qty,Value\nR1,1,😀10k\nR2,😀,😀\n")]
    public void Read_NoncharactersAndRareLetters_NeverThrows(string text)
    {
        foreach (var encoding in new[] { Encoding.UTF8, Encoding.Unicode, Encoding.BigEndianUnicode })
        {
            var list = Assert.IsType<ComponentListReading.Read>(ComponentList.Read((byte[])[.. encoding.GetPreamble(), .. encoding.GetBytes(text)], null));
            Assert.EndsWith("10k", list.Rows[0].Value, StringComparison.Ordinal);
        }
    }

    [Fact]
    public void Read_RandomBytes_IsRefused()
    {
        var bytes = new byte[1 << 20];
        new Random(7).NextBytes(bytes);
        Assert.IsType<ComponentListReading.Refused>(ComponentList.Read(bytes, null));
    }

    [Fact]
    public void Read_HugeCell_RejectsItsRowOnly()
    {
        var list = Read($"Ref,Qty,Value\nR1,1,10k\nR2,1,{new string('x', 10 << 20)}\nR3,1,33k\n");
        Assert.Equal([2, 4], list.Rows.Select(row => row.LineNumber));
        Assert.Contains("10485760", Assert.Single(list.Rejected).Reason, StringComparison.Ordinal);
    }

    [Fact]
    public void Read_TooManyColumns_IsRefusedOrRejected()
    {
        Assert.IsType<ComponentListReading.Refused>(ComponentList.Read(Encoding.UTF8.GetBytes($"Ref,Qty,Value{new string(',', 100_000)}\nR1,1,10k\n"), null));
        var list = Read($"Ref,Qty,Value\nR1,1,10k\nR2,1,22k{new string(',', 100_000)}\n");
        Assert.Single(list.Rows);
        Assert.Equal(3, Assert.Single(list.Rejected).Row);
    }

    [Fact]
    public void Read_TooManyRowsOrBytes_IsRefused()
    {
        var rows = new StringBuilder("Ref,Qty,Value\n").Insert(14, "R1,1,10k\n", ComponentList.MaxRows + 1);
        Assert.IsType<ComponentListReading.Refused>(ComponentList.Read(Encoding.UTF8.GetBytes(rows.ToString()), null));
        Assert.IsType<ComponentListReading.Refused>(ComponentList.Read(new byte[ComponentList.MaxFileBytes + 1], null));
    }

    [Theory]
    [InlineData(",\"x\n")]
    [InlineData(",\"x\"\",\n")]
    [InlineData("\"")]
    [InlineData(",\"x\"y\n\"")]
    [InlineData("\n")]
    [InlineData(",\"   ")]
    [InlineData("R1-1000,")]
    [InlineData("\"\n\"\"\n")]
    public void Read_NestedQuotesAndOtherTraps_TakeLinearTime(string unit)
    {
        var text = new StringBuilder("Ref,Qty,Value\nR1,1,10k\n").Insert(23, unit, (4 << 20) / unit.Length).ToString();
        var clock = Stopwatch.StartNew();
        Assert.NotNull(ComponentList.Read(Encoding.UTF8.GetBytes(text), null));
        Assert.True(clock.Elapsed < Limit, $"took {clock.Elapsed}");
    }

    private static ComponentListReading.Read Read(string text) =>
        Assert.IsType<ComponentListReading.Read>(ComponentList.Read(Encoding.UTF8.GetBytes(text), null));
}
