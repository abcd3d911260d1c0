using Catalogue.Domain.Quantities;

namespace Catalogue.Domain.Packages;

/// <summary>The outline of a package: what the trade calls it, and its nominal shape.</summary>
/// <remarks>
/// Sizes are nominal ones for telling packages apart, never for drawing a land pattern.
/// Source: JEDEC JEP95 outlines (TO, DO, MO, MS), EIAJ and JEITA outlines (SC), EIA-535 (tantalum cases), EIA size codes of chips; trade usage.
/// </remarks>
/// <param name="Name">The canonical name as the trade writes it, such as <c>SOT-23</c>, <c>SMA</c>, <c>0805</c>.</param>
/// <param name="Kind">What sort of body it is.</param>
/// <param name="Leads">Leads or pads without <paramref name="Tab"/>; null where the name does not say how many.</param>
/// <param name="Tab">What leads heat away beside them.</param>
/// <param name="Body">Nominal body without leads; null where the name does not say it. A leadless outline has the usual size of several.</param>
/// <param name="AlsoCalled">The other name that is as common as <paramref name="Name"/>, such as DPAK; else null.</param>
/// <param name="OtherNames">More names of the trade.</param>
/// <param name="Jedec">The JEDEC outline, or null.</param>
/// <param name="Eiaj">The EIAJ or JEITA outline, or null.</param>
/// <param name="Metric">The metric size code of a chip, or null.</param>
/// <param name="Confidence">How well the row is founded.</param>
/// <param name="Note">What sets it apart, or null.</param>
public sealed record PackageOutline(
    string Name,
    PackageKind Kind,
    int? Leads,
    PackageTab Tab,
    PackageSize? Body,
    string? AlsoCalled,
    IReadOnlyList<string> OtherNames,
    string? Jedec,
    string? Eiaj,
    string? Metric,
    Confidence Confidence,
    string? Note)
{
    /// <summary>Pins as the trade counts them: a tab in the place of a lead counts, an exposed pad does not. Null where not known.</summary>
    public int? Pins => Tab is PackageTab.Pin ? Leads + 1 : Leads;

    /// <summary>True where one name comes in several sizes, so that two of them need not be the same.</summary>
    public bool HasSeveralSizes => Body is null || Kind is PackageKind.Leadless;

    /// <summary>All other names, those of the trade first, then the standards' outlines.</summary>
    public IReadOnlyList<string> Synonyms { get; } = [.. new[] { AlsoCalled }.Concat(OtherNames).Append(Jedec).Append(Eiaj).OfType<string>().Distinct().Where(other => other != Name)];
}
