using System.Text;
using Catalogue.Domain.Photos;
using CsCheck;

namespace Catalogue.Domain.Tests.Photos;

public sealed class EntryNamesTests
{
    [Theory]
    [InlineData(437, "IBM437", "Platine/Rückseite.jpg", "Gehäuse außen.jpg")]
    [InlineData(437, "IBM437", "étape 3 capot retiré.jpg", "arrière.jpg")]
    [InlineData(1252, "windows-1252", "Platine/Rückseite.jpg", "Gehäuse außen.jpg")]
    [InlineData(1252, "windows-1252", "étape 3 capot retiré.jpg", "carte mère.jpg")]
    [InlineData(932, "Shift_JIS", "メイン基板/表面.jpg", "ラベル 2.jpg")]
    [InlineData(932, "Shift_JIS", "電源基板裏.jpg", "step 1.jpg")]
    [InlineData(936, "GBK", "主板/正面.jpg", "外壳 标签.jpg")]
    [InlineData(65001, "UTF-8", "Rückseite.jpg", "主板.jpg")]
    [InlineData(20127, "US-ASCII", "board a/top.jpg", "label.jpg")]
    public void Decode_NamesAsMachinesWriteThem_AreRead(int codePage, string encoding, params string[] names)
    {
        var written = (CodePagesEncodingProvider.Instance.GetEncoding(codePage) ?? Encoding.GetEncoding(codePage)) is var page ? names.Select(page.GetBytes).ToList() : [];

        var read = EntryNames.Decode(written);

        Assert.Equal(encoding, read.Encoding);
        Assert.Equal(names, read.Names);
        Assert.Equal(encoding is not ("UTF-8" or "US-ASCII"), read.IsGuess);
    }

    [Fact]
    public void Decode_NoNames_IsNothingToDecide() => Assert.Equal("US-ASCII", EntryNames.Decode([]).Encoding);

    [Fact]
    public void Decode_AnyBytes_GivesEachAName() => Gen.Byte.Array[0, 20].Array[0, 6].Sample(names => Assert.Equal(names.Length, EntryNames.Decode(names).Names.Count));
}
