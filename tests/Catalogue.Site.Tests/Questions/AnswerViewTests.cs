using Bunit;
using Catalogue.Data.Questions;
using Catalogue.Domain.Components;
using Catalogue.Domain.Figures;
using Catalogue.Domain.Products;
using Catalogue.Domain.Publishing;
using Catalogue.Domain.Quantities;
using Catalogue.Domain.Questions;
using Catalogue.Site.Questions;

namespace Catalogue.Site.Tests.Questions;

public sealed class AnswerViewTests : BunitContext
{
    private static readonly AnswerColumn[] Ranked = [new("rank", "Rank", "number"), new("product", "Design", "text")];
    private static readonly AnswerColumn[] Designs = [new("product", "Design", "text"), new("components", "Components", "number")];

    [Fact]
    public void Answer_RankedRow_HasItsSumItsNumbersAndALinkToTheFigure()
    {
        var row = Fuse(10);
        var view = View(new Answer(Ranked, [row], NotRanked.Nothing, null, 1));
        var line = view.Find("tbody tr");
        Assert.Equal($"/teardowns/ferrowick-tor-600#{Addresses.FigureAnchor(row.Component!.Value.Value, "fuse_headroom")}", line.QuerySelector("a")!.GetAttribute("href"));
        var cells = line.QuerySelectorAll("td.wide-only").Select(cell => cell.TextContent.Replace('\u00A0', ' ')).ToList();
        Assert.Equal(["10 A × 0.75", "7.5 A", "5 A"], cells);
        Assert.Equal("1.501.501.50", line.QuerySelector(".lnh")!.TextContent);
        Assert.Equal("ample", line.QuerySelector(".verdict")!.TextContent);
        Assert.Empty(view.FindAll("[style]"));
    }

    [Fact]
    public void Answer_Ties_AreSaidInTheRank()
    {
        var view = View(new Answer(Ranked, [Fuse(10) with { Rank = 2, IsTied = true }, Fuse(10) with { Rank = 2, IsTied = true }, Fuse(20) with { Rank = 4 }], NotRanked.Nothing, null, 3));
        Assert.Equal(["2\u00A0=tied", "2\u00A0=tied", "4"], view.FindAll(".rank").Select(cell => cell.TextContent.Trim()));
    }

    [Fact]
    public void Answer_OneScale_HoldsAllRows()
    {
        var view = View(new Answer(Ranked, [Fuse(10), Fuse(20)], NotRanked.Nothing, null, 2));
        Assert.Equal(["34.38%", "81.25%"], [.. view.FindAll(".bar-col .needle").Select(needle => needle.GetAttribute("x"))]);
        Assert.Single(view.FindAll("svg.scale"));
    }

    [Fact]
    public void Answer_NotRanked_IsCountedWithReasonsAndRows()
    {
        var left = new NotRanked(3, [new NotRanked.Reason("rail", "the rail the fuse sits in", 3)], [new NotRanked.Row("ostrel-pebble", "Ostrel Pebble 20", "F2", ["the rail the fuse sits in"])]);
        var view = View(new Answer(Ranked, [Fuse(10)], left, null, 1));
        Assert.Equal("3 not ranked", view.Find(".tally a").TextContent);
        Assert.Equal("3", view.Find(".reasons .count").TextContent);
        Assert.Contains("The first 1 of 3", view.Find("#not-ranked caption").TextContent, StringComparison.Ordinal);
        Assert.Contains("Ostrel Pebble 20", view.Find("#not-ranked tbody").TextContent, StringComparison.Ordinal);
    }

    [Fact]
    public void Answer_OneOfSeveralPages_SaysHowManyAndLinksOn()
    {
        var view = View(new Answer(Ranked, [Fuse(10)], NotRanked.Nothing, "mark", 80), next: "/ask/x?after=mark");
        Assert.Equal("1 of 80 rows", view.Find("#answer .note").TextContent);
        Assert.Equal("/ask/x?after=mark", view.Find("a[rel=next]").GetAttribute("href"));
        Assert.Empty(view.FindAll(".tally"));
    }

    [Fact]
    public void Answer_Designs_AreATableWithoutAScale()
    {
        var view = View(new Answer(Designs, [Fuse(10) with { Components = 2, Family = "QLX4N30D", Rank = null }], NotRanked.Nothing, null, 1));
        Assert.Equal("/teardowns/ferrowick-tor-600", view.Find("tbody a").GetAttribute("href"));
        Assert.Contains("QLX4N30D", view.Find("tbody tr").TextContent, StringComparison.Ordinal);
        Assert.Empty(view.FindAll("svg.scale, .verdict"));
    }

    [Fact]
    public void Answer_Nothing_SaysSo() =>
        Assert.Contains("Nothing that is published could be ranked.", View(new Answer(Ranked, [], NotRanked.Nothing, null, 0)).Markup, StringComparison.Ordinal);

    [Fact]
    public void Form_Question_IsASentenceThatGets()
    {
        var form = Render<QuestionForm>(parameters => parameters.Add(x => x.Question, ReadyQuestions.Find("designs-using-family")!).Add(x => x.Family, "a\"><script>").Add(x => x.Category, "inverter"));
        Assert.Equal(("get", "/ask/designs-using-family"), (form.Find("form").GetAttribute("method"), form.Find("form").GetAttribute("action")));
        Assert.Equal("a\"><script>", form.Find("input[name=family]").GetAttribute("value"));
        Assert.Equal("inverters", form.Find("option[selected]").TextContent);
        Assert.Empty(form.FindAll("script"));
    }

    [Fact]
    public void Sum_NeedRecordedAsACurrent_IsFoundAmongTheInputs() =>
        Assert.Equal(("10\u00A0A × 0.75", "7.5\u00A0A", "5\u00A0A"), AnswerSum.Of(Fuse(10).Working) is { } sum ? (sum.Product, sum.Allowed, sum.Needed) : default);

    private IRenderedComponent<AnswerView> View(Answer answer, string? next = null) => Render<AnswerView>(parameters => parameters
        .Add(x => x.Question, ReadyQuestions.Find("thinnest-fuse-headroom")!).Add(x => x.Answer, answer).Add(x => x.IsWhole, next is null)
        .Add(x => x.NextHref, next).Add(x => x.CsvHref, "/api/v1/x?format=csv").Add(x => x.JsonHref, "/api/v1/x"));

    // A blade fuse at 25 °C that has to carry 5 A.
    private static AnswerRow Fuse(double rated)
    {
        var computed = Assert.IsType<FigureResult.Computed>(FuseHeadroom.Compute(new FuseHeadroom.Inputs
        {
            RatedCurrent = Exactly(rated),
            FunctionClass = FunctionClass.BladeFuse,
            AmbientTemperature = Exactly(25),
            HasRail = true,
            MaxCurrent = Exactly(5),
        }, LineTable.Default));
        return new AnswerRow
        {
            Teardown = "ferrowick-tor-600",
            Product = "Ferrowick Tor 600",
            Category = ProductCategory.PowerStation,
            PublishedAt = new DateTimeOffset(2025, 11, 18, 0, 0, 0, TimeSpan.Zero),
            Rank = 1,
            Component = ComponentId.New(),
            ComponentName = "F1",
            Board = "A, main",
            Low = computed.Value.Low,
            Nominal = computed.Value.Nominal,
            High = computed.Value.High,
            Verdict = computed.Verdict,
            StaticOnly = computed.StaticOnly,
            Working = computed.Working,
        };
    }

    private static Given Exactly(double value) => new(Interval.Exactly(value), Evidence.Measured, null);
}
