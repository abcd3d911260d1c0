using Catalogue.Data.Components;
using Catalogue.Data.Questions;
using Catalogue.Data.Teardowns;
using Catalogue.Domain.Figures;
using Catalogue.Domain.Products;
using Catalogue.Domain.Questions;
using Catalogue.Testing;

namespace Catalogue.Data.Tests.Questions;

public sealed class AskQueryTests : DatabaseTests
{
    private static readonly Question Thinnest = new() { Subject = QuestionSubject.Components, RankBy = new QuestionRank { Figure = FuseHeadroom.Rule } };

    [Fact]
    public async Task Ranked_ByTheLowEnd_ThinnestFirstAndTiesShareARank()
    {
        // Allowed 35 × 0.75 = 26.25 A and so on; needed 600 / (0.893 × 22) = 30.541 A.
        await FuseDesignAsync("Wide", 60);
        await FuseDesignAsync("Thin", 30);
        await FuseDesignAsync("Middle", 40);
        await FuseDesignAsync("Middle too", 40.01);

        var answer = await AskAsync(Thinnest);

        Assert.Equal(["Ferrowick Thin", "Ferrowick Middle", "Ferrowick Middle too", "Ferrowick Wide"], answer.Rows.Select(row => row.Product));
        Assert.Equal([1, 2, 2, 4], answer.Rows.Select(row => row.Rank!.Value));
        Assert.Equal([false, true, true, false], answer.Rows.Select(row => row.IsTied));
        Assert.Equal(30 * 0.75 / (600 / (0.893 * 22)), answer.Rows[0].Low!.Value, 1e-9);
        Assert.Equal(0, answer.NotRanked.Count);
    }

    [Fact]
    public async Task Ranked_UnknownFigures_AreCountedWithTheirReasonsAndNeverRanked()
    {
        await FuseDesignAsync("Known", 60);
        var teardown = await Bench.TeardownAsync("Ferrowick", "No rail");
        await Bench.FuseAsync(await Bench.BoardAsync(teardown.Id), null, 35);
        await Bench.PublishAsync(teardown.Slug);

        var answer = await AskAsync(Thinnest);

        Assert.Equal("Ferrowick Known", Assert.Single(answer.Rows).Product);
        Assert.Equal(1, answer.NotRanked.Count);
        Assert.Equal(("rail", 1), Assert.Single(answer.NotRanked.Reasons) is var reason ? (reason.Code, reason.Count) : default);
        Assert.Equal("Ferrowick No rail", Assert.Single(answer.NotRanked.Rows).Product);
    }

    [Fact]
    public async Task Ranked_PageByPage_GivesEveryRowOnceWithTheSameRanks()
    {
        for (var i = 0; i < 7; i++)
            await FuseDesignAsync($"Design {i}", 30 + (i / 2));
        var whole = await AskAsync(Thinnest);

        var rows = new List<AnswerRow>();
        string? after = null;
        do
        {
            var page = await AskAsync(Thinnest with { Limit = 2, After = after });
            Assert.Equal(7, page.Total);
            rows.AddRange(page.Rows);
            after = page.Next;
        }
        while (after is not null);

        Assert.Equal(whole.Rows.Select(row => (row.Teardown, row.Rank)), rows.Select(row => (row.Teardown, row.Rank)));
    }

    [Fact]
    public async Task Designs_OfAFamily_AreThePublishedOnesNewestFirst()
    {
        var first = await ControllerDesignAsync("First", "MWK-721");
        var second = await ControllerDesignAsync("Second", "MWK-721-TR");
        await ControllerDesignAsync("Other", "MWK-722");
        var draft = await Bench.TeardownAsync("Ferrowick", "Draft");
        await Bench.ComponentAsync(await Bench.BoardAsync(draft.Id), new ComponentForm { PartNumber = "MWK-721" });

        var answer = await AskAsync(OfFamily("mwk-721"));

        Assert.Equal([second, first], answer.Rows.Select(row => row.Teardown));
        Assert.Equal(["MWK-721", "MWK-721"], answer.Rows.Select(row => row.Family));
    }

    [Fact]
    public async Task Designs_AFamilyThatOnlyADraftMentions_AnswersAsOneThatDoesNotExist()
    {
        var draft = await Bench.TeardownAsync("Ferrowick", "Draft");
        await Bench.ComponentAsync(await Bench.BoardAsync(draft.Id), new ComponentForm { PartNumber = "SECRET-9000" });

        var known = await AskAsync(OfFamily("secret-9000"));
        var unknown = await AskAsync(OfFamily("no-such-family"));

        Assert.Equal((0, 0), (known.Rows.Count, known.Total));
        Assert.Equal((unknown.Rows.Count, unknown.Total, unknown.NotRanked.Count), (known.Rows.Count, known.Total, known.NotRanked.Count));
    }

    [Fact]
    public async Task Designs_OfACategory_AreOnlyThose()
    {
        await ControllerDesignAsync("Station", "MWK-721");
        var charger = await ControllerDesignAsync("Charger", "MWK-721", ProductCategory.Charger);

        var answer = await AskAsync(OfFamily("mwk-721") with { Category = ProductCategory.Charger });

        Assert.Equal(charger, Assert.Single(answer.Rows).Teardown);
    }

    [Fact]
    public async Task Designs_WithANewerDraftThatDropsTheFamily_StillStandAsPublished()
    {
        var slug = await ControllerDesignAsync("First", "MWK-721");
        var record = (await Database.Get<TeardownRecordQuery>().PublishedAsync(slug))!;
        Bench.Done(await Database.Get<ComponentChanges>().RemoveAsync(record.Components[0].Id, null, Bench.Reviewer));

        Assert.Equal(slug, Assert.Single((await AskAsync(OfFamily("mwk-721"))).Rows).Teardown);

        await Bench.PublishAsync(slug);
        Assert.Empty((await AskAsync(OfFamily("mwk-721"))).Rows);
    }

    [Theory]
    [InlineData(0, null)]
    [InlineData(501, null)]
    [InlineData(50, "not a mark!")]
    public async Task Ask_WhatCannotBeAsked_IsRefusedInWords(int limit, string? after)
    {
        var outcome = await Database.Get<AskQuery>().RunAsync(Thinnest with { Limit = limit, After = after });

        Assert.IsType<ChangeOutcome<Answer>.Refused>(outcome);
    }

    [Fact]
    public async Task Ask_WithTheMarkOfAnotherQuestion_IsRefused_NotBegunAgain()
    {
        for (var i = 0; i < 3; i++)
            await ControllerDesignAsync($"Design {i}", "MWK-721");
        var mark = (await AskAsync(OfFamily("mwk-721") with { Limit = 1 })).Next;
        Assert.NotNull(mark);
        var named = new PageMark("Ferrowick", Guid.NewGuid()).ToString();

        Assert.IsType<ChangeOutcome<Answer>.Refused>(await Database.Get<AskQuery>().RunAsync(OfFamily("mwk-721") with { After = named }));
        Assert.IsType<ChangeOutcome<Answer>.Refused>(await Database.Get<AskQuery>().RunAsync(Thinnest with { After = named }));
    }

    [Fact]
    public async Task ReadyQuestions_Examples_GiveRows()
    {
        await FuseDesignAsync("Known", 60);
        await ControllerDesignAsync("First", "MWK-721");

        foreach (var row in await Database.Get<ReadyQuestionsQuery>().RunAsync())
        {
            Assert.All(row.Question.Parameters, parameter => Assert.NotNull(row.Examples[parameter.Name]));
            var values = row.Examples.ToDictionary(pair => pair.Key, pair => pair.Value!);
            Assert.NotEmpty((await AskAsync(row.Question.Build(values))).Rows);
        }
    }

    private static Question OfFamily(string slug) => new() { Subject = QuestionSubject.Designs, Has = [new QuestionCondition { Family = slug }] };

    private async Task<Answer> AskAsync(Question question) => Bench.Done(await Database.Get<AskQuery>().RunAsync(question));

    private async Task FuseDesignAsync(string name, double ampere)
    {
        var teardown = await Bench.TeardownAsync("Ferrowick", name);
        await Bench.FuseAsync(await Bench.BoardAsync(teardown.Id), await Bench.PackAsync(teardown.Id, 22, 600, 0.893), ampere);
        await Bench.PublishAsync(teardown.Slug);
    }

    private async Task<string> ControllerDesignAsync(string name, string number, ProductCategory category = ProductCategory.PowerStation)
    {
        var teardown = await Bench.TeardownAsync("Ferrowick", name, category);
        await Bench.ComponentAsync(await Bench.BoardAsync(teardown.Id), new ComponentForm { Designators = "U1", PartNumber = number });
        await Bench.PublishAsync(teardown.Slug);
        return teardown.Slug;
    }
}
