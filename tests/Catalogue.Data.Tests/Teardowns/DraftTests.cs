using Catalogue.Data.Components;
using Catalogue.Data.Rails;
using Catalogue.Data.Teardowns;
using Catalogue.Domain.Components;
using Catalogue.Domain.Figures;
using Catalogue.Domain.Rails;
using Catalogue.Testing;

namespace Catalogue.Data.Tests.Teardowns;

public sealed class DraftTests : DatabaseTests
{
    [Fact]
    public async Task Create_TheSameProductTwice_UsesBrandAndProductAgainAndGivesAnotherSlug()
    {
        var first = await Bench.TeardownAsync("Ferrowick", "Tor 600");
        var second = await Bench.TeardownAsync("FERROWICK", "tor 600");

        Assert.Equal("ferrowick-tor-600", first.Slug);
        Assert.Equal("ferrowick-tor-600-2", second.Slug);
        Assert.Equal(1, await Database.ScalarAsync<long>("select count(*) from makers"));
        Assert.Equal(1, await Database.ScalarAsync<long>("select count(*) from products"));
    }

    [Fact]
    public async Task Create_TwentyAtOnce_GivesTwentySlugsAndOneProduct()
    {
        var made = await Task.WhenAll(Enumerable.Range(0, 20).Select(_ => Bench.TeardownAsync()));

        Assert.Equal(20, made.Select(teardown => teardown.Slug).Distinct().Count());
        Assert.Equal(1, await Database.ScalarAsync<long>("select count(*) from products"));
    }

    [Theory]
    [InlineData("", "Tor 600", "TOR600", "Title", "product.brand")]
    [InlineData("Ferrowick", "  ", "TOR600", "Title", "product.name")]
    [InlineData("Ferrowick", "Tor 600", null, "Title", "product.model")]
    [InlineData("Ferrowick", "Tor 600", "TOR600", "\0", "title")]
    [InlineData("!?", "Tor 600", "TOR600", "Title", "product.brand")]
    public async Task Create_AnEmptyText_IsRefusedByItsField(string? brand, string? name, string? model, string? title, string field)
    {
        var outcome = await Database.Get<CreateTeardown>().RunAsync(new CreateTeardown.Request(brand, name, model, default, title), Bench.Reviewer);

        Assert.Equal(field, Assert.IsType<ChangeOutcome<CreateTeardown.Created>.Refused>(outcome).Field);
    }

    [Fact]
    public async Task Amend_AfterSomebodyElseSaved_IsStaleAndOverwritesNothing()
    {
        var teardown = await Bench.TeardownAsync();
        var board = await Bench.BoardAsync(teardown.Id);
        var component = await Bench.ComponentAsync(board, new ComponentForm { Role = "switch" });
        var seen = (await Database.Get<TeardownRecordQuery>().DraftAsync(teardown.Slug))!.Components[0].Version;
        var changes = Database.Get<ComponentChanges>();

        Bench.Done(await changes.AmendAsync(component, seen, form => Amended(form, x => x.Package = "TO-220"), Bench.Reviewer));
        var late = await changes.AmendAsync(component, seen, form => Amended(form, x => x.Package = "TO-247"), new Editor("M. Adair"));

        Assert.IsType<ChangeOutcome<ComponentId>.Stale>(late);
        Assert.Equal("TO-220", (await Database.Get<TeardownRecordQuery>().DraftAsync(teardown.Slug))!.Components[0].Package);
    }

    [Fact]
    public async Task Amend_WithTheVersionOfThePublishedRow_OpensTheDraftAndSaves()
    {
        var teardown = await Bench.TeardownAsync();
        var board = await Bench.BoardAsync(teardown.Id);
        var component = await Bench.ComponentAsync(board, new ComponentForm { Role = "switch" });
        await Bench.PublishAsync(teardown.Slug);
        var seen = (await Database.Get<TeardownRecordQuery>().PublishedAsync(teardown.Slug))!.Components[0].Version;

        var outcome = await Database.Get<ComponentChanges>().AmendAsync(component, seen, form => Amended(form, x => x.Package = "TO-220"), Bench.Reviewer);

        Bench.Done(outcome);
        Assert.Equal("TO-220", (await Database.Get<TeardownRecordQuery>().DraftAsync(teardown.Slug))!.Components[0].Package);
        Assert.Null((await Database.Get<TeardownRecordQuery>().PublishedAsync(teardown.Slug))!.Components[0].Package);
    }

    [Fact]
    public async Task Amend_WithThePublishedVersion_AfterAnotherRecordOpenedTheDraft_Saves()
    {
        var teardown = await Bench.TeardownAsync();
        var board = await Bench.BoardAsync(teardown.Id);
        var component = await Bench.ComponentAsync(board, new ComponentForm { Role = "switch" });
        await Bench.PublishAsync(teardown.Slug);
        var seen = (await Database.Get<TeardownRecordQuery>().PublishedAsync(teardown.Slug))!.Components[0].Version;
        await Bench.RatingAsync(component, RatingKind.RatedVoltage, 100);
        var changes = Database.Get<ComponentChanges>();

        var first = await changes.AmendAsync(component, seen, form => Amended(form, x => x.Package = "TO-220"), Bench.Reviewer);
        var second = await changes.AmendAsync(component, seen, form => Amended(form, x => x.Package = "TO-247"), new Editor("M. Adair"));

        Bench.Done(first);
        Assert.IsType<ChangeOutcome<ComponentId>.Stale>(second);
        Assert.Equal("TO-220", (await Database.Get<TeardownRecordQuery>().DraftAsync(teardown.Slug))!.Components[0].Package);
    }

    [Fact]
    public async Task AmendFacts_SeenBeforeSomebodyElsesPublication_AreStaleAndOverwriteNothing()
    {
        var teardown = await Bench.TeardownAsync();
        await Bench.PublishAsync(teardown.Slug);
        var seen = (await Database.Get<TeardownRecordQuery>().PublishedAsync(teardown.Slug))!.Revision.Version;
        Bench.Done(await AmendFactsAsync(teardown.Id, seen, form => form.Standfirst = "Theirs."));
        await Bench.PublishAsync(teardown.Slug, "Corrected.");

        var late = await AmendFactsAsync(teardown.Id, seen, form => form.Standfirst = "Mine, from before.");

        Assert.IsType<ChangeOutcome<Domain.Teardowns.TeardownId>.Stale>(late);
        Assert.Null(await Database.Get<TeardownRecordQuery>().DraftAsync(teardown.Slug));
        Assert.Equal("Theirs.", (await Database.Get<TeardownRecordQuery>().PublishedAsync(teardown.Slug))!.Revision.Standfirst);
    }

    [Fact]
    public async Task Submit_Twice_StaysWithTheFirstAndIsAudited()
    {
        var teardown = await Bench.TeardownAsync();
        var changes = Database.Get<TeardownChanges>();

        Bench.Done(await changes.SubmitAsync(teardown.Id, Bench.Reviewer));
        Bench.Done(await changes.SubmitAsync(teardown.Id, new Editor("M. Adair")));

        Assert.Equal(Bench.Reviewer.Name, (await Database.Get<TeardownRecordQuery>().DraftAsync(teardown.Slug))!.Revision.SubmittedBy);
        Assert.Equal(1, await Database.ScalarAsync<long>("select count(*) from audit_entries where action = 'send to review'"));
    }

    [Fact]
    public async Task Audit_OfARecord_SaysWhichOne()
    {
        var teardown = await Bench.TeardownAsync();
        var board = await Bench.BoardAsync(teardown.Id);

        Assert.Equal(board.Value, await Database.ScalarAsync<Guid>("select record_id from audit_entries where action = 'add board'"));
    }

    [Fact]
    public async Task Ambient_MeasuredTwice_TheWarmerOneCounts()
    {
        // 35 × 0.75 × (1 − 0.002 × 35) = 24.41 A at 60 °C, not 26.25 A at 25 °C; needed 30.54 A.
        var teardown = await Bench.TeardownAsync();
        var board = await Bench.BoardAsync(teardown.Id);
        var rail = await Bench.PackAsync(teardown.Id, 22, 600, 0.893);
        var fuse = await Bench.FuseAsync(board, rail, 35);
        await Bench.RatingAsync(fuse, RatingKind.AmbientTemperature, 60);
        await Bench.RatingAsync(fuse, RatingKind.TemperatureSlope, 0.002);

        var figure = Assert.Single((await Database.Get<TeardownRecordQuery>().DraftAsync(teardown.Slug))!.Figures, row => row.Rule == FuseHeadroom.Rule);

        Assert.Equal(0.7993, figure.Nominal!.Value, 0.0001);
    }

    [Fact]
    public async Task Amend_ByTwoAtOnce_OneSavesAndTheOtherIsTold()
    {
        var teardown = await Bench.TeardownAsync();
        var board = await Bench.BoardAsync(teardown.Id);
        var component = await Bench.ComponentAsync(board, new ComponentForm { Role = "switch" });
        var seen = (await Database.Get<TeardownRecordQuery>().DraftAsync(teardown.Slug))!.Components[0].Version;

        var outcomes = await Task.WhenAll(Enumerable.Range(0, 6).Select(n =>
            Database.Get<ComponentChanges>().AmendAsync(component, seen, form => Amended(form, x => x.Note = $"editor {n}"), new Editor($"editor {n}"))));

        Assert.Single(outcomes.OfType<ChangeOutcome<ComponentId>.Done>());
        Assert.Equal(5, outcomes.OfType<ChangeOutcome<ComponentId>.Stale>().Count());
    }

    [Fact]
    public async Task Amend_WithARailOfAnotherTeardown_IsRefusedAndNothingIsKept()
    {
        var one = await Bench.TeardownAsync();
        var other = await Bench.TeardownAsync("Sorvane", "Drover 1000");
        var board = await Bench.BoardAsync(one.Id);
        var foreign = await Bench.PackAsync(other.Id, 10.5, 1000, 0.88);
        var component = await Bench.ComponentAsync(board, new ComponentForm { Role = "pack fuse" });

        var outcome = await Database.Get<ComponentChanges>().AmendAsync(component, null, form => Amended(form, x => x.RailId = foreign.Value), Bench.Reviewer);

        Assert.IsType<ChangeOutcome<ComponentId>.Refused>(outcome);
        Assert.Null((await Database.Get<TeardownRecordQuery>().DraftAsync(one.Slug))!.Components[0].RailId);
    }

    [Fact]
    public async Task Fuse_OnARail_HasItsHeadroomInTheSameSave()
    {
        // 600 W / (0.893 × 22 V) = 30.54 A needed; 35 A × 0.75 = 26.25 A allowed; 26.25 / 30.54 = 0.8595.
        var teardown = await Bench.TeardownAsync();
        var board = await Bench.BoardAsync(teardown.Id);
        var rail = await Bench.PackAsync(teardown.Id, 22, 600, 0.893);
        await Bench.FuseAsync(board, rail, 35);

        var figure = Assert.Single((await Database.Get<TeardownRecordQuery>().DraftAsync(teardown.Slug))!.Figures, row => row.Rule == FuseHeadroom.Rule);

        Assert.Equal(0.8595, figure.Nominal!.Value, 0.0001);
        Assert.Equal(Verdict.OverGuideline, figure.Verdict);
        Assert.Contains(figure.Working.Inputs, input => input is { Symbol: "V_min", Nominal: 22, Source: "rail Pack: test 2" });
    }

    [Fact]
    public async Task Fuse_WhenItsRailIsRemoved_IsUnknownAndSaysSo()
    {
        var teardown = await Bench.TeardownAsync();
        var board = await Bench.BoardAsync(teardown.Id);
        var rail = await Bench.PackAsync(teardown.Id, 22, 600, 0.893);
        await Bench.FuseAsync(board, rail, 35);

        Bench.Done(await Database.Get<RailChanges>().RemoveAsync(rail, null, Bench.Reviewer));

        var record = (await Database.Get<TeardownRecordQuery>().DraftAsync(teardown.Slug))!;
        var figure = Assert.Single(record.Figures, row => row.Rule == FuseHeadroom.Rule);
        Assert.Null(figure.Nominal);
        Assert.Equal("rail", Assert.Single(figure.Missing).Code);
        Assert.Null(record.Components[0].RailId);
    }

    [Theory]
    [InlineData(26, 22, null, "min_voltage_v")]
    [InlineData(20, 26, 24.0, "max_voltage_v")]
    public async Task Rail_WithVoltagesThatContradict_IsRefused(double min, double nominal, double? max, string field)
    {
        var teardown = await Bench.TeardownAsync();

        var outcome = await Database.Get<RailChanges>().AddAsync(
            teardown.Id,
            new RailForm { Name = "Pack", Kind = RailKind.Pack, MinVoltageV = Bench.Measured(min), NominalVoltageV = Bench.Measured(nominal), MaxVoltageV = max is { } volts ? Bench.Measured(volts) : null },
            Bench.Reviewer);

        Assert.Equal(field, Assert.IsType<ChangeOutcome<RailId>.Refused>(outcome).Field);
    }

    [Theory]
    [InlineData(double.NaN)]
    [InlineData(double.PositiveInfinity)]
    [InlineData(-1)]
    [InlineData(0)]
    [InlineData(1e300)]
    public async Task Rating_OfNoUsableSize_IsRefused(double ampere)
    {
        var teardown = await Bench.TeardownAsync();
        var board = await Bench.BoardAsync(teardown.Id);
        var fuse = await Bench.ComponentAsync(board, new ComponentForm { Role = "pack fuse" });

        var outcome = await Database.Get<RatingChanges>().AddAsync(fuse, new RatingForm { Kind = RatingKind.RatedCurrent, Nominal = ampere }, Bench.Reviewer);

        Assert.IsType<ChangeOutcome<RatingId>.Refused>(outcome);
    }

    [Theory]
    [InlineData("35 A", 35)]
    [InlineData("500mA", 0.5)]
    [InlineData("3,15 A", 3.15)]
    [InlineData("25", 25)]
    public async Task Rating_AsTyped_IsReadInTheUnitOfItsKind(string text, double ampere)
    {
        var teardown = await Bench.TeardownAsync();
        var board = await Bench.BoardAsync(teardown.Id);
        var fuse = await Bench.ComponentAsync(board, new ComponentForm { Role = "pack fuse" });

        Bench.Done(await Database.Get<RatingChanges>().AddAsync(fuse, new RatingForm { Kind = RatingKind.RatedCurrent, Text = text }, Bench.Reviewer));

        Assert.Equal(ampere, Assert.Single((await Database.Get<TeardownRecordQuery>().DraftAsync(teardown.Slug))!.Ratings).Nominal, 1e-12);
    }

    private Task<ChangeOutcome<Domain.Teardowns.TeardownId>> AmendFactsAsync(Domain.Teardowns.TeardownId id, uint seen, Action<TeardownForm> change) => Database.Get<TeardownChanges>().AmendAsync(
        id,
        seen,
        form =>
        {
            change(form);
            return new ChangeOutcome<TeardownForm>.Done(form);
        },
        Bench.Reviewer);

    private static ChangeOutcome<ComponentForm> Amended(ComponentForm form, Action<ComponentForm> change)
    {
        change(form);
        return new ChangeOutcome<ComponentForm>.Done(form);
    }
}
