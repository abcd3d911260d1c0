using Catalogue.Domain.Identification;
using CsCheck;

namespace Catalogue.Domain.Tests.Identification;

public sealed class MarkingKeysTests
{
    private const string Signs = "0123456789ABCDEFGHIJKLMNOPQRSTUVWXYZ";

    [Fact]
    public void Skeleton_OfLookAlikes_IsOne() => Assert.Equal(MarkingKeys.Skeleton("8O8I7A"), MarkingKeys.Skeleton("BQBL74"));

    [Fact]
    public void AddProbes_OfAMarkWithTwoErrors_MeetTheNumber() =>
        Gen.Select(Gen.String[Gen.Char[Signs], 6, 14], Gen.Int[0, 3], Gen.Int[0, 3], Gen.Int[0, 1000], Gen.Int[0, 1000]).Sample((number, first, second, place, other) =>
        {
            var mark = Spoil(Spoil(number, first, place), second, other);
            Assert.True(Meet(mark, number), $"{number} read as {mark}");
        });

    [Theory]
    [InlineData("QX4R065N", "QX4R065NPBFTR")]
    [InlineData("QX4R065N", "QX4R06")]
    [InlineData("QX4R065N", "QX4R")]
    [InlineData("QX4R065N", "QX?R?65N")]
    [InlineData("SS34", "S?34")]
    [InlineData("A6T", "A6T")]
    [InlineData("A6T", "AGT")]
    public void AddProbes_OfAWornOrEndedMark_MeetTheNumber(string number, string mark) => Assert.True(Meet(mark, number));

    [Fact]
    public void AddProbes_OfAnotherNumber_DoNotMeet() => Assert.False(Meet("QX4R065N", "ZM5N10D2"));

    [Fact]
    public void Letters_OfForeignCapitals_AreTheLatinOnesTheyLookLike() => Assert.Equal("QLX4N30D", MarkingKeys.Letters("QL\u0425-4\u039D30D"));

    private static bool Meet(string mark, string number)
    {
        var probes = new HashSet<string>(StringComparer.Ordinal);
        MarkingKeys.AddProbes(probes, mark, far: true);
        return probes.Overlaps(MarkingKeys.Stored(number));
    }

    private static string Spoil(string text, int how, int place)
    {
        var at = place % text.Length;
        var pairs = LookAlikes.Pairs.Where(pair => pair.Pair.Contains(text[at], StringComparison.Ordinal)).ToList();
        return how switch
        {
            0 when pairs.Count > 0 => text.Remove(at, 1).Insert(at, pairs[place % pairs.Count].Pair.Replace(text[at].ToString(), "", StringComparison.Ordinal)),
            1 => text.Remove(at, 1),
            2 => text[..^1],
            _ => text,
        };
    }
}
