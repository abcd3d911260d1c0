using Catalogue.Data.Families;
using Catalogue.Domain.Components;
using Catalogue.Domain.Packages;
using Catalogue.Domain.Publishing;
using Catalogue.Domain.Quantities;
using Catalogue.Site.Layout;
using Microsoft.AspNetCore.Components;
using Microsoft.AspNetCore.Http;

namespace Catalogue.Site.Families;

public sealed partial class FamilyPage(FamilyQuery families)
{
    private static readonly (string, string)[] Steps = [("Home", Addresses.Home), ("Part families", Addresses.Families)];

    private FamilyQuery.Record? _family;
    private IReadOnlyList<FamilyRatings.Row> _ratings = [];
    private IReadOnlyList<FamilyReadings.Reading> _makers = [];
    private string? _movedTo;
    private bool _isMissing;
    private int _designs;

    [Parameter]
    public string Slug { get; set; } = "";

    [CascadingParameter]
    public HttpContext? Http { get; set; }

    private int Conflicts => _ratings.Count(row => row.IsInConflict);

    // The function class is the family's; without one, what reviewers wrote beside the parts is the best there is.
    private string Function => (_family!.FunctionClass, _family.Uses.Select(use => use.Role).OfType<string>().GroupBy(role => role, StringComparer.OrdinalIgnoreCase).OrderByDescending(group => group.Count()).Select(group => group.Key).FirstOrDefault()) switch
    {
        ({ } function, _) => WordsFor.Capital(function.Word()),
        (null, { } role) => $"Recorded as {role}; function class not recorded",
        _ => "Function not recorded",
    };

    private IReadOnlyList<string> Packages =>
        [.. _family!.Uses.Select(use => use.Package).OfType<string>().Select(package => PackageText.Read(package).Grouping).GroupBy(package => package, StringComparer.OrdinalIgnoreCase).OrderByDescending(group => group.Count()).Select(group => group.Key).Take(4)];

    private string Standfirst
    {
        get
        {
            var seen = FamilyReadings.Parts(_family!.Uses) is { } parts
                ? $"{WordsFor.Count(parts, "part")} in {WordsFor.Count(_designs, "published design")}."
                : $"Used in {WordsFor.Count(_designs, "published design")}.";
            return Conflicts == 0 ? seen : $"{seen} Teardowns disagree about {WordsFor.List([.. _ratings.Where(row => row.IsInConflict).Select(row => "its " + row.Kind.Word()).Distinct()])}.";
        }
    }

    protected override async Task OnInitializedAsync()
    {
        switch (await families.RunAsync(Slug, seesDrafts: false, Http?.RequestAborted ?? default))
        {
            case FamilyQuery.Answer.Found { Family: var family }:
                _designs = family.Uses.Select(use => use.Teardown).Distinct().Count();
                _ratings = FamilyRatings.Of(family.Uses);
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
