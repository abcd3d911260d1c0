namespace Catalogue.Domain.Topologies;

/// <summary>How well a stage's cues fit a topology, with the reasons.</summary>
/// <remarks>
/// <para><c>score = max(0, (3 · required + support − 2 · against) / (3 · all required + all support))</c>; zero while a required cue is missing.</para>
/// <para>Source: house rule, a starting proposal. A cue may be missing only because no photo shows the part.</para>
/// </remarks>
/// <param name="Topology">The topology.</param>
/// <param name="Score">0 to 1.</param>
/// <param name="Fired">The required and supporting cues present, in the order of the table.</param>
/// <param name="MissingRequired">The required cues not present; the score is zero while there is one.</param>
/// <param name="MissingSupport">The supporting cues not present.</param>
/// <param name="Against">The cues present that speak against it.</param>
public sealed record TopologyScore(
    Topology Topology, double Score, IReadOnlyList<Cue> Fired, IReadOnlyList<Cue> MissingRequired, IReadOnlyList<Cue> MissingSupport, IReadOnlyList<Cue> Against)
{
    /// <summary>From this score on a topology is suggested.</summary>
    public const double SuggestedFrom = 0.5;

    /// <summary>The topologies to suggest, highest score first, equal scores by code.</summary>
    /// <param name="present">The cues of one stage.</param>
    public static IReadOnlyList<TopologyScore> Suggest(IReadOnlyCollection<Cue> present) => [.. All(present).Where(score => score.Score >= SuggestedFrom)];

    /// <summary>Every topology with its score, highest first, equal scores by code; for showing what is missing.</summary>
    /// <param name="present">The cues of one stage; one named twice counts once.</param>
    public static IReadOnlyList<TopologyScore> All(IReadOnlyCollection<Cue> present)
    {
        ArgumentNullException.ThrowIfNull(present);
        var cues = present.ToHashSet();
        return [.. Enum.GetValues<Topology>()
            .Select(topology => Of(topology, cues))
            .OrderByDescending(score => score.Score)
            .ThenBy(score => Text.SnakeCase.Code(score.Topology), StringComparer.Ordinal)];
    }

    /// <summary>The reasons in words, those for it first.</summary>
    public IReadOnlyList<string> Reasons() =>
    [
        .. Fired.Select(cue => $"There is {cue.Words()}."),
        .. MissingRequired.Select(cue => $"Needed, not recorded: {cue.Words()}."),
        .. Against.Select(cue => $"Against it: {cue.Words()}."),
        .. MissingSupport.Select(cue => $"Would strengthen it, not recorded: {cue.Words()}."),
    ];

    private static TopologyScore Of(Topology topology, HashSet<Cue> present)
    {
        var cues = TopologyCues.Of(topology);
        List<Cue> fired = [.. cues.Required.Concat(cues.Support).Where(present.Contains)];
        List<Cue> missing = [.. cues.Required.Where(cue => !present.Contains(cue))];
        List<Cue> against = [.. cues.Against.Where(present.Contains)];
        var weight = fired.Sum(cue => cues.Required.Contains(cue) ? TopologyCues.RequiredWeight : TopologyCues.SupportWeight) + (against.Count * TopologyCues.AgainstWeight);
        var whole = (cues.Required.Count * TopologyCues.RequiredWeight) + (cues.Support.Count * TopologyCues.SupportWeight);
        return new TopologyScore(
            topology, missing.Count > 0 ? 0 : Math.Max(0, (double)weight / whole), fired, missing, [.. cues.Support.Where(cue => !present.Contains(cue))], against);
    }
}
