using Bunit;
using Catalogue.Data.Families;
using Catalogue.Domain.Components;
using Catalogue.Domain.Quantities;
using Catalogue.Lab.Workbench;
using Microsoft.AspNetCore.Components;
using Microsoft.Extensions.DependencyInjection;

namespace Catalogue.Lab.Tests.Workbench;

public sealed class ComponentRowTests : LabContext
{
    [Fact]
    public void Row_OfARecord_ShowsItsValues()
    {
        var row = Render(Records.Fuse());

        Assert.Equal("pack fuse", row.Find("#f-role").GetAttribute("value"));
        Assert.Equal("35", row.Find("#f-mark").GetAttribute("value") ?? row.Find("#f-mark").TextContent);
        Assert.Equal("F1", row.Find("#f-ref").GetAttribute("value"));
        Assert.Equal("pack", row.Find($"#f-rail option[value='{Records.Pack.Id}']").TextContent);
        Assert.Contains("35 A".Replace(' ', '\u00A0'), row.Find(".ratings").TextContent, StringComparison.Ordinal);
        Assert.Contains("read on part", row.Find(".ratings").TextContent, StringComparison.Ordinal);
    }

    [Fact]
    public void Row_FieldLeft_CallsBackWithTheNewText()
    {
        var edits = 0;
        var component = Records.Fuse();
        var hand = RowInHand.Of(component, Records.NoFamilies);
        var row = Render(component, hand, () => edits++);

        row.Find("#f-mark").Change("35 A\n32 V");
        row.Find("#f-kind").Change("Fuse");

        Assert.Equal(2, edits);
        Assert.Equal("35 A\n32 V", hand.Form.MarkingAsRead);
        Assert.Equal(FunctionClass.Fuse, hand.Form.FunctionClass);
        Assert.True(hand.IsDue);
    }

    [Fact]
    public void Row_SomebodyElseWasFirst_ShowsBothValuesAndKeepsTheFields()
    {
        var component = Records.Fuse();
        var hand = RowInHand.Of(component, Records.NoFamilies);
        hand.Form.Note = "mine";
        hand.Edited();
        hand.Clashed(Records.Fuse(component.Id, version: 9, note: "theirs"));

        var row = Render(component, hand);

        var alert = row.Find("[role=alert]").TextContent;
        Assert.Contains("mine", alert, StringComparison.Ordinal);
        Assert.Contains("theirs", alert, StringComparison.Ordinal);
        Assert.Equal("mine", row.Find("#f-note").GetAttribute("value"));
    }

    [Fact]
    public void Row_EveryControl_HasALabel()
    {
        var row = Render(Records.Fuse());

        Assert.All(
            row.FindAll("input, select, textarea"),
            control => Assert.True(control.Closest("label") is not null || control.HasAttribute("aria-label"), control.OuterHtml));
    }

    [Fact]
    public void Row_MarkingWhileItIsTyped_IsLookedForAndSavedWithTheFamilyTaken()
    {
        var clock = new HandClock();
        Services.AddSingleton<TimeProvider>(clock);
        var asked = new List<string?>();
        var taken = new List<string?>();
        var component = Records.Fuse();
        var hand = RowInHand.Of(component, Records.NoFamilies);
        var row = Render(component, hand, find: part =>
        {
            asked.Add(part.MarkingAsRead);
            return new ComponentCandidatesQuery.Answer(null, [], "QX9000");
        }, take: choice => taken.Add(choice.Number));

        row.Find("#f-mark").Input("QX9OOO");
        clock.Advance(CandidatePick.Rest);
        row.WaitForAssertion(() => Assert.Equal(["35", "QX9OOO"], asked));
        Assert.False(hand.IsDue);
        row.WaitForElement("button[data-take='none']:not([disabled])").Click();

        Assert.Equal("QX9000", Assert.Single(taken));
        Assert.True(hand.IsDue);
        Assert.Equal("QX9OOO", hand.Form.MarkingAsRead);
    }

    private IRenderedComponent<ComponentRow> Render(
        BoardComponent component,
        RowInHand? hand = null,
        Action? edited = null,
        Func<BoardComponent, ComponentCandidatesQuery.Answer>? find = null,
        Action<CandidatePick.Choice>? take = null) => Render<ComponentRow>(parameters => parameters
        .Add(row => row.Row, hand ?? RowInHand.Of(component, Records.NoFamilies))
        .Add(row => row.Component, component)
        .Add(row => row.Rails, [Records.Pack])
        .Add(row => row.Ratings,
        [
            new Rating
            {
                RevisionId = Records.Revision, Id = RatingId.New(), ComponentId = component.Id, Kind = RatingKind.RatedCurrent, Low = 35, Nominal = 35, High = 35, Evidence = Evidence.ReadOnPart,
            },
        ])
        .Add(row => row.AddRating, _ => Task.FromResult<string?>(null))
        .Add(row => row.RemoveRating, _ => Task.FromResult<string?>(null))
        .Add(row => row.FindCandidates, find is null ? null : (part, _) => Task.FromResult(find(part)))
        .Add(row => row.Identify, choice =>
        {
            take?.Invoke(choice);
            return Task.FromResult<string?>(null);
        })
        .Add(row => row.OnEdited, EventCallback.Factory.Create(this, () => edited?.Invoke())));
}
