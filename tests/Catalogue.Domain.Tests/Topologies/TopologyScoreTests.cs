using System.Globalization;
using Catalogue.Domain.Tests.Samples;
using Catalogue.Domain.Text;
using Catalogue.Domain.Topologies;
using CsCheck;

namespace Catalogue.Domain.Tests.Topologies;

public sealed class TopologyScoreTests
{
    private static readonly Gen<Cue[]> GenCues = Gen.Int[0, Enum.GetValues<Cue>().Length - 1].Select(i => Enum.GetValues<Cue>()[i]).Array[0, 25];

    public static TheoryData<string[]> WorkedExamples => FigureDocument.Theory("topology.md", "## Worked examples");

    [Theory]
    [MemberData(nameof(WorkedExamples))]
    public void Suggest_WorkedExample_GivesTheDocumentedTags(string[] row)
    {
        var suggested = TopologyScore.Suggest(Parse(row[0]));

        Assert.Equal(row[1], suggested.Count == 0 ? "none" : string.Join(", ", suggested.Select(score => string.Create(CultureInfo.InvariantCulture, $"{SnakeCase.Code(score.Topology)} = {score.Score:0.0000}"))));
    }

    [Fact]
    public void Cues_OfEveryTopology_AreTheDocumentedOnes()
    {
        var rows = FigureDocument.Rows("topology.md", "## Cues");

        Assert.Equal(SnakeCase.All<Topology>(), rows.Select(row => row[0]));
        Assert.All(rows, row =>
        {
            var cues = TopologyCues.Of(SnakeCase.TryParse<Topology>(row[0])!.Value);
            Assert.Equal(Parse(row[1]), cues.Required);
            Assert.Equal(Parse(row[2]), cues.Support);
            Assert.Equal(row[3] == "none" ? [] : Parse(row[3]), cues.Against);
        });
    }

    [Fact]
    public void Codes_OfEveryCue_AreReadBack() => Assert.All(Enum.GetValues<Cue>(), cue =>
    {
        Assert.Equal(cue, Cues.TryParse(cue.Code()));
        Assert.NotEmpty(cue.Words());
    });

    [Theory]
    [InlineData(null)]
    [InlineData("")]
    [InlineData("RCD_CLAMP")]
    [InlineData("bulk_cap_near450_v")]
    public void TryParse_NoCode_IsNull(string? code) => Assert.Null(Cues.TryParse(code));

    [Fact]
    public void Words_OfEveryTopology_AreThere() => Assert.All(Enum.GetValues<Topology>(), topology =>
    {
        Assert.NotEmpty(topology.Word());
        Assert.NotEmpty(topology.Description());
    });

    [Fact]
    public void All_AnyCues_ScoresLieBetweenZeroAndOneInOrder() => GenCues.Sample(cues =>
    {
        var scores = TopologyScore.All(cues);
        Assert.Equal(Enum.GetValues<Topology>().Length, scores.Count);
        Assert.All(scores, score => Assert.InRange(score.Score, 0, 1));
        Assert.All(scores, score => Assert.True(score.MissingRequired.Count == 0 || score.Score == 0));
        Assert.Equal(scores.OrderByDescending(score => score.Score).Select(score => score.Score), scores.Select(score => score.Score));
    });

    [Fact]
    public void All_OrderAndRepetitionOfCues_DoNotMatter() => GenCues.Sample(cues =>
        Assert.Equal(TopologyScore.All(cues).Select(score => (score.Topology, score.Score)), TopologyScore.All([.. cues.Reverse(), .. cues]).Select(score => (score.Topology, score.Score))));

    [Fact]
    public void All_OneCueMore_MovesEachScoreTheWayOfItsRole() => Gen.Select(GenCues, Gen.Int[0, Enum.GetValues<Cue>().Length - 1]).Sample((cues, which) =>
    {
        var more = Enum.GetValues<Cue>()[which];
        var before = TopologyScore.All(cues).ToDictionary(score => score.Topology, score => score.Score);
        Assert.All(TopologyScore.All([.. cues, more]), after =>
        {
            var isAgainst = TopologyCues.Of(after.Topology).Against.Contains(more);
            Assert.True(isAgainst ? after.Score <= before[after.Topology] : after.Score >= before[after.Topology]);
        });
    });

    [Fact]
    public void Reasons_OfASuggestion_NameWhatFiredAndWhatIsMissing()
    {
        var forward = TopologyScore.Suggest([Cue.HfTransformer, Cue.OneHvPrimarySwitch, Cue.RcdClamp, Cue.OutputFilterInductor]).Single(score => score.Topology is Topology.ForwardSingleSwitch);

        Assert.Contains("There is exactly one primary switch rated 400 V or more.", forward.Reasons());
        Assert.Contains("Would strengthen it, not recorded: two output rectifiers.", forward.Reasons());
        Assert.Contains(
            "Needed, not recorded: a controller that senses the valley of the switch voltage.",
            TopologyScore.All([Cue.HfTransformer]).Single(score => score.Topology is Topology.QuasiResonantFlyback).Reasons());
    }

    private static Cue[] Parse(string cell) => [.. cell.Split(", ").Select(code => Cues.TryParse(code) ?? throw new InvalidDataException(code))];
}
