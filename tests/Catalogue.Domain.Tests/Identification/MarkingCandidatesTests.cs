using Catalogue.Domain.Components;
using Catalogue.Domain.Families;
using Catalogue.Domain.Identification;
using CsCheck;

namespace Catalogue.Domain.Tests.Identification;

public sealed class MarkingCandidatesTests
{
    [Fact]
    public void Rank_AMarkWithALookAlike_SaysWhichCharacter()
    {
        var best = Rank("8O8-7A", Family("808-7A"), Family("818-7A"))[0];
        Assert.Equal("808-7A", best.Name.Text);
        Assert.Equal("808-7A: O looks like 0", best.Reasons[0]);
        Assert.True(best.Score > 0.9);
        Assert.False(best.IsTied);
    }

    [Fact]
    public void Rank_TwoThatAreAsNear_AreTiedAndNeitherIsTaken()
    {
        var candidates = Rank("QX4R06", Family("QX4R06A"), Family("QX4R06B"));
        Assert.All(candidates, candidate => Assert.True(candidate.IsTied));
        Assert.Null(MarkingCandidates.ToTake(candidates));
    }

    [Fact]
    public void Rank_AnUnreadableCharacter_FitsAny()
    {
        var best = Rank("QX4R?65N", Family("QX4R065N"), Family("QX4R0655"))[0];
        Assert.Equal("QX4R065N", best.Name.Text);
        Assert.Equal("QX4R065N: 0 could not be read", best.Reasons[0]);
    }

    [Fact]
    public void Rank_PackageAndFunction_DecideBetweenAlikeNames()
    {
        var small = Family("QX4R06A") with { Packages = ["SOT-23-6"], FunctionClass = FunctionClass.Regulator };
        var large = Family("QX4R06B") with { Packages = ["TO-252"], FunctionClass = FunctionClass.Switch };
        var best = Rank(new MarkingQuestion { Marking = "QX4R06", Package = "DPAK", FunctionClass = FunctionClass.Switch }, small, large)[0];
        Assert.Equal("QX4R06B", best.Name.Text);
        Assert.False(best.IsTied);
        Assert.Contains("comes in DPAK", best.Reasons);
        Assert.Contains("is a switch", best.Reasons);
    }

    [Fact]
    public void Rank_AFamilyThatIsSeenOften_StandsBeforeItsEqual()
    {
        var best = Rank("QX4R06", Family("QX4R06A"), Family("QX4R06B") with { SeenInDesigns = 9 })[0];
        Assert.Equal("QX4R06B", best.Name.Text);
        Assert.Contains("seen in 9 other designs", best.Reasons);
    }

    [Fact]
    public void Rank_ATopMarkThatMakersShare_ListsEachAndSaysSo()
    {
        CandidateFamily Marked(string number, string maker) =>
            Family(number) with { Names = [new FamilyName("A6T", "A6T", FamilyNameKind.TopMark, maker)] };
        var candidates = Rank("A6T", Marked("QX4R065N", "Marnholt"), Marked("ZM5N10D", "Ulbrecken"));
        Assert.Equal(2, candidates.Count);
        Assert.All(candidates, candidate => Assert.Contains("2 families share this top mark: the maker or the circuit decides", candidate.Reasons));
        Assert.All(candidates, candidate => Assert.True(candidate.IsTied));
        Assert.Contains(candidates, candidate => candidate.Reasons.Contains("A6T is a top mark of Ulbrecken"));
    }

    [Fact]
    public void Rank_SeveralLines_FindsTheNumberInAnyOrder()
    {
        foreach (var marking in (string[])["2317\nQX4R065N\nMARNHOLT", "MARNHOLT / 2317 / QX4R065N", "065N\nQX4R"])
            Assert.Equal("QX4R065N", Rank(marking, Family("QX4R065N"), Family("QX4R0655"))[0].Name.Text);
    }

    [Fact]
    public void Rank_AGluedEnding_IsAWeakCandidate()
    {
        var best = Rank("QX4R065NPBF", Family("QX4R065N"))[0];
        Assert.Contains(best.Reasons, reason => reason.Contains("glued ending", StringComparison.Ordinal));
        Assert.Equal("QX4R065N", MarkingCandidates.ToTake([best])?.Name.Text);
    }

    [Fact]
    public void Rank_AnUnrelatedFamily_IsNoCandidate() => Assert.Empty(Rank("QX4R065N", Family("ZM5N10D2")));

    [Fact]
    public void Rank_AnyMarks_GivesScoresOfAProbability() =>
        Gen.Select(Gen.String[Gen.Char["0123456789ABQXRN?-/ \n"], 0, 20], Gen.String[Gen.Char["0123456789ABQXRN"], 1, 10].Array[1, 8]).Sample((marking, numbers) =>
        {
            var candidates = Rank(marking, [.. numbers.Select(Family)]);
            Assert.True(candidates.Sum(candidate => candidate.Score) <= 1 + 1e-9);
            Assert.All(candidates, candidate => Assert.InRange(candidate.Score, 0, 1));
            Assert.Equal(candidates.OrderByDescending(candidate => candidate.Score).Select(candidate => candidate.Score), candidates.Select(candidate => candidate.Score));
        });

    private static IReadOnlyList<Candidate> Rank(string marking, params CandidateFamily[] families) => Rank(new MarkingQuestion { Marking = marking }, families);

    private static IReadOnlyList<Candidate> Rank(MarkingQuestion question, params CandidateFamily[] families) =>
        MarkingCandidates.Rank(question, MarkingReadings.Of(question.Marking, word => word == "MARNHOLT"), families);

    private static CandidateFamily Family(string number) => new()
    {
        Id = FamilyId.New(),
        Names = [new FamilyName(number, MarkingKeys.Letters(number), FamilyNameKind.BaseNumber)],
    };
}
