namespace Catalogue.Media.Photos;

/// <summary>A picture format that the catalogue takes in. The order is that of preference for photos.</summary>
public enum ImageKind
{
    /// <summary>JPEG, baseline or progressive (ITU-T T.81).</summary>
    Jpeg,

    /// <summary>PNG, still pictures only (W3C PNG, third edition).</summary>
    Png,

    /// <summary>WebP, still pictures only (RFC 9649).</summary>
    Webp,
}
