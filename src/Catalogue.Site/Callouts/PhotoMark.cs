using Catalogue.Domain.Callouts;
using Catalogue.Domain.Figures;

namespace Catalogue.Site.Callouts;

/// <summary>A callout on a picture, with what its balloon leads to.</summary>
/// <param name="Callout">The callout.</param>
/// <param name="Label">What it points at, in words; null while it points at nothing.</param>
/// <param name="Href">The place of its row on the same page, or null.</param>
/// <param name="IsUnread">True while nobody can say which part it is.</param>
/// <param name="Worst">The worst verdict among the part's figures, or null.</param>
public sealed record PhotoMark(Callout Callout, string? Label, string? Href, bool IsUnread, Verdict? Worst)
{
    /// <summary>The place of the balloon on the page; rows link back to it.</summary>
    public static string Anchor(CalloutId callout) => $"pin-{callout}";
}
