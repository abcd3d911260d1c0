using System.Text;
using Catalogue.Domain.Families;
using Catalogue.Domain.Tests.Samples;
using CsCheck;

namespace Catalogue.Domain.Tests.Families;

public sealed class PartNumberTests
{
    private static readonly Gen<string> GenNumber = Gen.Char["ABCXQ019-/#+ ()TRGFPBEMI"].Array[1, 24].Select(characters => "Z" + new string(characters));

    public static TheoryData<string, string, string, string, string> Cases
    {
        get
        {
            var data = new TheoryData<string, string, string, string, string>();
            foreach (var line in Encoding.UTF8.GetString(SampleFile.Bytes("Text", "part_number_cases.csv")).Trim().Split('\n').Skip(1))
            {
                var fields = line.TrimEnd('\r').Split(',');
                data.Add(fields[0], fields[1], fields[2], fields[3], fields[4]);
            }
            return data;
        }
    }

    [Theory]
    [MemberData(nameof(Cases))]
    public void From_OrderingCode_PeelsWhatIsNoIdentity(string raw, string baseNumber, string packing, string finish, string grade)
    {
        var number = PartNumber.From(raw)!;
        Assert.Equal((baseNumber, packing, finish, grade), (number.Base, number.Packing ?? "", number.Finish ?? "", number.Grade ?? ""));
        Assert.Equal(grade.Length == 0 ? baseNumber : $"{baseNumber}-{grade}", number.MatchKey);
    }

    [Fact]
    public void From_SampleLines_GiveTheStatedKeys()
    {
        var lines = SampleFile.TabLines("Text", "part-numbers.tsv");
        Assert.Equal(15, lines.Length);
        var plain = PartNumber.From(lines[0][0])!.MatchKey;
        foreach (var line in lines)
        {
            var number = PartNumber.From(line[0]);
            if (line[1].Length > 0)
            {
                Assert.Equal(line[1], number!.MatchKey);
                Assert.Empty(number.ForeignLetters);
                Assert.Equal(line[2] == "1" || line[1] == plain, number.MatchKey == plain);
            }
            else if (number is not null)
            {
                Assert.NotEmpty(number.ForeignLetters);
                Assert.NotEqual(plain, number.MatchKey);
            }
        }
        Assert.Null(PartNumber.From(lines[13][0]));
        Assert.Null(PartNumber.From(lines[14][0]));
        Assert.Equal([new Rune('\u0425')], PartNumber.From(lines[6][0])!.ForeignLetters);
        Assert.Equal([new Rune('\u039D')], PartNumber.From(lines[7][0])!.ForeignLetters);
    }

    [Theory]
    [InlineData(null)]
    [InlineData("")]
    [InlineData(" \u00A0\t")]
    [InlineData("any")]
    [InlineData("N/A")]
    [InlineData("?")]
    [InlineData("-")]
    [InlineData("~")]
    [InlineData("Unknown")]
    [InlineData("ＡＮＹ")]
    [InlineData("#N/A")]
    [InlineData("#DIV/0!")]
    [InlineData("\uD800")]
    public void From_NoPartNumber_IsNull(string? raw) => Assert.Null(PartNumber.From(raw));

    [Theory]
    [InlineData("TR-TR", "TR")]
    [InlineData("-TR", "-TR")]
    [InlineData("/-Q1-TR", "/-Q1-TR")]
    [InlineData("QX4-7", "QX4")]
    [InlineData("QX4/7", "QX4/7")]
    [InlineData("QX4-I-R-PBF", "QX4-I")]
    [InlineData("QX4 - TR", "QX4")]
    [InlineData("QX4+-TR", "QX4")]
    [InlineData("QX4 R7", "QX4 R7")]
    [InlineData("QX4\u200E-TR", "QX4")]
    public void MatchKey_EdgeCases_KeepsABase(string raw, string key) => Assert.Equal(key, PartNumber.From(raw)!.MatchKey);

    [Fact]
    public void PossibleBase_GluedFinish_IsOfferedButNotUsed()
    {
        var number = PartNumber.From("QX4R065NPBF")!;
        Assert.Equal(("QX4R065NPBF", "QX4R065N"), (number.MatchKey, number.PossibleBase));
        Assert.Null(PartNumber.From("QX4R065N")!.PossibleBase);
    }

    [Fact]
    public void SearchKey_AnyNumber_IsLettersAndDigits()
    {
        Assert.Equal("QX4R065NTR", PartNumber.From("qx4-r065n/tr")!.SearchKey);
        Assert.Equal("E12", PartNumber.From("é-1２")!.SearchKey);
    }

    [Fact]
    public void MatchKey_OfAMatchKey_IsItself() =>
        Gen.OneOf(GenNumber, Gen.String).Sample(raw => PartNumber.From(raw) is not { } number || PartNumber.From(number.MatchKey)?.MatchKey == number.MatchKey);

    [Fact]
    public void MatchKey_CaseWidthAndDash_ChangeNothing() =>
        GenNumber.Sample(raw =>
        {
            var key = PartNumber.From(raw)!.MatchKey;
            return new[]
            {
                raw.ToLowerInvariant(),
                raw.Replace('-', '\u2011'),
                raw.Replace('-', '\u2013'),
                raw.Replace('-', '\u2212'),
                $"\u00A0{raw} ",
                new string([.. raw.Select(character => character is > ' ' and <= '~' ? (char)(character + 0xFEE0) : '\u3000')]),
            }.All(variant => PartNumber.From(variant)!.MatchKey == key);
        });

    [Fact]
    public void From_AnyString_NeverThrows()
    {
        Gen.String[0, 5000].Sample(raw => PartNumber.From(raw)?.Base.Length != 0, iter: 200);
        string[] odd =
        [
            "A\uD800B", "\uDC00Z1", "A\uFFFEB\uFFFF", "\u202EABC-TR", "A😀-TR", new string('(', 5000) + "A)", new string('-', 4999) + "TR",
            string.Concat(Enumerable.Repeat("-TR", 1700)) + "A-TR",
        ];
        foreach (var raw in odd)
        {
            Assert.NotNull(PartNumber.From(raw)?.MatchKey);
        }
    }
}
