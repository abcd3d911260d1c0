using Bunit;
using Catalogue.Domain.Components;
using Catalogue.Domain.Figures;
using Catalogue.Lab.Figures;
using Catalogue.Lab.Workbench;

namespace Catalogue.Lab.Tests.Figures;

public sealed class FiguresPaneTests : LabContext
{
    private readonly BoardComponent _fuse = Records.Fuse();

    [Fact]
    public void Unknown_MissingInputs_AreNamedAndLeadToTheirFields()
    {
        var asked = new List<(Figure, string)>();
        var figure = Records.UnknownHeadroom(_fuse.Id);
        var pane = Render<FiguresPane>(parameters => parameters
            .Add(x => x.Figures, [figure])
            .Add(x => x.Gaps, Gap.Of(Records.Record([_fuse], [figure]), Records.Board))
            .Add(x => x.NameOf, LabWordsOf)
            .Add(x => x.OnMissing, asked.Add));

        var links = pane.FindAll(".minis .cap .link");
        Assert.Equal(figure.Missing.Select(missing => missing.Words), links.Select(link => link.TextContent));
        foreach (var index in Enumerable.Range(0, links.Count))
            pane.FindAll(".minis .cap .link")[index].Click();
        Assert.Equal(figure.Missing.Select(missing => (figure, missing.Code)), asked);
        Assert.Contains("not computed", pane.Markup, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(Verdict.OverRating, "over rating")]
    [InlineData(Verdict.OverGuideline, "over guideline")]
    [InlineData(Verdict.Thin, "thin")]
    [InlineData(Verdict.Adequate, "adequate")]
    [InlineData(Verdict.Ample, "ample")]
    [InlineData(Verdict.Unknown, "unknown")]
    public void VerdictMark_EachVerdict_SaysItsWordAndCarriesItsCode(Verdict verdict, string word)
    {
        var mark = Render<VerdictMark>(parameters => parameters.Add(x => x.Verdict, verdict)).Find(".verdict");
        var shapeOnly = Render<VerdictMark>(parameters => parameters.Add(x => x.Verdict, verdict).Add(x => x.IsWordHidden, true)).Find(".verdict");

        Assert.Equal(word, mark.TextContent);
        Assert.Equal(word.Replace(' ', '-'), mark.GetAttribute("data-verdict"));
        Assert.Equal(word, shapeOnly.QuerySelector(".hidden")?.TextContent);
        Assert.Equal(word, shapeOnly.GetAttribute("title"));
    }

    private string LabWordsOf(Figure figure) => figure.ComponentId == _fuse.Id ? _fuse.Name : "other";
}
