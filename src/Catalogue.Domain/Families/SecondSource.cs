using Catalogue.Domain.Components;
using Catalogue.Domain.Packages;

namespace Catalogue.Domain.Families;

/// <summary>Whether one family could take the place of another, as far as class, package and ratings say.</summary>
/// <remarks>
/// House rule, a screening and no promise: pin order, polarity, drive and dynamics are not compared. It is offered where the function class is the same
/// or one is the wider word for the other, no known rating falls short, at least one deciding rating is covered, and the package is the same or
/// compatible; where the package is not known, every deciding rating must be covered. Chips and other parts whose ratings do not say what they do
/// (<see cref="CoverDirections.TellEnough"/>) must also have been seen in the same role in another design; for all others that only weighs in.
/// </remarks>
public sealed record SecondSource
{
    private readonly FunctionClass? _asked;

    private SecondSource(FunctionClass? asked, string? function, IReadOnlyList<RatingCover> ratings, PackageAgreement package, string? role, int designs)
    {
        _asked = asked;
        FunctionWords = function;
        Ratings = ratings;
        Package = package;
        SharedRole = role;
        DesignsInSharedRole = designs;
    }

    /// <summary>How the function classes agree, in words; null where they do not, or one is not known.</summary>
    public string? FunctionWords { get; }

    /// <summary>Each kind that is known of the asked family, or decides for its class; empty where the classes do not agree.</summary>
    public IReadOnlyList<RatingCover> Ratings { get; }

    /// <summary>How the packages agree: the best that any two of them do.</summary>
    public PackageAgreement Package { get; }

    /// <summary>A role in which both were seen, or null.</summary>
    public string? SharedRole { get; }

    /// <summary>In how many designs without the asked family the other one was seen in that or another shared role.</summary>
    public int DesignsInSharedRole { get; }

    /// <summary>True where it is offered.</summary>
    public bool IsOffered { get; private init; }

    /// <summary>How many ratings are covered.</summary>
    public int Covered => Ratings.Count(rating => rating.Outcome == RatingCoverKind.Covers);

    /// <summary>How many could not be told.</summary>
    public int NotKnown => Ratings.Count(rating => rating.Outcome == RatingCoverKind.NotKnown);

    /// <summary>What speaks for it, then what is not known, then what speaks against it; in words.</summary>
    public IReadOnlyList<string> Reasons => [.. For, .. Open, .. Against];

    /// <summary>What speaks for it, in words.</summary>
    public IReadOnlyList<string> For
    {
        get
        {
            var reasons = new List<string>();
            if (FunctionWords is { } function)
                reasons.Add(function);
            if (Package.Kind is PackageAgreementKind.Same or PackageAgreementKind.Compatible)
                reasons.Add(PackageWords);
            reasons.AddRange(Words(RatingCoverKind.Covers));
            if (SharedRole is { } role && DesignsInSharedRole > 0)
                reasons.Add(FormattableString.Invariant($"seen as {role} too, in {DesignsInSharedRole} other {(DesignsInSharedRole == 1 ? "design" : "designs")}"));
            return reasons;
        }
    }

    /// <summary>What could not be told, in words.</summary>
    public IReadOnlyList<string> Open =>
        [
            .. Words(RatingCoverKind.NotKnown),
            .. Package.Kind is PackageAgreementKind.NotKnown ? new[] { PackageWords } : [],
            .. _asked is { } functionClass && FunctionWords is not null && !CoverDirections.TellEnough(functionClass) ? new[] { $"what it does inside is not compared: the ratings of a {functionClass.Word()} do not say it" } : [],
        ];

    /// <summary>What speaks against it, in words; empty where it is offered.</summary>
    public IReadOnlyList<string> Against =>
        [.. Words(RatingCoverKind.FallsShort).Select(words => $"falls short: {words}"), .. Package.Kind is PackageAgreementKind.EasilyMistaken or PackageAgreementKind.Different ? new[] { PackageWords } : []];

    private string PackageWords => Package.Kind switch
    {
        PackageAgreementKind.Same => $"same package: {Package.Why}",
        PackageAgreementKind.Compatible => $"compatible packages: {Package.Why}",
        PackageAgreementKind.NotKnown => "package not compared: that of one is not known",
        _ => $"packages differ: {Package.Why}",
    };

    /// <summary>Compares two families.</summary>
    /// <param name="asked">The family whose place would be taken.</param>
    /// <param name="other">The one that would take it.</param>
    public static SecondSource Of(FamilyFacts asked, FamilyFacts other)
    {
        ArgumentNullException.ThrowIfNull(asked);
        ArgumentNullException.ThrowIfNull(other);
        var function = FunctionsAgree(asked.FunctionClass, other.FunctionClass);
        IReadOnlyList<RatingCover> ratings = function is null ? [] : [.. Compare(asked, other, asked.FunctionClass!.Value)];
        var package = PackageAgreement.Best(asked.Packages, other.Packages);
        var (role, designs) = Shared(asked, other);
        var found = new SecondSource(asked.FunctionClass, function, ratings, package, role, designs);
        return found with { IsOffered = function is not null && IsCovered(asked, found) };
    }

    /// <summary>The classes whose families may stand in for one of a class: itself, the wider and the narrower ones.</summary>
    public static IReadOnlyList<FunctionClass> ClassesBeside(FunctionClass functionClass) =>
        [.. Enum.GetValues<FunctionClass>().Where(other => FunctionsAgree(functionClass, other) is not null)];

    private IEnumerable<string> Words(RatingCoverKind outcome) => Ratings.Where(rating => rating.Outcome == outcome).Select(rating => rating.Words);

    private static bool IsCovered(FamilyFacts asked, SecondSource found)
    {
        var deciding = CoverDirections.Deciding(asked.FunctionClass!.Value);
        var decided = found.Ratings.Where(rating => deciding.Contains(rating.Kind) || rating.Kind is RatingKind.RatedVoltageAc && deciding.Contains(RatingKind.RatedVoltage)).ToList();
        if (found.Ratings.Any(rating => rating.Outcome == RatingCoverKind.FallsShort) || !decided.Exists(IsCovering))
            return false;
        if (!CoverDirections.TellEnough(asked.FunctionClass.Value) && found.SharedRole is null)
            return false;
        return found.Package.Kind switch
        {
            PackageAgreementKind.Same or PackageAgreementKind.Compatible => true,
            PackageAgreementKind.NotKnown => decided.TrueForAll(IsCovering),
            _ => false,
        };

        static bool IsCovering(RatingCover rating) => rating.Outcome == RatingCoverKind.Covers;
    }

    private static string? FunctionsAgree(FunctionClass? asked, FunctionClass? other)
    {
        if (asked is not { } one || other is not { } two)
            return null;
        if (one == two)
            return $"same function: {one.Word()}";
        // A bipolar transistor is a switch by its place, not by what drives it.
        if (one is FunctionClass.BipolarTransistor || two is FunctionClass.BipolarTransistor)
            return null;
        return one.Is(two) ? $"recorded as {two.Word()}, the wider word for {one.Word()}" : two.Is(one) ? $"recorded as {two.Word()}, a kind of {one.Word()}" : null;
    }

    private static IEnumerable<RatingCover> Compare(FamilyFacts asked, FamilyFacts other, FunctionClass functionClass)
    {
        var needed = asked.Ratings.ToLookup(rating => rating.Kind);
        var offered = other.Ratings.ToLookup(rating => rating.Kind);
        var deciding = CoverDirections.Deciding(functionClass).Select(kind => kind is RatingKind.RatedVoltage && !needed.Contains(kind) && needed.Contains(RatingKind.RatedVoltageAc) ? RatingKind.RatedVoltageAc : kind);
        foreach (var kind in deciding.Concat(needed.Select(group => group.Key).Order()).Distinct())
        {
            if (CoverDirections.Of(kind, functionClass) is var direction and not CoverDirection.NotCompared)
                yield return RatingCover.Of(kind, direction, [.. needed[kind]], [.. offered[kind]]);
        }
    }

    private static (string? Role, int Designs) Shared(FamilyFacts asked, FamilyFacts other)
    {
        var roles = asked.Roles.Select(role => role.Key).ToHashSet(StringComparer.Ordinal);
        var designs = asked.Roles.Select(role => role.Product).ToHashSet();
        var shared = other.Roles.Where(role => roles.Contains(role.Key) && !designs.Contains(role.Product)).ToList();
        return (shared.GroupBy(role => role.Key).OrderByDescending(group => group.Count()).ThenBy(group => group.Key, StringComparer.Ordinal).FirstOrDefault()?.First().Words, shared.Select(role => role.Product).Distinct().Count());
    }
}
