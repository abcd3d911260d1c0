namespace Catalogue.Media.Photos;

/// <summary>What a check of one stored original against its own name found.</summary>
public enum MediaSoundness
{
    /// <summary>Its bytes have the digest in its name.</summary>
    Sound,

    /// <summary>No such file.</summary>
    Missing,

    /// <summary>Its bytes have another digest: a failing disk, or someone changed it.</summary>
    Altered,
}
