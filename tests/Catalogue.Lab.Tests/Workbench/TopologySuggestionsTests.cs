using Bunit;
using Catalogue.Domain.Topologies;
using Catalogue.Lab.Workbench;

namespace Catalogue.Lab.Tests.Workbench;

public sealed class TopologySuggestionsTests : LabContext
{
    private static readonly IReadOnlyList<TopologyScore> Suggested = TopologyScore.Suggest([Cue.HfTransformer, Cue.OneHvPrimarySwitch, Cue.BulkCapHv, Cue.OptocouplerOrIsolatedLink]);

    [Fact]
    public void Click_OnASuggestion_HandsOutItsTagAndStoresNothing()
    {
        var taken = new List<string>();
        var view = Render<TopologySuggestions>(parameters => parameters
            .Add(part => part.Suggested, Suggested)
            .Add(part => part.Tags, ["buck"])
            .Add(part => part.OnAccept, taken.Add));

        view.Find("button").Click();

        Assert.Equal(["flyback"], taken);
        Assert.Contains("There is an optocoupler or another isolated feedback link.", view.Find("details").TextContent, StringComparison.Ordinal);
    }

    [Fact]
    public void Render_TaggedMeanwhile_IsGone() =>
        Assert.Empty(Render<TopologySuggestions>(parameters => parameters.Add(part => part.Suggested, Suggested).Add(part => part.Tags, ["Flyback"])).Markup.Trim());
}
