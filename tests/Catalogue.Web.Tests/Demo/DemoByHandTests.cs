using System.Globalization;
using Catalogue.Data.Teardowns;
using Catalogue.Domain.Components;
using Catalogue.Domain.Figures;
using Catalogue.Domain.Quantities;
using Catalogue.Domain.Rails;
using Catalogue.Domain.Tests;
using Catalogue.Web.Demo;
using Microsoft.Extensions.DependencyInjection;

namespace Catalogue.Web.Tests.Demo;

/// <summary>The pages in docs/figures/demo, which redo every figure of the demo by hand: sums, results, lines, verdicts, what is missing.</summary>
[Collection<PlantedDemoCollection>]
public sealed class DemoByHandTests(PlantedDemo demo)
{
    // Numbers of the formulas themselves, the conventions and the house rules; 6 and 10 of 10^−6, 25 °C, 60 V.
    private static readonly double[] OfTheFormulas = [0, 1, 2, 6, 10, 25, 60, 0.7, 0.75, 0.8, 1.25, 1.5];

    private static readonly (string Step, string Figure)[] Cases = [("For low", "Low"), ("For nominal", "Nominal"), ("For high", "High")];

    public static TheoryData<string> Slugs => ["ferrowick-tor-600", "quelvane-lath-65", "sorvane-drover-1000"];

    [Fact]
    public void Pages_OfTheDemo_AreOneForEachTeardownAndLinked()
    {
        Assert.Equal(DemoCatalogue.Teardowns.Count, Slugs.Count);
        var index = FigurePages.Find("demo.md");
        var pages = Directory.GetFiles(Path.Combine(Path.GetDirectoryName(index)!, "demo"), "*.md").Select(Path.GetFileNameWithoutExtension).Order(StringComparer.Ordinal);
        Assert.Equal(Slugs.Select(slug => slug.Data), pages);
        Assert.All(Slugs, slug => Assert.Contains($"(demo/{slug.Data}.md)", File.ReadAllText(index), StringComparison.Ordinal));
    }

    [Theory]
    [MemberData(nameof(Slugs))]
    public async Task Rows_OfThePage_AreOneForEachFigure(string slug)
    {
        var page = PageByHand.Of(slug);
        var figures = (await FiguresAsync(slug)).Keys.Select(key => $"{key.Rule} of {key.Subject}").Order(StringComparer.Ordinal);
        var rows = page.Figures.Concat(page.Unknown).Select(row => $"{row.Rule} of {row.Subject}").Order(StringComparer.Ordinal);

        Assert.Equal(figures, rows);
        Assert.Equal(page.Rows.Count, page.Facts.Count() + page.Steps.Count() + page.Figures.Count() + page.Unknown.Count());
    }

    [Theory]
    [MemberData(nameof(Slugs))]
    public void Sums_AsWritten_GiveTheStatedResults(string slug)
    {
        var page = PageByHand.Of(slug);
        PageByHand.Statement[] stated =
        [
            .. page.Steps.SelectMany(row => Cases.Select(one => row.Case(one.Step))),
            .. page.Figures.SelectMany(row => Cases.Select(one => row.Case(one.Figure))),
            .. page.Rows.SelectMany(row => row.Statements),
            .. page.InProse,
        ];

        Assert.All(stated, one => Assert.True(one.Is(WrittenSum.Of(one.Sum)), string.Create(CultureInfo.InvariantCulture, $"{one.Sum} is {WrittenSum.Of(one.Sum)}, not {one.Value}.")));
    }

    [Theory]
    [MemberData(nameof(Slugs))]
    public void Sums_AsWritten_TakeNothingButFactsStepsAndTheFormulasNumbers(string slug)
    {
        var page = PageByHand.Of(slug);
        var facts = page.Facts.SelectMany(row => new[] { "Low", "Nominal", "High" }.SelectMany(column => new[] { Fact(row, column), Round(WrittenSum.Of(row[column])) })).ToHashSet();
        foreach (var (step, figure) in Cases)
        {
            Assert.All(page.Steps.Concat(page.Figures), row =>
            {
                var own = page.Steps.Where(other => other.Section == row.Section && other.Subject == row.Subject).Select(other => Round(other.Case(step).Value));
                Assert.All(row.Case(row.Has("Step") ? step : figure).Numbers.Select(Round).Except(own).Except(OfTheFormulas), number => Assert.Contains(number, facts));
            });
            Assert.All(page.Steps, row =>
            {
                var later = page.Steps.Concat(page.Figures).Where(other => other.Section == row.Section && other.Subject == row.Subject);
                Assert.Contains(Round(row.Case(step).Value), later.SelectMany(other => other.Case(other.Has("Step") ? step : figure).Numbers).Select(Round));
            });
        }
    }

    [Theory]
    [MemberData(nameof(Slugs))]
    public async Task Results_AsStated_AreWhatTheProgramComputed(string slug)
    {
        var figures = await FiguresAsync(slug);
        Assert.All(PageByHand.Of(slug).Figures, row =>
        {
            var figure = figures[(row.Rule, row.Subject)];
            foreach (var (column, computed) in new[] { ("Low", figure.Low), ("Nominal", figure.Nominal), ("High", figure.High) })
            {
                var stated = row.Case(column);
                Assert.True(computed is { } value && stated.Is(value), string.Create(CultureInfo.InvariantCulture, $"{column}: {stated.Value} is stated, {computed} was computed."));
                Assert.Equal(figure.Unit, stated.UnitOf);
            }
        });
    }

    [Theory]
    [MemberData(nameof(Slugs))]
    public async Task LinesAndVerdicts_AsStated_FollowFromTheResultsAndAreThoseComputed(string slug)
    {
        var figures = await FiguresAsync(slug);
        Assert.All(PageByHand.Of(slug).Figures, row =>
        {
            var figure = figures[(row.Rule, row.Subject)];
            Assert.Equal(row["Verdict"], JudgedByHand(row));
            Assert.Equal(row["Verdict"], figure.Verdict.Word());
            Near(row.Line("Own rating"), figure.Working.Marks?.Rating);
            Near(row.Line("Guideline"), figure.Working.Marks?.Guideline);
            Near(row.Line("Ample"), figure.Working.Marks?.Ample);
            Assert.Equal(LeavesOut(row), figure.StaticOnly);
        });
    }

    [Theory]
    [MemberData(nameof(Slugs))]
    public async Task Unknown_AsStated_NamesWhatTheProgramMisses(string slug)
    {
        var figures = await FiguresAsync(slug);
        Assert.All(PageByHand.Of(slug).Unknown, row =>
        {
            var figure = figures[(row.Rule, row.Subject)];
            Assert.Equal(Verdict.Unknown, figure.Verdict);
            Assert.Equal(figure.Missing.Select(missing => missing.Code).Order(), row["Missing"].Split(", ").Select(code => code.Trim('`')).Order());
            Assert.NotEmpty(row["Why"]);
        });
    }

    [Theory]
    [MemberData(nameof(Slugs))]
    public async Task Facts_OnThePage_AreTheRecordedOnes(string slug)
    {
        var record = await PublishedAsync(slug);
        Assert.All(PageByHand.Of(slug).Facts, row =>
        {
            var rail = record.Rails.Single(rail => rail.Name == row["Rail"]);
            if (!row.Has("Part"))
            {
                var quantity = record.RailQuantities.Single(quantity => quantity.RailId == rail.Id && quantity.Kind.Word() == row["Quantity"]);
                Recorded(row, quantity.Low, quantity.Nominal, quantity.High, quantity.Kind.Unit(), quantity.Evidence.Word());
                return;
            }

            var part = record.Components.Single(part => SubjectOf(record, part) == row.Subject);
            Assert.Equal(rail.Id, part.RailId);
            if (row["Quantity"] is "in parallel" or "in series")
            {
                var count = row["Quantity"] == "in parallel" ? part.ParallelCount : part.SeriesCount;
                Recorded(row, count, count, count, Unit.Ratio, "as recorded");
                return;
            }

            var rating = record.Ratings.Single(rating => rating.ComponentId == part.Id && rating.Kind.Word() == row["Quantity"]);
            Recorded(row, rating.Low, rating.Nominal, rating.High, rating.Kind.Unit(), rating.Evidence.Word());
        });
    }

    [Theory]
    [MemberData(nameof(Slugs))]
    public async Task Facts_OnThePage_HoldEveryInputOfEveryComputedFigure(string slug)
    {
        var record = await PublishedAsync(slug);
        var facts = PageByHand.Of(slug).Facts.Select(row => (Fact(row, "Low"), Fact(row, "Nominal"), Fact(row, "High"), UnitOf(row).Unit)).ToHashSet();
        var inputs = record.Figures.Where(figure => figure.Nominal is not null).SelectMany(figure => figure.Working.Inputs).Where(input => input.Evidence is not null).ToList();

        Assert.NotEmpty(inputs);
        Assert.All(inputs, input => Assert.Contains((Round(input.Low), Round(input.Nominal), Round(input.High), input.Unit), facts));
    }

    // The words of docs/figures/demo.md; of everything that is held against lines there more is better.
    private static string JudgedByHand(PageByHand.Row row)
    {
        var (low, nominal) = (row.Case("Low").Value, row.Case("Nominal").Value);
        if (row.Line("Own rating") is not { } rating)
            return "no line";
        Assert.True(FigureRules.Find(row.Rule)!.MoreIsBetter);
        var line = row.Line("Guideline") ?? rating;
        return nominal < rating ? "over rating"
            : nominal < line ? "over guideline"
            : low < line ? "thin"
            : low >= row.Line("Ample") && !LeavesOut(row) ? "ample" : "adequate";
    }

    private static bool LeavesOut(PageByHand.Row row) => row.Has("Left out") && row["Left out"] != "nothing";

    private static void Near(double? stated, double? computed)
    {
        Assert.Equal(stated is null, computed is null);
        if (stated is { } value)
            Assert.Equal(value, computed!.Value, 1e-9);
    }

    private static void Recorded(PageByHand.Row row, double low, double nominal, double high, Unit unit, string known)
    {
        Assert.Equal((Round(low), Round(nominal), Round(high), unit), (Fact(row, "Low"), Fact(row, "Nominal"), Fact(row, "High"), UnitOf(row).Unit));
        Assert.Equal(known, row["How it is known"].Split(':')[0]);
    }

    private static double Fact(PageByHand.Row row, string column) => Round(double.Parse(row[column], CultureInfo.InvariantCulture) * UnitOf(row).Scale);

    private static double Round(double value) => double.Parse(value.ToString("E9", CultureInfo.InvariantCulture), CultureInfo.InvariantCulture);

    private static (Unit Unit, double Scale) UnitOf(PageByHand.Row row) => row["Unit"] switch
    {
        "µF" => (Unit.Farad, 1e-6),
        "mΩ" => (Unit.Ohm, 1e-3),
        "kΩ" => (Unit.Ohm, 1e3),
        "/°C" => (Unit.PerDegreeCelsius, 1),
        var sign => (UnitSymbols.Find(sign) ?? throw new FormatException($"“{sign}” is no unit."), 1),
    };

    private static string SubjectOf(TeardownRecord record, BoardComponent part) => $"{record.Boards.Single(board => board.Id == part.BoardId).Name}: {part.Name}";

    private async Task<Dictionary<(string Rule, string Subject), Figure>> FiguresAsync(string slug)
    {
        var record = await PublishedAsync(slug);
        return record.Figures.ToDictionary(figure => (
            figure.Rule,
            figure.ComponentId is { } id ? SubjectOf(record, record.Components.Single(part => part.Id == id)) : record.Rails.Single(rail => rail.Id == figure.RailId).Name));
    }

    private async Task<TeardownRecord> PublishedAsync(string slug) =>
        await demo.Services.GetRequiredService<TeardownRecordQuery>().PublishedAsync(slug, TestContext.Current.CancellationToken) ?? throw new InvalidOperationException($"{slug} is not published.");
}
