using Catalogue.Domain.Identification;
using CsCheck;

namespace Catalogue.Domain.Tests.Identification;

public sealed class NameLikenessTests
{
    private static readonly Gen<string> GenName = Gen.Char["01568ABDEGOQSTX-\u0425\u039F/ "].Array[1, 14].Select(letters => new string(letters));

    [Theory]
    [InlineData("YTQ65-080", "YTQ65-060", "8 here, 6 there, which looks like it")]
    [InlineData("808-7A", "8O8-7A", "0 here, O there, which looks like it")]
    [InlineData("QS8205", "QS82O5", "0 here, O there, which looks like it")]
    [InlineData("KPD318", "KPDЗ18", null)]
    [InlineData("QLX-4N30D", "QL\u0425-4N30D", "X here, Cyrillic \u0425 there: they look the same")]
    [InlineData("QL\u03A7-4N30D", "QL\u0425-4N30D", "Greek \u03A7 here, Cyrillic \u0425 there: they look the same")]
    [InlineData("QS82057", "QS8205", "without '7'")]
    [InlineData("QS-8205", "QS8205", "without '-'")]
    public void Of_NamesTakenForEachOther_AreLookAlikesWithTheCharactersThatDiffer(string name, string other, string? difference)
    {
        var found = NameLikeness.Of(name, other);
        if (difference is null)
            Assert.DoesNotContain(found?.Differences ?? [], words => words.Contains("look", StringComparison.Ordinal));
        else
            Assert.Equal((NameLikenessKind.LookAlike, difference), (found!.Kind, Assert.Single(found.Differences)));
    }

    [Theory]
    [InlineData("QS8205", "QS8205A", "with 'A'")]
    [InlineData("QS8205A", "QS8205B", "A here, B there")]
    [InlineData("YTQ65-080", "YTQ65-080G", "with 'G'")]
    [InlineData("YTQ65-080", "YTQ65-080-Q1", "with '-Q1'")]
    [InlineData("QX4R065N", "QX4R065P", "N here, P there")]
    [InlineData("808-7A", "808-7C", "A here, C there")]
    public void Of_OneStemWithOtherEndings_AreVersions(string name, string other, string difference)
    {
        var found = NameLikeness.Of(name, other)!;
        Assert.Equal((NameLikenessKind.Version, difference), (found.Kind, Assert.Single(found.Differences)));
    }

    [Theory]
    [InlineData("YTQ65-080", "MWK-60N08")]
    [InlineData("YTQ65-080", "YTQ65-080")]
    [InlineData("QS8205", "QS8317")]
    [InlineData("A1", "A1234")]
    [InlineData("---", "QS8205")]
    [InlineData("", "")]
    public void Of_NamesThatAreNotAlike_IsNothing(string name, string other) => Assert.Null(NameLikeness.Of(name, other));

    [Fact]
    public void Pieces_OfTheOtherName_MarkTheCharactersThatDiffer()
    {
        var found = NameLikeness.Of("YTQ65-080", "YTQ6S-O80")!;
        Assert.Equal([new("YTQ6", false), new("S", true), new("-", false), new("O", true), new("80", false)], found.OtherPieces);
        Assert.Equal([new("YTQ6", false), new("5", true), new("-", false), new("0", true), new("80", false)], found.NamePieces);
    }

    [Fact]
    public void Of_Names_IsSymmetricAndItsPiecesAreTheNames() =>
        Gen.Select(GenName, GenName).Sample((one, other) =>
        {
            var (there, back) = (NameLikeness.Of(one, other), NameLikeness.Of(other, one));
            return there?.Kind == back?.Kind
                && (there is null || Written(there.NamePieces) == one && Written(there.OtherPieces) == other && there.Differences.Count > 0 && there.OtherPieces.Concat(there.NamePieces).Any(piece => piece.Differs) && there.Similarity is >= 0 and <= 1);
        }, iter: 20_000);

    [Theory]
    [InlineData("QX4R065N")]
    [InlineData("808-7A")]
    [InlineData("YTQ65-080")]
    [InlineData("KPD1318")]
    public void Of_EveryCommonLookAlikeInANumber_IsFound(string number)
    {
        var exchanged = 0;
        foreach (var (pair, cost) in LookAlikes.Pairs.Where(pair => pair.Cost <= 0.35))
        {
            for (var i = number.IndexOf(pair[0], StringComparison.Ordinal); i >= 0; i = number.IndexOf(pair[0], i + 1))
            {
                exchanged++;
                Assert.True(NameLikeness.Of(number, number.Remove(i, 1).Insert(i, pair[1..])) is not null, $"{pair} at {i}, cost {cost}");
            }
        }

        Assert.True(exchanged > 2);
    }

    [Fact]
    public void Of_ANameThatIsTooLong_Throws() => Assert.Throws<ArgumentOutOfRangeException>(() => NameLikeness.Of(new string('A', 121), "A1"));

    private static string Written(IEnumerable<NamePiece> pieces) => string.Concat(pieces.Select(piece => piece.Text));
}
