using Bunit;
using Catalogue.Data.Families;
using Catalogue.Domain.Components;
using Catalogue.Domain.Families;
using Catalogue.Domain.Figures;
using Catalogue.Domain.Identification;
using Catalogue.Domain.Quantities;
using Catalogue.Lab.Workbench;
using Microsoft.Extensions.DependencyInjection;

namespace Catalogue.Lab.Tests.Workbench;

public sealed class CandidatePickTests : LabContext
{
    private readonly HandClock _clock = new();
    private readonly List<(string Stamp, CancellationToken Cancel, TaskCompletionSource<ComponentCandidatesQuery.Answer> Answer)> _asked = [];
    private readonly List<CandidatePick.Choice> _taken = [];
    private string? _refusal;

    public CandidatePickTests() => Services.AddSingleton<TimeProvider>(_clock);

    [Fact]
    public void Pick_Opened_AsksAtOnceAndShowsRankedFamilies()
    {
        var pick = Show("8O8-7A");
        Answer(0, Offer("808-7A", 0.93, reasons: "808-7A: O looks like 0"), Offer("818-7A", 0.04));

        pick.WaitForAssertion(() => Assert.Equal(2, pick.FindAll("button[data-take]").Count));
        Assert.Contains("2 families may be it, the likeliest first.", pick.Find("[role=status]").TextContent, StringComparison.Ordinal);
        var first = pick.Find("li");
        Assert.Contains("very likely, 93 %", first.TextContent, StringComparison.Ordinal);
        Assert.Contains("O looks like 0", first.TextContent, StringComparison.Ordinal);
        Assert.Equal("Alt+1", first.QuerySelector("button")!.GetAttribute("aria-keyshortcuts"));
    }

    [Fact]
    public void Pick_TypingOn_WaitsForRestAndCancelsWhatWasAsked()
    {
        var pick = Show("8");
        Type(pick, "8O");
        Type(pick, "8O8");
        Assert.Single(_asked);
        Assert.True(_asked[0].Cancel.IsCancellationRequested);
        _clock.Advance(CandidatePick.Rest / 2);
        Assert.Single(_asked);
        _clock.Advance(CandidatePick.Rest);
        pick.WaitForAssertion(() => Assert.Equal(["8", "8O8"], _asked.Select(one => one.Stamp)));

        // The overtaken answer comes last and is not shown.
        Answer(1, Offer("808-7A", 0.9));
        pick.WaitForAssertion(() => Assert.Contains("808-7A", pick.Markup, StringComparison.Ordinal));
        Answer(0, Offer("QX9000", 0.9));
        Assert.DoesNotContain("QX9000", pick.Markup, StringComparison.Ordinal);
    }

    [Fact]
    public void Pick_LettersTypedFasterThanSearchesAreCalledOff_AskOnceForTheLast()
    {
        var pick = Show("K");
        foreach (var text in (string[])["KP", "KPO", "KPO-", "KPO-3", "KPO-3I", "KPO-3I8"])
            Type(pick, text);
        _clock.Advance(CandidatePick.Rest * 2);
        pick.WaitForAssertion(() => Assert.Equal(["K", "KPO-3I8"], _asked.Select(one => one.Stamp)));
        Answer(1, Offer("KPD-318", 0.9));
        pick.WaitForAssertion(() => Assert.Contains("KPD-318", pick.Markup, StringComparison.Ordinal));
    }

    [Fact]
    public void Pick_OfAnEarlierText_CannotBeTaken()
    {
        var pick = Show("8O8");
        Answer(0, Offer("808-7A", 0.9));
        pick.WaitForAssertion(() => Assert.False(pick.Find("button[data-take='1']").HasAttribute("disabled")));
        Type(pick, "8O8-9");
        Assert.True(pick.Find("button[data-take='1']").HasAttribute("disabled"));
        Assert.Equal("true", pick.Find(".pick").GetAttribute("aria-busy"));
    }

    [Fact]
    public void Pick_ATie_SaysSoAndOffersNone()
    {
        var pick = Show("8?8-7A");
        Answer(0, Offer("808-7A", 0.45, isTied: true), Offer("818-7A", 0.42, isTied: true), Offer("888-7A", 0.02));
        pick.WaitForAssertion(() => Assert.Contains("A tie: 2 families", pick.Find("[role=status]").TextContent, StringComparison.Ordinal));
        Assert.Contains("tied, possible, 45 %", pick.Find("li").TextContent, StringComparison.Ordinal);
        Assert.Empty(pick.FindAll("button.first"));
    }

    [Fact]
    public void Pick_WhatItWouldChange_StandsBesideAndRatingsAreTakenOnDemand()
    {
        var pick = Show("QX4R0-65N");
        Answer(0, Offer("QX4R0-65N", 0.9) with
        {
            Ratings = [new KnownRating(RatingKind.RatedVoltage, Interval.Exactly(40), null, Evidence.Datasheet, "typical of family QX4R0-65N")],
            WouldChange = [new FigureChange(VoltageMargin.Rule, ComponentId.New(), null, "Q7", Verdict.Unknown, Verdict.Ample, null, Interval.Exactly(0.5), Unit.Ratio)],
        });
        pick.WaitForAssertion(() => Assert.Contains("With its ratings it would change Voltage margin of Q7: not computed, then ample, 0.50.", pick.Find(".would").TextContent, StringComparison.Ordinal));
        pick.Find("#f-take-ratings").Change(true);
        pick.Find("#f-known").Change("Datasheet");
        pick.Find("button[data-take='1']").Click();
        Assert.Equal(new CandidatePick.Choice("qx4r0-65n", null, Evidence.Datasheet, true), Assert.Single(_taken));
    }

    [Fact]
    public void Pick_Taken_LeavesTheEvidenceToHowItWasFound()
    {
        var pick = Show("QX9000");
        Answer(0, Offer("QX9000", 0.9));
        pick.WaitForElement("button[data-take='1']").Click();
        Assert.Equal(new CandidatePick.Choice("qx9000", null, null, false), Assert.Single(_taken));
    }

    [Fact]
    public void Pick_NoneOfThese_OpensAFamilyForTheNumber()
    {
        var pick = Show("QX9000");
        Answer(0, "QX9000", Offer("QX9001", 0.2));
        var last = pick.WaitForElement("button[data-take='none']");
        Assert.Equal("None of these: open a family for QX9000", last.TextContent);
        last.Click();
        Assert.Equal("QX9000", Assert.Single(_taken).Number);
    }

    [Fact]
    public void Pick_NothingNear_SaysSo()
    {
        var pick = Show("ZZ1");
        Answer(0);
        pick.WaitForAssertion(() => Assert.Contains("No family in the catalogue comes near", pick.Find("[role=status]").TextContent, StringComparison.Ordinal));
        Assert.Empty(pick.FindAll("button"));
    }

    [Fact]
    public void Pick_Refused_SaysWhy()
    {
        _refusal = "there is no such family.";
        var pick = Show("QX9000");
        Answer(0, Offer("QX9000", 0.9));
        pick.WaitForElement("button[data-take='1']").Click();
        Assert.Contains("Not taken: there is no such family.", pick.Find("[role=alert]").TextContent, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("QX9\u041E00", "U+041E")]
    [InlineData("QX\u202E9000", "U+202E")]
    [InlineData("🙂", "Nothing in the text is a letter or a digit")]
    public void Pick_AnOddMarking_SaysWhatIsOdd(string marking, string said)
    {
        var pick = Show(marking);
        Assert.Contains(pick.FindAll(".remark"), remark => remark.TextContent.Contains(said, StringComparison.Ordinal));
    }

    private IRenderedComponent<CandidatePick> Show(string marking) => Render<CandidatePick>(parameters => parameters
        .Add(pick => pick.Stamp, marking)
        .Add(pick => pick.Marking, marking)
        .Add(pick => pick.Find, cancel => Find(marking, cancel))
        .Add(pick => pick.Take, Take));

    private void Type(IRenderedComponent<CandidatePick> pick, string marking) => pick.Render(parameters => parameters
        .Add(row => row.Stamp, marking)
        .Add(row => row.Marking, marking)
        .Add(row => row.Find, cancel => Find(marking, cancel)));

    private Task<ComponentCandidatesQuery.Answer> Find(string marking, CancellationToken cancel)
    {
        var answer = new TaskCompletionSource<ComponentCandidatesQuery.Answer>();
        _asked.Add((marking, cancel, answer));
        return answer.Task;
    }

    private Task<string?> Take(CandidatePick.Choice choice)
    {
        _taken.Add(choice);
        return Task.FromResult(_refusal);
    }

    private void Answer(int asked, params ComponentCandidatesQuery.Offer[] offers) => Answer(asked, null, offers);

    private void Answer(int asked, string? number, params ComponentCandidatesQuery.Offer[] offers) =>
        _asked[asked].Answer.SetResult(new ComponentCandidatesQuery.Answer(new MarkingQuestion { Marking = _asked[asked].Stamp }, offers, number));

    private static ComponentCandidatesQuery.Offer Offer(string name, double score, bool isTied = false, string reasons = "the number fits") => new(
        new MarkingCandidatesQuery.Found(name.ToLowerInvariant(), name, new Candidate
        {
            Family = new CandidateFamily { Id = FamilyId.New(), Names = [] },
            Name = new FamilyName(name, name, FamilyNameKind.BaseNumber, null),
            Reading = new MarkingReading(name, name, "", 0),
            Score = score,
            Similarity = 0.9,
            IsTied = isTied,
            Reasons = [reasons],
        }),
        [],
        []);
}
