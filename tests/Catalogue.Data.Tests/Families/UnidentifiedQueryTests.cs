using Catalogue.Data.Components;
using Catalogue.Data.Families;
using Catalogue.Data.Teardowns;
using Catalogue.Domain.Components;
using Catalogue.Domain.Families;
using Catalogue.Domain.Quantities;
using Catalogue.Testing;

namespace Catalogue.Data.Tests.Families;

public sealed class UnidentifiedQueryTests : IAsyncLifetime
{
    private CatalogueDatabaseFixture _database = null!;

    public async ValueTask InitializeAsync() => _database = await CatalogueDatabaseFixture.CreateAsync();

    public async ValueTask DisposeAsync() => await _database.DisposeAsync();

    [Fact]
    public async Task RunAsync_TheSameLookInSeveralTeardowns_IsOneItemAndIsResolvedForAll()
    {
        await PartAsync("Known", new ComponentForm { PartNumber = "808-7A" }, publish: true);
        Bench.Done(await _database.Get<FamilyChanges>().AmendAsync("808-7a", null, Regulator, Bench.Reviewer));
        var one = await PartAsync("One", new ComponentForm { MarkingAsRead = "8O8-7A\n2317", Package = "SOT23-6", Role = "buck regulator" }, publish: true);
        var two = await PartAsync("Two", new ComponentForm { MarkingAsRead = "8o8-7a / 2317", Package = "SOT-23-6" }, publish: false);
        await PartAsync("Three", new ComponentForm { MarkingAsRead = "8O8-7A\n2317", Package = "SOIC-8" }, publish: false);

        var answer = await _database.Get<UnidentifiedQuery>().RunAsync(0, 25);
        Assert.Equal(2, answer.Total);
        var item = answer.Items[0];
        Assert.Equal(("SOT-23-6", 2, 2), (item.Package, item.Teardowns, item.Components.Count));
        Assert.Equal("808-7a", item.Candidates[0].Slug);
        Assert.Equal("it has to be mended to fit", item.Why);

        var lines = Bench.Done(await _database.Get<IdentifyParts>().RunAsync(item.Key, "808-7a", null, Bench.Reviewer));
        Assert.Equal([(one.Slug, 1), (two.Slug, 1)], lines.Select(line => (line.Teardown, line.Components)).Order());
        Assert.All(lines, line => Assert.Null(line.Problem));
        var record = (await _database.Get<TeardownRecordQuery>().DraftAsync(one.Slug))!;
        var part = Assert.Single(record.Components);
        Assert.Equal(("808-7a", "8O8-7A\n2317", Evidence.Inferred, FunctionClass.Regulator), (record.FamilyOf(part)!.Slug, part.MarkingAsRead, part.FamilyEvidence!.Value, part.FunctionClass!.Value));
        // What was published stays unidentified until it is published anew.
        Assert.Null(Assert.Single((await _database.Get<TeardownRecordQuery>().PublishedAsync(one.Slug))!.Components).FamilyId);
        Assert.Equal(1, (await _database.Get<UnidentifiedQuery>().RunAsync(0, 25)).Total);
        Assert.IsType<ChangeOutcome<IReadOnlyList<IdentifyParts.Line>>.NotFound>(await _database.Get<IdentifyParts>().RunAsync(item.Key, "808-7a", null, Bench.Reviewer));
    }

    [Fact]
    public async Task RunAsync_AFamilyThatIsAdded_ShowsAsACandidateAtOnce()
    {
        await PartAsync("One", new ComponentForm { MarkingAsRead = "QX4RO65N" }, publish: false);
        Assert.Empty(Assert.Single((await _database.Get<UnidentifiedQuery>().RunAsync(0, 25)).Items).Candidates);
        await PartAsync("Two", new ComponentForm { PartNumber = "QX9000" }, publish: false);
        Bench.Done(await _database.Get<FamilyChanges>().AddAliasAsync("qx9000", "QX4R065N", FamilyNameKind.OtherNumber, Bench.Reviewer));
        Assert.Equal("qx9000", Assert.Single(Assert.Single((await _database.Get<UnidentifiedQuery>().RunAsync(0, 25)).Items).Candidates).Slug);
    }

    [Fact]
    public async Task OpenAsync_APartThatNoFamilyIsKnownFor_OpensOneForAllOfItsLook()
    {
        var one = await PartAsync("One", new ComponentForm { MarkingAsRead = "QVR-4410\n2318" }, publish: true);
        var two = await PartAsync("Two", new ComponentForm { MarkingAsRead = "qvr-4410 / 2318" }, publish: false);
        var item = Assert.Single((await _database.Get<UnidentifiedQuery>().RunAsync(0, 25)).Items);
        Assert.Equal("QVR-4410", item.Number);

        var refused = await _database.Get<IdentifyParts>().OpenAsync(item.Key, "QVR-44?0", null, Bench.Reviewer);
        Assert.Equal("part_number", Assert.IsType<ChangeOutcome<IReadOnlyList<IdentifyParts.Line>>.Refused>(refused).Field);

        var lines = Bench.Done(await _database.Get<IdentifyParts>().OpenAsync(item.Key, item.Number, null, Bench.Reviewer));
        Assert.Equal([(one.Slug, 1), (two.Slug, 1)], lines.Select(line => (line.Teardown, line.Components)).Order());
        foreach (var slug in new[] { one.Slug, two.Slug })
        {
            var record = (await _database.Get<TeardownRecordQuery>().DraftAsync(slug))!;
            var part = Assert.Single(record.Components);
            Assert.Equal(("qvr-4410", Evidence.ReadOnPart), (record.FamilyOf(part)!.Slug, part.FamilyEvidence!.Value));
        }

        Assert.Empty((await _database.Get<UnidentifiedQuery>().RunAsync(0, 25)).Items);
        Assert.IsType<ChangeOutcome<IReadOnlyList<IdentifyParts.Line>>.NotFound>(await _database.Get<IdentifyParts>().OpenAsync(item.Key, "QVR-4410", null, Bench.Reviewer));
    }

    [Fact]
    public async Task RunAsync_AMarkOfWhichSomeIsUnreadable_OffersNoNumberToOpen()
    {
        await PartAsync("One", new ComponentForm { MarkingAsRead = "QV?-4410" }, publish: false);
        Assert.Null(Assert.Single((await _database.Get<UnidentifiedQuery>().RunAsync(0, 25)).Items).Number);
    }

    [Fact]
    public async Task RunAsync_WhatIsNoNumber_SaysWhyOrIsLeftOut()
    {
        await PartAsync("One", new ComponentForm { MarkingAsRead = "472", Designators = "R1" }, publish: false);
        await PartAsync("Two", new ComponentForm { MarkingAsRead = "??????" }, publish: false);
        await PartAsync("Three", new ComponentForm { PartNumber = "Pin header 1x5, 2.54 mm pitch" }, publish: false);
        await PartAsync("Four", new ComponentForm { MarkingAsRead = "\u202e🙂" }, publish: false);
        var answer = await _database.Get<UnidentifiedQuery>().RunAsync(0, 25);
        Assert.Equal(
            ["it reads like a description", "nothing on it could be read", "nothing on it could be read"],
            answer.Items.Select(item => item.Why).Order());
    }

    [Theory]
    [InlineData("\u25a1\u25a1\u25a1\u25a1", "????")]
    [InlineData("\u202e", "\u200f\u200f")]
    [InlineData("🙂", "🙂")]
    [InlineData("---", "---")]
    public async Task RunAsync_NothingThatWasRead_IsNoLookThatPartsShare(string one, string two)
    {
        await PartAsync("One", new ComponentForm { MarkingAsRead = one, Package = "SOT-23-6" }, publish: false);
        await PartAsync("Two", new ComponentForm { MarkingAsRead = two, Package = "SOT-23-6" }, publish: false);
        await PartAsync("Known", new ComponentForm { PartNumber = "808-7A" }, publish: false);
        var answer = await _database.Get<UnidentifiedQuery>().RunAsync(0, 25);
        Assert.Equal([1, 1], answer.Items.Select(item => item.Components.Count));
        Assert.Single(Bench.Done(await _database.Get<IdentifyParts>().RunAsync(answer.Items[0].Key, "808-7a", null, Bench.Reviewer)));
        Assert.Equal(1, (await _database.Get<UnidentifiedQuery>().RunAsync(0, 25)).Total);
    }

    [Fact]
    public async Task RunAsync_LinesBeyondThoseThatAreReadForNumbers_StillTellLooksApart()
    {
        var lines = string.Join('\n', Enumerable.Range(10, 8).Select(i => $"QX{i}"));
        await PartAsync("One", new ComponentForm { MarkingAsRead = lines + "\nAA1" }, publish: false);
        await PartAsync("Two", new ComponentForm { MarkingAsRead = lines + "\nBB2" }, publish: false);
        Assert.Equal(2, (await _database.Get<UnidentifiedQuery>().RunAsync(0, 25)).Total);
    }

    [Fact]
    public async Task RunAsync_AMarkThatReadsExactly_IsNotSaidToNeedMending()
    {
        await PartAsync("Known", new ComponentForm { PartNumber = "QX4R065N" }, publish: false);
        await PartAsync("One", new ComponentForm { MarkingAsRead = "QX4R065N" }, publish: false);
        Assert.Equal("it reads QX4R065N exactly, which nobody has confirmed", Assert.Single((await _database.Get<UnidentifiedQuery>().RunAsync(0, 25)).Items).Why);
    }

    [Fact]
    public async Task RunAsync_AMarkOfSeveralFamilies_SaysThatTheyAreAsLikely()
    {
        foreach (var number in (string[])["QX71", "RT44"])
        {
            await PartAsync(number, new ComponentForm { PartNumber = number }, publish: false);
            Bench.Done(await _database.Get<FamilyChanges>().AddTopMarkAsync(number.ToLowerInvariant(), new TopMarkForm { Code = "B7" }, Bench.Reviewer));
        }

        await PartAsync("One", new ComponentForm { MarkingAsRead = "B7" }, publish: false);
        var item = Assert.Single((await _database.Get<UnidentifiedQuery>().RunAsync(0, 25)).Items);
        Assert.Equal("QX71 and RT44 are about as likely", item.Why);
        Assert.All(item.Candidates, found => Assert.True(found.Candidate.IsTied));

        // A top mark is decoded, also where nobody says how it is known.
        Bench.Done(await _database.Get<IdentifyParts>().RunAsync(item.Key, "rt44", null, Bench.Reviewer));
        var part = Assert.Single((await _database.Get<TeardownRecordQuery>().DraftAsync(item.Components[0].Slug))!.Components);
        Assert.Equal(Evidence.Decoded, part.FamilyEvidence);
    }

    [Fact]
    public async Task RunAsync_NoSuchFamilyOrLook_ChangesNothing()
    {
        await PartAsync("Known", new ComponentForm { PartNumber = "808-7A" }, publish: false);
        await PartAsync("One", new ComponentForm { MarkingAsRead = "8O8-7A" }, publish: false);
        var item = Assert.Single((await _database.Get<UnidentifiedQuery>().RunAsync(0, 25)).Items);
        Assert.IsType<ChangeOutcome<IReadOnlyList<IdentifyParts.Line>>.Refused>(await _database.Get<IdentifyParts>().RunAsync(item.Key, "no-such", null, Bench.Reviewer));
        Assert.IsType<ChangeOutcome<IReadOnlyList<IdentifyParts.Line>>.NotFound>(await _database.Get<IdentifyParts>().RunAsync("no such look", "808-7a", null, Bench.Reviewer));
        Assert.Equal(1, (await _database.Get<UnidentifiedQuery>().RunAsync(0, 25)).Total);
    }

    [Fact]
    public async Task RunAsync_TwoPeopleAtOnce_LinkEachPartOnce()
    {
        foreach (var number in (string[])["808-7A", "808-7B"])
            await PartAsync(number, new ComponentForm { PartNumber = number }, publish: false);
        var one = await PartAsync("One", new ComponentForm { MarkingAsRead = "8O8-7A" }, publish: true);
        var item = Assert.Single((await _database.Get<UnidentifiedQuery>().RunAsync(0, 25)).Items);
        var outcomes = await Task.WhenAll(
            _database.Get<IdentifyParts>().RunAsync(item.Key, "808-7a", null, Bench.Reviewer),
            _database.Get<IdentifyParts>().RunAsync(item.Key, "808-7b", null, Bench.Reviewer));
        var linked = outcomes.OfType<ChangeOutcome<IReadOnlyList<IdentifyParts.Line>>.Done>().SelectMany(done => done.Value).ToList();
        Assert.Equal(1, linked.Sum(line => line.Components));
        Assert.All(linked, line => Assert.Equal(line.Components == 0, line.Problem is not null));
        Assert.NotNull(Assert.Single((await _database.Get<TeardownRecordQuery>().DraftAsync(one.Slug))!.Components).FamilyId);
    }

    [Fact]
    public async Task RunAsync_AValueThatLooksLikeANumber_IsWorkAndAQuantityIsNot()
    {
        await PartAsync("One", new ComponentForm { Value = "QX9001", Designators = "U1" }, publish: false);
        await PartAsync("Two", new ComponentForm { Value = "100nF/50V", Designators = "C1" }, publish: false);
        await PartAsync("Three", new ComponentForm { Value = "12.5k", Designators = "U2" }, publish: false);
        await PartAsync("Four", new ComponentForm { Value = "pin header 1x5", Designators = "J1" }, publish: false);
        await PartAsync("Five", new ComponentForm { MarkingAsRead = "QX9OOO", IsFitted = false }, publish: false);
        Assert.Equal("QX9001", Assert.Single((await _database.Get<UnidentifiedQuery>().RunAsync(0, 25)).Items).Marking);
    }

    [Fact]
    public async Task RunAsync_ATie_SaysBetweenWhichAndPagesAreInOrder()
    {
        await PartAsync("Known one", new ComponentForm { PartNumber = "808-7A" }, publish: true);
        await PartAsync("Known two", new ComponentForm { PartNumber = "838-7A" }, publish: true);
        await PartAsync("One", new ComponentForm { MarkingAsRead = "8□8-7A" }, publish: false);
        await PartAsync("Two", new ComponentForm { MarkingAsRead = "ZZTOP42" }, publish: false);
        await PartAsync("Three", new ComponentForm { MarkingAsRead = "zztop42" }, publish: false);
        var first = await _database.Get<UnidentifiedQuery>().RunAsync(0, 1);
        Assert.Equal((2, "no family comes near", 2), (first.Total, first.Items[0].Why, first.Items[0].Teardowns));
        var second = Assert.Single((await _database.Get<UnidentifiedQuery>().RunAsync(1, 1)).Items);
        Assert.Contains("are about as likely", second.Why, StringComparison.Ordinal);
        Assert.Empty((await _database.Get<UnidentifiedQuery>().RunAsync(2, 1)).Items);
    }

    private static ChangeOutcome<FamilyForm> Regulator(FamilyForm form)
    {
        form.FunctionClass = FunctionClass.Regulator;
        return new ChangeOutcome<FamilyForm>.Done(form);
    }

    private async Task<CreateTeardown.Created> PartAsync(string name, ComponentForm form, bool publish)
    {
        var bench = new Bench(_database);
        var teardown = await bench.TeardownAsync(name: name);
        await bench.ComponentAsync(await bench.BoardAsync(teardown.Id), form);
        if (publish)
            await bench.PublishAsync(teardown.Slug);
        return teardown;
    }
}
