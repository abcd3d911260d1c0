namespace Catalogue.Data.Families;

/// <summary>Which revisions speak of a family to whom, as conditions of queries over <c>revisions r</c>.</summary>
internal static class FamilyVisibility
{
    /// <summary>Readers learn from published revisions, the lab also from those being worked on; superseded and withdrawn ones say nothing.</summary>
    public static string Seen(bool seesDrafts) => seesDrafts ? "r.state in ('published', 'draft', 'in_review')" : "r.state = 'published'";
}
