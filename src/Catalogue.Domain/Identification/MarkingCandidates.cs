using Catalogue.Domain.Components;
using Catalogue.Domain.Families;
using Catalogue.Domain.Packages;

namespace Catalogue.Domain.Identification;

/// <summary>Ranks the families that a marking may belong to.</summary>
/// <remarks>
/// <para>
/// Bayes: a family's weight is how likely its name is read as the marking (<see cref="MarkingChannel"/>), times how likely the package, the function and
/// the maker are noted so for it, times how often it was seen elsewhere. Scores are those weights over their sum and the weight of "none of these".
/// </para>
/// <para>House rule: the weights were fitted on mangled invented numbers of one half of the naming schemes and checked on the other;
/// <c>docs/identification.md</c> holds both.</para>
/// </remarks>
public static class MarkingCandidates
{
    /// <summary>Two candidates are tied when the better one is less than this many times as probable.</summary>
    public const double TieRatio = 1.5;

    /// <summary>A lone candidate from this score on may be offered as the one to take.</summary>
    public const double TakeScore = 0.9;

    /// <summary>The most candidates of an answer.</summary>
    public const int MaxCandidates = 20;

    private const double NoneOfThese = 13;
    private const double NewNeighbour = 9;
    private const double NewNeighbourEachEdit = 1.5;
    private const double ClassUnknown = 0.7;
    private const double ClassRelated = 0.4;
    private const double ClassOther = 5;
    private const double PackageUnknown = 0.7;
    private const double PackageMistaken = 2;
    private const double PackageOther = 5;
    private const double MakerUnknown = 0.4;
    private const double MakerOther = 2.2;
    private const double SeenWeight = 1.0;
    private const double BesideWeight = 0.5;
    private const double TopMarkCost = 0.7;
    private const double LeastScore = 1e-4;

    /// <summary>
    /// The likeliest families, best first, at most <see cref="MaxCandidates"/>; empty where the marking holds no letter or digit or no family comes near.
    /// Equal scores keep the order of their names.
    /// </summary>
    /// <param name="question">What was read and what is known.</param>
    /// <param name="readings">The marking's readings (<see cref="MarkingReadings.Of"/>).</param>
    /// <param name="families">Families that may come near; those that do not fall out here.</param>
    public static IReadOnlyList<Candidate> Rank(MarkingQuestion question, IReadOnlyList<MarkingReading> readings, IEnumerable<CandidateFamily> families)
    {
        ArgumentNullException.ThrowIfNull(question);
        ArgumentNullException.ThrowIfNull(readings);
        ArgumentNullException.ThrowIfNull(families);
        if (readings.Count == 0)
            return [];
        var package = question.Package is { } written && PackageText.Read(written) is PackageReading.Recognised read ? read : null;
        // A marking meets families of a handful of packages, over and over.
        var packages = new Dictionary<string, PackageAgreement>(StringComparer.OrdinalIgnoreCase);
        var weighed = new List<Weighed>();
        foreach (var family in families)
        {
            var best = Nearest(readings, family) with { Package = Agreement(package, family, packages) };
            weighed.Add(best with { Cost = best.TextCost + Context(question, best) });
        }

        var sum = NoneWeight(weighed) + weighed.Sum(one => one.Weight);
        var ranked = weighed
            .Where(one => one.Weight / sum >= LeastScore)
            .OrderBy(one => one.Cost)
            .ThenBy(one => one.Name.Letters, StringComparer.Ordinal)
            .ThenBy(one => one.Family.Id.Value)
            .Take(MaxCandidates)
            .ToList();
        var sharers = ranked.Where(one => one.Name.Kind == FamilyNameKind.TopMark).GroupBy(one => one.Name.Letters, StringComparer.Ordinal).ToDictionary(group => group.Key, group => group.Count(), StringComparer.Ordinal);
        return
        [
            .. ranked.Select((one, place) => new Candidate
            {
                Family = one.Family,
                Name = one.Name,
                Reading = one.Reading,
                Score = one.Weight / sum,
                Similarity = MarkingDistance.Similarity(one.Reading.Signs, one.Name.Letters),
                IsTied = IsTied(ranked, place),
                Reasons = Reasons(question, one, sharers.GetValueOrDefault(one.Name.Letters)),
            }),
        ];
    }

    /// <summary>
    /// The candidate that may be offered as the one to take: the first, where the number was read exactly, it is probable enough and no other comes near
    /// it. Else null: a number that had to be mended is for a person to confirm.
    /// </summary>
    public static Candidate? ToTake(IReadOnlyList<Candidate> candidates)
    {
        ArgumentNullException.ThrowIfNull(candidates);
        return candidates is [{ IsTied: false, Score: >= TakeScore } first, ..] && first.Reading.Signs == first.Name.Letters ? first : null;
    }

    /// <summary>How far the nearest name of a family lies from the marking, in nats; context is not weighed.</summary>
    public static double TextCost(IReadOnlyList<MarkingReading> readings, CandidateFamily family) => Nearest(readings, family).TextCost;

    private static Weighed Nearest(IReadOnlyList<MarkingReading> readings, CandidateFamily family)
    {
        var (cost, best, with) = (double.PositiveInfinity, family.Names[0], readings[0]);
        foreach (var name in family.Names)
        {
            var kind = name.Kind == FamilyNameKind.TopMark ? TopMarkCost : 0;
            foreach (var reading in readings)
            {
                if (reading.Cost + kind >= cost)
                    continue;
                var here = kind + reading.Cost + MarkingChannel.Cost(reading.Signs, name.Letters);
                if (here < cost)
                    (cost, best, with) = (here, name, reading);
            }
        }

        return new Weighed(family, best, with, cost, cost, null);
    }

    // A part of none of these families. Where a series stands in the catalogue, a member of it that does not is the likelier the more neighbours there are.
    private static double NoneWeight(List<Weighed> weighed) =>
        Math.Exp(-NoneOfThese)
        + weighed
            .Select(one => MarkingChannel.Edits(one.Reading.Signs, one.Name.Letters))
            .Where(edits => edits > 0)
            .Sum(edits => Math.Exp(-NewNeighbour - (NewNeighbourEachEdit * edits)));

    // Null where the question names no package that is known.
    private static PackageAgreement? Agreement(PackageReading.Recognised? package, CandidateFamily family, Dictionary<string, PackageAgreement> known) =>
        package is null ? null : PackageAgreement.Best(family.Packages.Select(name =>
        {
            if (!known.TryGetValue(name, out var agreement))
                known[name] = agreement = PackageAgreement.Of(package, PackageText.Read(name));
            return agreement;
        }));

    private static double Context(MarkingQuestion question, Weighed one)
    {
        var family = one.Family;
        var cost = one.Package?.Kind switch
        {
            PackageAgreementKind.NotKnown => PackageUnknown,
            PackageAgreementKind.EasilyMistaken => PackageMistaken,
            PackageAgreementKind.Different => PackageOther,
            _ => 0,
        };
        if (question.FunctionClass is { } asked)
            cost += family.FunctionClass is not { } known ? ClassUnknown : known == asked ? 0 : known.Is(asked) || asked.Is(known) ? ClassRelated : ClassOther;
        if (question.Maker is { } maker)
            cost += family.Makers.Count == 0 ? MakerUnknown : family.Makers.Contains(maker) ? 0 : MakerOther;
        return cost - (SeenWeight * Math.Log(1 + family.SeenInDesigns)) - (BesideWeight * Math.Log(1 + family.SeenBeside));
    }

    private static bool IsTied(List<Weighed> ranked, int place)
    {
        var near = Math.Log(TieRatio);
        return (place > 0 && ranked[place].Cost - ranked[place - 1].Cost < near) || (place + 1 < ranked.Count && ranked[place + 1].Cost - ranked[place].Cost < near);
    }

    private static List<string> Reasons(MarkingQuestion question, Weighed one, int sharers)
    {
        var reasons = new List<string>();
        if (one.Reading.How.Length > 0)
            reasons.Add($"read {one.Reading.How}");
        reasons.Add(Differences(one.Reading.Signs, one.Name));
        if (one.Name.Kind == FamilyNameKind.TopMark)
        {
            reasons.Add(one.Name.Maker is { } maker ? $"{one.Name.Text} is a top mark of {maker}" : $"{one.Name.Text} is a top mark");
            if (sharers > 1)
                reasons.Add(FormattableString.Invariant($"{sharers} families share this top mark: the maker or the circuit decides"));
        }

        if (one.Package is { } package)
        {
            reasons.Add(package.Kind switch
            {
                PackageAgreementKind.NotKnown => "its package is not known",
                PackageAgreementKind.Same or PackageAgreementKind.Compatible => $"comes in {question.Package}",
                PackageAgreementKind.EasilyMistaken => $"known in {string.Join(", ", one.Family.Packages)}, easily mistaken for {question.Package}: {package.Why}",
                _ => $"known in {string.Join(", ", one.Family.Packages)}, not in {question.Package}",
            });
        }

        if (question.FunctionClass is { } asked)
        {
            reasons.Add(
                one.Family.FunctionClass is not { } known ? "its function is not known"
                : known.Is(asked) || asked.Is(known) ? $"is a {known.Word()}"
                : $"is a {known.Word()}, not a {asked.Word()}");
        }

        if (question.Maker is { } read)
            reasons.Add(one.Family.Makers.Count == 0 ? "its maker is not known" : one.Family.Makers.Contains(read) ? "the maker fits" : "known from another maker");
        if (one.Family.SeenInDesigns > 0)
            reasons.Add(one.Family.SeenInDesigns == 1 ? "seen in one other design" : FormattableString.Invariant($"seen in {one.Family.SeenInDesigns} other designs"));
        if (one.Family.SeenBeside > 0)
            reasons.Add(one.Family.SeenBeside == 1 ? "there beside a family of this board" : FormattableString.Invariant($"in {one.Family.SeenBeside} of them beside a family of this board"));
        return reasons;
    }

    private static string Differences(string signs, FamilyName name)
    {
        if (signs == name.Letters)
            return $"reads {name.Text} exactly";
        var steps = MarkingDistance.Steps(signs, name.Letters);
        var end = steps.Count;
        while (end > 0 && steps[end - 1].Observed is null)
            end--;
        var start = end;
        while (start > 0 && steps[start - 1].Expected is null)
            start--;
        var words = new List<string>();
        foreach (var step in steps.Take(start).Where(step => !step.IsEqual))
        {
            words.Add(step switch
            {
                (MarkingFold.Unreadable, { } expected) => $"{expected} could not be read",
                ({ } observed, { } expected) when LookAlikes.Cost(observed, expected) < LookAlikes.Unlike => $"{observed} looks like {expected}",
                ({ } observed, { } expected) => $"{observed} instead of {expected}",
                (null, { } expected) => $"{expected} is missing",
                ({ } observed, null) => $"{observed} is one too many",
                _ => throw new InvalidOperationException("A step compares nothing."),
            });
        }

        if (end < steps.Count)
            words.Add($"ends before {string.Concat(steps.Skip(end).Select(step => step.Expected))}");
        if (start < end)
            words.Add($"{string.Concat(steps.Take(end).Skip(start).Select(step => step.Observed))} stands behind it");
        return $"{name.Text}: {string.Join(", ", words)}";
    }

    private sealed record Weighed(CandidateFamily Family, FamilyName Name, MarkingReading Reading, double TextCost, double Cost, PackageAgreement? Package)
    {
        public double Weight => Math.Exp(-Cost);
    }
}
