using Catalogue.Data.Families;
using Catalogue.Domain.Components;
using Catalogue.Domain.Families;
using Catalogue.Domain.Packages;
using Catalogue.Domain.Publishing;
using Catalogue.Domain.Quantities;
using Catalogue.Site.Layout;
using Microsoft.AspNetCore.Components;
using Microsoft.AspNetCore.Http;

namespace Catalogue.Site.Families;

public sealed partial class FamilyPage(FamilyQuery families, FamilyKnowledgeQuery knowledge, FamilyNeighboursQuery neighbours)
{
    private static readonly (string, string)[] Steps = [("Home", Addresses.Home), ("Part families", Addresses.Families)];

    private static readonly (string Id, string Name, int Number)[] Sections =
    [
        ("used", "Where used", 1), ("read", "Markings as read", 2), ("ratings", "Ratings", 3), ("names", "Names and makers", 4), ("versions", "Versions", 5), ("second", "Second sources", 6),
        ("alike", "Easily mistaken for", 7), ("gaps", "What the data cannot say", 8),
    ];

    private FamilyQuery.Record? _family;
    private IReadOnlyList<FamilyRatings.Row> _ratings = [];
    private IReadOnlyList<FamilyReadings.Reading> _makers = [];
    private IReadOnlyList<FamilyRatings.Disagreement> _disagreements = [];
    private IReadOnlyList<string> _gaps = [];
    private FamilyKnowledgeQuery.Knowledge _knowledge = new([], [], [], [], []);
    private FamilyNeighboursQuery.Answer.Found? _neighbours;
    private string? _movedTo;
    private bool _isMissing;
    private int _designs;

    [Parameter]
    public string Slug { get; set; } = "";

    [CascadingParameter]
    public HttpContext? Http { get; set; }

    private int Conflicts => _ratings.Count(row => row.IsInConflict);

    // The function class is the family's; without one, what reviewers recorded with the parts is the best there is.
    private string Function => (_family!.FunctionClass, _neighbours?.Asked.FunctionClass, _family.Uses.Select(use => use.Role).OfType<string>().GroupBy(role => role, StringComparer.OrdinalIgnoreCase).OrderByDescending(group => group.Count()).Select(group => group.Key).FirstOrDefault()) switch
    {
        ({ } function, _, _) => WordsFor.Capital(function.Word()),
        (null, { } recorded, _) => $"{WordsFor.Capital(recorded.Word())}, as recorded with its parts",
        (null, null, { } role) => $"Recorded as {role}; function class not recorded",
        _ => "Function not recorded",
    };

    private IReadOnlyList<string> Packages =>
        FamilyReadings.Packages(_knowledge.Packages.Concat(_family!.Uses.Select(use => use.Package).OfType<string>()).Select(PackageText.Read));

    private IEnumerable<string> Variants => _knowledge.Numbers.Where(number => number.Kind is FamilyNameKind.OrderingVariant).Select(number => number.Text);

    private string NoSources => _neighbours?.Asked switch
    {
        { FunctionClass: null } => "Its function class is not known, so no stand-in can be looked for.",
        { FunctionClass: { } function } when !CoverDirections.TellEnough(function) => $"Class and ratings of a {function.Word()} do not say what it does, and no other family that covers them was seen in the same role.",
        { Ratings.Count: 0 } => "No rating of it is stated, so nothing can be shown to cover it.",
        _ => "No other family that published teardowns use is known to cover its ratings in its package.",
    };

    private string Standfirst
    {
        get
        {
            var seen = FamilyReadings.Parts(_family!.Uses) is { } parts
                ? $"{WordsFor.Count(parts, "part")} in {WordsFor.Count(_designs, "published design")}."
                : $"Used in {WordsFor.Count(_designs, "published design")}.";
            return Conflicts == 0 ? seen : $"{seen} Sources disagree about {WordsFor.List([.. _ratings.Where(row => row.IsInConflict).Select(row => "its " + row.Kind.Word()).Distinct()])}.";
        }
    }

    protected override async Task OnInitializedAsync()
    {
        switch (await families.RunAsync(Slug, seesDrafts: false, Http?.RequestAborted ?? default))
        {
            case FamilyQuery.Answer.Found { Family: var family }:
                _knowledge = await knowledge.RunAsync(family.Slug, seesDrafts: false, Http?.RequestAborted ?? default) ?? _knowledge;
                _neighbours = await neighbours.RunAsync(family.Slug, seesDrafts: false, Http?.RequestAborted ?? default) as FamilyNeighboursQuery.Answer.Found;
                _designs = family.Uses.Select(use => use.Teardown).Distinct().Count();
                _ratings = FamilyRatings.Of(family.Uses, _knowledge.Ratings);
                _disagreements = FamilyRatings.Disagreements(_ratings);
                _gaps = FamilyReadings.Gaps(family, _knowledge, _ratings);
                _makers = FamilyReadings.Makers(family.Uses);
                _family = family;
                break;
            // Nothing has been sent yet: public pages do not stream.
            case FamilyQuery.Answer.Moved { Slug: var slug }:
                _movedTo = slug;
                Http?.Response.Redirect(Addresses.Family(slug), permanent: true);
                break;
            default:
                _isMissing = true;
                Http?.MarkMissing();
                break;
        }
    }

    private static bool IsWeb(string address) => Uri.TryCreate(address, UriKind.Absolute, out var uri) && (uri.Scheme == Uri.UriSchemeHttp || uri.Scheme == Uri.UriSchemeHttps);

    internal static string EvidenceCode(Evidence evidence) => evidence is Evidence.ReadOnPart ? "read" : evidence.Word();
}
