namespace Catalogue.Site.Caching;

/// <summary>A page as it was rendered.</summary>
/// <param name="SiteVersion">The version of the site it was rendered at.</param>
/// <param name="RenderedAt">When.</param>
/// <param name="StatusCode">Its status: 200 or a lasting redirect.</param>
/// <param name="ContentType">The type of the body, or null without one.</param>
/// <param name="Location">Where a redirect leads, or null.</param>
/// <param name="EntityTag">The strong tag with its quotation marks, from the body alone.</param>
/// <param name="Body">The body.</param>
public sealed record CachedPage(long SiteVersion, DateTimeOffset RenderedAt, int StatusCode, string? ContentType, string? Location, string EntityTag, ReadOnlyMemory<byte> Body);
