using Catalogue.Domain.Figures;
using Catalogue.Domain.Teardowns;
using Catalogue.Domain.Text;

namespace Catalogue.Domain.Topologies;

/// <summary>What the parts of a board suggest, as long as the reviewer has not tagged it. A suggestion is never stored.</summary>
public static class BoardTopologies
{
    /// <summary>The topologies to suggest for each board that has parts, highest score first, without those in its tags.</summary>
    /// <param name="facts">The facts of the revision.</param>
    /// <param name="boards">Its boards.</param>
    public static IReadOnlyDictionary<BoardId, IReadOnlyList<TopologyScore>> Suggest(RevisionFacts facts, IReadOnlyList<Board> boards)
    {
        ArgumentNullException.ThrowIfNull(boards);
        var cues = BoardCues.ByBoard(facts);
        return boards.Where(board => cues.ContainsKey(board.Id)).ToDictionary(
            board => board.Id,
            board => (IReadOnlyList<TopologyScore>)[.. TopologyScore.Suggest(cues[board.Id]).Where(score => !IsTagged(score.Topology, board.Topology))]);
    }

    /// <summary>True when a topology is among tags, by its name or its code, however it is spaced and capitalised.</summary>
    public static bool IsTagged(Topology topology, IEnumerable<string> tags)
    {
        ArgumentNullException.ThrowIfNull(tags);
        var (word, code) = (Bare(topology.Word()), Bare(SnakeCase.Code(topology)));
        return tags.Select(Bare).Any(tag => tag == word || tag == code);
    }

    private static string Bare(string text) => string.Concat(text.Where(char.IsLetterOrDigit)).ToUpperInvariant();
}
