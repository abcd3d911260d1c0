using Catalogue.Data.Components;
using Catalogue.Data.Families;
using Catalogue.Data.Rails;
using Catalogue.Data.Teardowns;
using Catalogue.Domain.Components;
using Catalogue.Domain.Figures;
using Catalogue.Domain.Quantities;
using Catalogue.Domain.Rails;
using Catalogue.Testing;

namespace Catalogue.Data.Tests.Families;

public sealed class IdentifyComponentTests : IAsyncLifetime
{
    private CatalogueDatabaseFixture _database = null!;

    public async ValueTask InitializeAsync() => _database = await CatalogueDatabaseFixture.CreateAsync();

    public async ValueTask DisposeAsync() => await _database.DisposeAsync();

    private ComponentCandidatesQuery Candidates => _database.Get<ComponentCandidatesQuery>();

    private IdentifyComponent Identify => _database.Get<IdentifyComponent>();

    [Fact]
    public async Task RunAsync_APublishedRating_IsForeseenAndTakenOver()
    {
        var (known, knownSlug) = await PartAsync("Known", new ComponentForm { PartNumber = "QX4R0-65N", FunctionClass = FunctionClass.Switch });
        await new Bench(_database).RatingAsync(known, RatingKind.RatedVoltage, 40);
        await new Bench(_database).RatingAsync(known, RatingKind.PeakVoltage, 21);
        await new Bench(_database).PublishAsync(knownSlug);
        var (part, slug) = await OnRailAsync("Asked", new ComponentForm { MarkingAsRead = "QX4RO-65N", Designators = "Q7", CircuitPosition = CircuitPosition.AcrossRail });

        var offer = Assert.Single((await Candidates.RunAsync(part))!.Offers);
        var rating = Assert.Single(offer.Ratings);
        Assert.Equal((RatingKind.RatedVoltage, 40, Evidence.ReadOnPart, $"family QX4R0-65N, as recorded in {knownSlug}: photo 3"), (rating.Kind, rating.Value.Nominal, rating.Evidence, rating.Source));
        var change = Assert.Single(offer.WouldChange, change => change.Rule == VoltageMargin.Rule);
        Assert.Equal(("Q7", true), (change.Subject, change.BecomesComputable));

        var done = Bench.Done(await Identify.RunAsync(part, new IdentifyComponent.Request("qx4r0-65n", null, TakesRatings: true), Bench.Reviewer));
        Assert.Equal(("qx4r0-65n", Evidence.Inferred, FunctionClass.Switch, 1), (done.Family, done.Evidence, done.FunctionClass!.Value, done.Ratings.Count));
        var record = (await _database.Get<TeardownRecordQuery>().DraftAsync(slug))!;
        var component = Assert.Single(record.Components);
        Assert.Equal(("QX4RO-65N", FunctionClass.Switch), (component.MarkingAsRead, component.FunctionClass!.Value));
        Assert.Equal(rating.Source, Assert.Single(record.Ratings).Source);
        // What was foreseen came.
        var figure = Assert.Single(record.Figures, figure => figure.Rule == VoltageMargin.Rule);
        Assert.Equal((change.To!.Value, change.ValueTo!.Value.Nominal), (figure.Verdict, figure.Nominal!.Value));
    }

    [Fact]
    public async Task RunAsync_WithoutRatings_LeavesThemAndTheClassThatWasSaid()
    {
        var (known, _) = await PartAsync("Known", new ComponentForm { PartNumber = "QX4R0-65N", FunctionClass = FunctionClass.Switch });
        await _database.Get<FamilyChanges>().AddRatingAsync("qx4r0-65n", new RatingForm { Kind = RatingKind.RatedVoltage, Text = "40 V", Evidence = Evidence.Datasheet, Source = "page 2" }, Bench.Reviewer);
        var (part, slug) = await PartAsync("Asked", new ComponentForm { MarkingAsRead = "QX4R0-65N", FunctionClass = FunctionClass.Rectifier });
        Assert.Equal("typical of family QX4R0-65N: page 2", Assert.Single(Assert.Single((await Candidates.RunAsync(part))!.Offers).Ratings).Source);
        Bench.Done(await Identify.RunAsync(part, new IdentifyComponent.Request("qx4r0-65n", Evidence.Datasheet, TakesRatings: false), Bench.Reviewer));
        var record = (await _database.Get<TeardownRecordQuery>().DraftAsync(slug))!;
        Assert.Empty(record.Ratings);
        Assert.Equal((FunctionClass.Rectifier, Evidence.Datasheet), (record.Components[0].FunctionClass!.Value, record.Components[0].FamilyEvidence!.Value));
        Assert.NotEqual(known, part);
    }

    [Fact]
    public async Task RunAsync_ATopMark_IsDecoded()
    {
        await PartAsync("Known", new ComponentForm { PartNumber = "QX9000" });
        Bench.Done(await _database.Get<FamilyChanges>().AddTopMarkAsync("qx9000", new TopMarkForm { Code = "K7XA" }, Bench.Reviewer));
        var (part, slug) = await PartAsync("Asked", new ComponentForm { MarkingAsRead = "K7XA" });
        Assert.Equal(Evidence.Decoded, Bench.Done(await Identify.RunAsync(part, new IdentifyComponent.Request("qx9000", null, false), Bench.Reviewer)).Evidence);
        Assert.Equal("K7XA", (await _database.Get<TeardownRecordQuery>().DraftAsync(slug))!.Components[0].MarkingAsRead);
    }

    [Fact]
    public async Task RunAsync_APublishedTeardown_OpensItsDraft()
    {
        await PartAsync("Known", new ComponentForm { PartNumber = "QX9000" });
        var (part, slug) = await PartAsync("Asked", new ComponentForm { MarkingAsRead = "QX9OOO" });
        await new Bench(_database).PublishAsync(slug);
        Bench.Done(await Identify.RunAsync(part, new IdentifyComponent.Request("qx9000", null, true), Bench.Reviewer));
        Assert.Null((await _database.Get<TeardownRecordQuery>().PublishedAsync(slug))!.Components[0].FamilyId);
        Assert.NotNull((await _database.Get<TeardownRecordQuery>().DraftAsync(slug))!.Components[0].FamilyId);
    }

    [Fact]
    public async Task RunAsync_NoSuchFamilyOrPart_IsRefused()
    {
        var (part, _) = await PartAsync("Asked", new ComponentForm { MarkingAsRead = "QX9OOO" });
        Assert.IsType<ChangeOutcome<IdentifyComponent.Identified>.Refused>(await Identify.RunAsync(part, new IdentifyComponent.Request("no-such", null, true), Bench.Reviewer));
        Assert.IsType<ChangeOutcome<IdentifyComponent.Identified>.Refused>(await Identify.RunAsync(part, new IdentifyComponent.Request(null, null, true), Bench.Reviewer));
        await PartAsync("Known", new ComponentForm { PartNumber = "QX9000" });
        Assert.IsType<ChangeOutcome<IdentifyComponent.Identified>.NotFound>(await Identify.RunAsync(ComponentId.New(), new IdentifyComponent.Request("qx9000", null, true), Bench.Reviewer));
        Assert.Null(await Candidates.RunAsync(ComponentId.New()));
    }

    [Theory]
    [InlineData(null)]
    [InlineData("--- //")]
    [InlineData("🙂\u202e")]
    public async Task Candidates_NothingRead_AskNothing(string? marking)
    {
        var (part, _) = await PartAsync("Asked", new ComponentForm { MarkingAsRead = marking });
        var answer = (await Candidates.RunAsync(part))!;
        Assert.Null(answer.Question);
        Assert.Empty(answer.Offers);
    }

    [Fact]
    public async Task OpenAsync_ANumberWithoutAFamily_OpensItAndKeepsTheMarking()
    {
        var (part, slug) = await PartAsync("Asked", new ComponentForm { MarkingAsRead = "QX9000\n2317" });
        var done = Bench.Done(await Identify.OpenAsync(part, "QX9000", null, Bench.Reviewer));
        Assert.Equal(("qx9000", Evidence.ReadOnPart), (done.Family, done.Evidence));
        var component = (await _database.Get<TeardownRecordQuery>().DraftAsync(slug))!.Components[0];
        Assert.Equal(("QX9000\n2317", "QX9000"), (component.MarkingAsRead, component.PartNumber));
    }

    [Theory]
    [InlineData("")]
    [InlineData("QX9?00")]
    [InlineData("pin header, straight, single row")]
    [InlineData("--")]
    public async Task OpenAsync_WhatIsNoWholeNumber_IsRefused(string number)
    {
        var (part, _) = await PartAsync("Asked", new ComponentForm { MarkingAsRead = "QX9" });
        var refused = Assert.IsType<ChangeOutcome<IdentifyComponent.Identified>.Refused>(await Identify.OpenAsync(part, number, null, Bench.Reviewer));
        Assert.Equal("part_number", refused.Field);
    }

    private async Task<(ComponentId Part, string Slug)> PartAsync(string name, ComponentForm form)
    {
        var bench = new Bench(_database);
        var teardown = await bench.TeardownAsync(name: name);
        return (await bench.ComponentAsync(await bench.BoardAsync(teardown.Id), form), teardown.Slug);
    }

    private async Task<(ComponentId Part, string Slug)> OnRailAsync(string name, ComponentForm form)
    {
        var bench = new Bench(_database);
        var teardown = await bench.TeardownAsync(name: name);
        form.RailId = Bench.Done(await _database.Get<RailChanges>().AddAsync(teardown.Id, new RailForm { Name = "Bus", Kind = RailKind.DcBus, MaxVoltageV = Bench.Measured(20) }, Bench.Reviewer)).Value;
        return (await bench.ComponentAsync(await bench.BoardAsync(teardown.Id), form), teardown.Slug);
    }
}
