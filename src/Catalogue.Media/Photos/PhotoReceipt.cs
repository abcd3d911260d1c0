namespace Catalogue.Media.Photos;

/// <summary>What became of an upload.</summary>
public abstract record PhotoReceipt
{
    private PhotoReceipt()
    {
    }

    /// <summary>Decoded once from end to end and stored durably.</summary>
    /// <param name="Hash">Digest of the bytes as uploaded.</param>
    /// <param name="Kind">Format, by content.</param>
    /// <param name="Bytes">Length of the file.</param>
    /// <param name="Width">Upright width in pixels.</param>
    /// <param name="Height">Upright height in pixels.</param>
    /// <param name="Orientation">EXIF orientation, 1 to 8, that the upright size already takes into account.</param>
    /// <param name="WasStored">True when the store had this very file before.</param>
    public sealed record Accepted(Sha256 Hash, ImageKind Kind, long Bytes, int Width, int Height, int Orientation, bool WasStored) : PhotoReceipt
    {
        /// <summary>The name of the original in the store.</summary>
        public MediaKey Key => MediaKey.Original(Hash, Kind);
    }

    /// <summary>Not taken in, nothing stored; the same file will be refused again.</summary>
    /// <param name="Reason">Why, for programs.</param>
    /// <param name="Text">Why, and what would be right, for people.</param>
    public sealed record Refused(ImageRefusal Reason, string Text) : PhotoReceipt;

    /// <summary>Not taken in, nothing stored, because the check itself failed; the same file may pass later.</summary>
    /// <param name="Text">What happened, for the log and the administrator.</param>
    public sealed record NotChecked(string Text) : PhotoReceipt;
}
