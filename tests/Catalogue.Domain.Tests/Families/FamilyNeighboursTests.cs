using Catalogue.Domain.Components;
using Catalogue.Domain.Families;
using Catalogue.Domain.Packages;
using Catalogue.Domain.Quantities;

namespace Catalogue.Domain.Tests.Families;

public sealed class FamilyNeighboursTests
{
    private static readonly FamilyFacts Asked = Family("YTQ65-080", 650);
    private static readonly FamilyFacts Stronger = Family("QX4R065N", 700);
    private static readonly FamilyFacts Weaker = Family("MWK-60N08", 600);
    private static readonly FamilyFacts Alike = Family("YTQ65-060", 500);
    private static readonly FamilyFacts Graded = Family("YTQ65-080G", 500);

    [Fact]
    public void Of_WithoutAWord_SortsByWhatIsComputed()
    {
        var found = Of();
        Assert.Equal(["QX4R065N"], found.Sources);
        Assert.Equal(["YTQ65-060"], found.Alike);
        Assert.Equal(["YTQ65-080G"], found.Versions);
    }

    [Fact]
    public void Of_Unrelated_HidesItEverywhere()
    {
        Assert.Empty(Of((Stronger, FamilyRelationKind.Unrelated)).Sources);
        Assert.Empty(Of((Alike, FamilyRelationKind.Unrelated)).Alike);
        Assert.Empty(Of((Graded, FamilyRelationKind.Unrelated)).Versions);
    }

    [Fact]
    public void Of_SecondSource_PutsItFirstAndStillSaysWhatFallsShort()
    {
        Assert.Equal(["MWK-60N08", "QX4R065N"], Of((Weaker, FamilyRelationKind.SecondSource)).Sources);
        var found = FamilyNeighbours.Of(Asked, [Weaker], Words((Weaker, FamilyRelationKind.SecondSource))).SecondSources[0];
        Assert.Equal("a reviewer confirmed it as a second source: bench swap", found.Reasons[0]);
        Assert.Contains("falls short: rated voltage: 600\u00A0V where at least 650\u00A0V is needed", found.Reasons);
    }

    [Fact]
    public void Of_LookAlike_PutsItAmongTheLookAlikesAlone()
    {
        var found = Of((Stronger, FamilyRelationKind.LookAlike), (Graded, FamilyRelationKind.LookAlike));
        Assert.Empty(found.Sources);
        Assert.Empty(found.Versions);
        Assert.Equal(["YTQ65-080G", "QX4R065N", "YTQ65-060"], found.Alike);
    }

    [Fact]
    public void Of_TheAskedFamily_IsNoNeighbourOfItself() => Assert.Empty(FamilyNeighbours.Of(Asked, [Asked], Words()).SecondSources);

    [Fact]
    public void Of_AnotherNumberOfBoth_IsSaid()
    {
        var found = FamilyNeighbours.Of(Asked with { OtherNames = ["808-7A"] }, [Family("KPD-318", 10) with { OtherNames = ["8O8-7A"] }], Words()).LookAlikes;
        Assert.Equal(["by the numbers 808-7A and 8O8-7A", "0 here, O there, which looks like it"], Assert.Single(found).Reasons);
    }

    [Fact]
    public void Of_ManyCandidates_KeepsEachListShort()
    {
        var many = Enumerable.Range(0, 300).Select(i => Family(FormattableString.Invariant($"QX4R{i:000}N"), 700));
        Assert.Equal(FamilyNeighbours.MaxInList, FamilyNeighbours.Of(Asked, many, Words()).SecondSources.Count);
    }

    private static (string[] Sources, string[] Alike, string[] Versions) Of(params (FamilyFacts, FamilyRelationKind)[] words)
    {
        var found = FamilyNeighbours.Of(Asked, [Stronger, Weaker, Alike, Graded], Words(words));
        return (Names(found.SecondSources), Names(found.LookAlikes), Names(found.Versions));
    }

    private static Dictionary<FamilyId, FamilyWord> Words(params (FamilyFacts Family, FamilyRelationKind Kind)[] words) => words.ToDictionary(word => word.Family.Id, word => new FamilyWord(word.Kind, "bench swap"));

    private static string[] Names(IEnumerable<FamilyNeighbour> neighbours) => [.. neighbours.Select(one => one.Family.Name)];

    private static FamilyFacts Family(string name, double volts) => new()
    {
        Id = FamilyId.New(),
        Name = name,
        FunctionClass = FunctionClass.Switch,
        Packages = [PackageText.Read("TO-247")],
        Ratings = [new(RatingKind.RatedVoltage, Interval.Exactly(volts))],
    };
}
