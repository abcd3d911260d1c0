using Catalogue.Domain.Components;
using Catalogue.Domain.Families;
using Catalogue.Domain.Packages;
using Catalogue.Domain.Products;
using Catalogue.Domain.Quantities;
using CsCheck;

namespace Catalogue.Domain.Tests.Families;

public sealed class SecondSourceTests
{
    private static readonly FamilyFacts Asked = Switch("YTQ65-080", 650, 29, 0.08);

    [Fact]
    public void Of_EqualOrBetterInAll_IsOfferedWithItsReasons()
    {
        var found = SecondSource.Of(Asked, Switch("QX4R065N", 650, 31, 0.074));
        Assert.True(found.IsOffered);
        Assert.Equal(
            [
                "same function: switch",
                "same package: TO-247",
                "rated voltage: 650\u00A0V where at least 650\u00A0V is needed",
                "rated current: 31\u00A0A where at least 29\u00A0A is needed",
                "on-resistance, one part: 74\u00A0mΩ where at most 80\u00A0mΩ is needed",
            ],
            found.Reasons);
    }

    [Fact]
    public void Of_ARatingThatDoesNotCover_TakesItAway()
    {
        var found = SecondSource.Of(Asked, Switch("MWK-60N08", 600, 31, 0.074));
        Assert.False(found.IsOffered);
        Assert.Contains("falls short: rated voltage: 600\u00A0V where at least 650\u00A0V is needed", found.Reasons);
    }

    [Fact]
    public void Of_ARatingThatIsNotKnown_IsSaidAndNotCounted()
    {
        var found = SecondSource.Of(Asked, Switch("ONV-65-85", 650, null, 0.08));
        Assert.True(found.IsOffered);
        Assert.Equal((2, 1), (found.Covered, found.NotKnown));
        Assert.Contains("rated current not known", found.Reasons);
    }

    [Fact]
    public void Of_NothingKnownOfBoth_IsNotOffered() =>
        Assert.False(SecondSource.Of(Asked with { Ratings = [] }, Switch("QX4R065N", 650, 31, 0.074)).IsOffered);

    [Fact]
    public void Of_AnotherPackage_IsNotOffered()
    {
        var found = SecondSource.Of(Asked, Switch("QX4R065N", 650, 31, 0.074) with { Packages = [PackageText.Read("TO-220")] });
        Assert.False(found.IsOffered);
        Assert.StartsWith("packages differ", found.Reasons[^1], StringComparison.Ordinal);
    }

    [Fact]
    public void Of_OneSharedPackageOfSeveral_IsEnough() =>
        Assert.True(SecondSource.Of(Asked, Switch("QX4R065N", 650, 31, 0.074) with { Packages = [PackageText.Read("TO-220"), PackageText.Read("TO247")] }).IsOffered);

    [Fact]
    public void Of_PackageNotKnown_IsOfferedOnlyWhereEveryDecidingRatingIsCovered()
    {
        Assert.True(SecondSource.Of(Asked, Switch("QX4R065N", 650, 31, 0.074) with { Packages = [] }).IsOffered);
        var found = SecondSource.Of(Asked, Switch("QX4R065N", 650, null, 0.074) with { Packages = [] });
        Assert.False(found.IsOffered);
        Assert.Contains("package not compared: that of one is not known", found.Reasons);
    }

    [Theory]
    [InlineData(FunctionClass.BladeFuse, FunctionClass.Fuse, true)]
    [InlineData(FunctionClass.Fuse, FunctionClass.BladeFuse, true)]
    [InlineData(FunctionClass.BladeFuse, FunctionClass.ResettableFuse, false)]
    [InlineData(FunctionClass.Switch, FunctionClass.BipolarTransistor, false)]
    [InlineData(FunctionClass.Switch, FunctionClass.Rectifier, false)]
    public void ClassesBeside_ParentAndChild_AreCompared(FunctionClass one, FunctionClass other, bool isBeside) => Assert.Equal(isBeside, SecondSource.ClassesBeside(one).Contains(other));

    [Fact]
    public void Of_ClassNotKnown_IsNotOffered()
    {
        Assert.False(SecondSource.Of(Asked with { FunctionClass = null }, Asked).IsOffered);
        Assert.False(SecondSource.Of(Asked, Asked with { FunctionClass = null }).IsOffered);
    }

    [Fact]
    public void Of_AFuseRatedForAcOnly_IsComparedAtAc()
    {
        FamilyFacts Fuse(string name, double volts) => new()
        {
            Id = FamilyId.New(),
            Name = name,
            FunctionClass = FunctionClass.IecCartridgeFuse,
            Packages = [PackageText.Read("5x20 mm")],
            Ratings = [new(RatingKind.RatedVoltageAc, Interval.Exactly(volts)), new(RatingKind.RatedCurrent, Interval.Exactly(3.15))],
        };
        Assert.True(SecondSource.Of(Fuse("KF-315", 250), Fuse("LF-315", 300)).IsOffered);
        Assert.False(SecondSource.Of(Fuse("KF-315", 250), Fuse("LF-315", 125)).IsOffered);
    }

    [Fact]
    public void Of_TheSameRoleInOtherDesigns_IsSaid()
    {
        var (mine, one, two) = (ProductId.New(), ProductId.New(), ProductId.New());
        var asked = Asked with { Roles = [new("Primary switch", mine)] };
        var other = Switch("QX4R065N", 650, 31, 0.074) with { Roles = [new("primary  switch", one), new("primary switch", two), new("primary switch", mine), new("boost switch", one)] };
        var found = SecondSource.Of(asked, other);
        Assert.Equal(2, found.DesignsInSharedRole);
        Assert.Contains("seen as primary  switch too, in 2 other designs", found.Reasons);
    }

    [Fact]
    public void Of_ChipsOfOneVoltage_AreOfferedOnlyWhereSeenInTheSameRole()
    {
        var asked = Switch("KPD-318", 30, null, null) with { FunctionClass = FunctionClass.Controller, Roles = [new("buck controller", ProductId.New())] };
        var other = Switch("KPD-522", 40, null, null) with { FunctionClass = FunctionClass.Controller };
        Assert.False(SecondSource.Of(asked, other).IsOffered);
        var seen = SecondSource.Of(asked, other with { Roles = [new("buck controller", ProductId.New())] });
        Assert.True(seen.IsOffered);
        Assert.Contains("what it does inside is not compared: the ratings of a controller do not say it", seen.Open);
    }

    [Fact]
    public void Of_AFamilyAndItself_IsOffered() =>
        GenSwitch.Sample(one => one.Ratings.Count == 0 || SecondSource.Of(one, one).IsOffered);

    [Fact]
    public void Of_OneMoreRatingThatDoesNotCover_TakesItAway() =>
        Gen.Select(GenSwitch, GenSwitch).Sample((asked, other) =>
        {
            var demanding = asked with { Ratings = [.. asked.Ratings, new(RatingKind.MaxTemperature, Interval.Exactly(150))] };
            return !SecondSource.Of(demanding, other with { Ratings = [.. other.Ratings, new(RatingKind.MaxTemperature, Interval.Exactly(125))] }).IsOffered;
        });

    [Fact]
    public void Of_LessKnownOfTheOther_NeverCoversMore() =>
        Gen.Select(GenSwitch, GenSwitch).Sample((asked, other) =>
            other.Ratings.Count == 0 || SecondSource.Of(asked, other with { Ratings = [.. other.Ratings.Skip(1)] }).Covered <= SecondSource.Of(asked, other).Covered);

    private static Gen<FamilyFacts> GenSwitch =>
        Gen.Select(Gen.Int[0, 3], Gen.Int[0, 3], Gen.Int[0, 3]).Select((volts, ampere, ohm) =>
            Switch("QX4R065N", volts == 0 ? null : 550 + (50 * volts), ampere == 0 ? null : 10 * ampere, ohm == 0 ? null : 0.04 * ohm));

    private static FamilyFacts Switch(string name, double? volts, double? ampere, double? ohm) => new()
    {
        Id = FamilyId.New(),
        Name = name,
        FunctionClass = FunctionClass.Switch,
        Packages = [PackageText.Read("TO-247")],
        Ratings =
        [
            .. new[] { (RatingKind.RatedVoltage, volts), (RatingKind.RatedCurrent, ampere), (RatingKind.OnResistance, ohm) }
                .Where(rating => rating.Item2 is not null)
                .Select(rating => new StatedRating(rating.Item1, Interval.Exactly(rating.Item2!.Value))),
        ],
    };
}
