using Catalogue.Domain.Codes;
using Catalogue.Domain.Packages;
using CsCheck;

namespace Catalogue.Domain.Tests.Packages;

public sealed class PackageOutlinesTests
{
    // Body in millimetre, pins, JEDEC and EIAJ outline of some well-known packages.
    [Theory]
    [InlineData("TO-252", "6.5x6.1", 3, "TO-252AA", "SC-63")]
    [InlineData("TO-263-7", "10.2x9", 7, "TO-263CB", null)]
    [InlineData("TOLL", "9.9x11.7", 8, "MO-299", null)]
    [InlineData("SOT-23", "2.9x1.3", 3, "TO-236AB", null)]
    [InlineData("SOT-23-5", "2.9x1.6", 5, "MO-178AA", "SC-74A")]
    [InlineData("SOIC-8", "4.9x3.9", 8, "MS-012AA", null)]
    [InlineData("SMA", "4.3x2.6", 2, "DO-214AC", null)]
    [InlineData("SMB", "4.3x3.6", 2, "DO-214AA", null)]
    [InlineData("SMC", "6.9x5.9", 2, "DO-214AB", null)]
    [InlineData("LQFP-48", "7x7", 48, "MS-026BBC", null)]
    [InlineData("0805", "2x1.25", 2, null, null)]
    public void Find_Name_GivesItsOutline(string name, string body, int pins, string? jedec, string? eiaj)
    {
        var outline = PackageOutlines.Find(name)!;

        Assert.Equal((name, body, pins, jedec, eiaj), (outline.Name, outline.Body?.ToString(), outline.Pins!.Value, outline.Jedec, outline.Eiaj));
    }

    [Theory]
    [InlineData("")]
    [InlineData("-")]
    [InlineData("FOO-77X")]
    [InlineData("MO-220")] // several packages share it
    [InlineData("MO-240")]
    [InlineData("805")]
    public void Find_WhatNamesNoOneOutline_GivesNone(string name) => Assert.Null(PackageOutlines.Find(name));

    [Fact]
    public void Find_TextOfAnyLength_GivesNone() => Assert.Null(PackageOutlines.Find(new string('A', 10_000_000)));

    [Fact]
    public void All_Names_AreTheirOwnAndSizesAreSizes()
    {
        Assert.Distinct(PackageOutlines.All.Select(outline => PackageOutlines.Key(outline.Name)));
        Assert.All(PackageOutlines.All, outline => Assert.Same(outline, PackageOutlines.Find(outline.Name)));
        Assert.All(PackageOutlines.All, outline => Assert.True(outline.Pins > 0 && outline.Body is null or { NarrowMm: > 0, LongMm: <= 40 }, outline.Name));
        Assert.All(PackageOutlines.All, outline => Assert.DoesNotContain(outline.Name, outline.Synonyms));
    }

    [Fact]
    public void All_Synonyms_NameNoOtherOutline() => Assert.All(
        PackageOutlines.All.SelectMany(outline => outline.Synonyms.Select(name => (outline, name))),
        entry => Assert.True(PackageOutlines.Find(entry.name) is var found && (found == entry.outline || (found is null && entry.name.StartsWith("MO-", StringComparison.Ordinal))), $"{entry.name} of {entry.outline.Name}"));

    [Fact]
    public void All_CasesOfTantalum_AreThere() =>
        Assert.All(TantalumCase.All, entry => Assert.Equal((entry.LengthMm, entry.WidthMm), PackageOutlines.Find($"case {entry.Letter}") is { Body: { } body } ? (body.LengthMm, body.WidthMm) : default));

    [Fact]
    public void LookAlikes_Pairs_AreOfTwoKnownOutlinesAndNoneTwice()
    {
        Assert.All(PackageOutlines.LookAlikes, pair => Assert.NotEqual(pair.One, pair.Other));
        Assert.All(PackageOutlines.LookAlikes.SelectMany(pair => new[] { pair.One, pair.Other }), name => Assert.Equal(name, PackageText.Read(name).Canonical));
        Assert.Distinct(PackageOutlines.LookAlikes.Select(pair => string.Join('|', new[] { pair.One, pair.Other }.Order(StringComparer.Ordinal))));
    }

    [Theory]
    [InlineData("SOT-23", "SC-59")]
    [InlineData("SC-59", "SOT-23")]
    [InlineData("LQFP-48", "TQFP-48")]
    [InlineData("SOIC-8", "SOIC-8W")]
    [InlineData("TO-252", "TO-251")]
    [InlineData("0603", "0201")]
    public void MistakenFor_Outline_NamesItsRelative(string name, string relative)
    {
        var outline = PackageOutlines.Find(name)!;

        Assert.Contains(relative, PackageOutlines.MistakenFor(outline).Select(pair => pair.Beside(outline)));
    }

    [Theory]
    [InlineData("to-220 full pack", "TO220FULLPACK")]
    [InlineData("ＳＯＴ－２３", "SOT23")]
    [InlineData("µSOP-8", "USOP8")]
    [InlineData(" \t-", "")]
    public void Key_Name_KeepsLettersAndDigits(string text, string key) => Assert.Equal(key, PackageOutlines.Key(text));

    [Fact]
    public void Key_OfAKey_IsTheKey() => Gen.String.Sample(text =>
    {
        var key = PackageOutlines.Key(text);
        Assert.Equal(key, PackageOutlines.Key(key));
        Assert.All(key, character => Assert.True(char.IsAsciiLetterUpper(character) || char.IsAsciiDigit(character)));
    });
}
