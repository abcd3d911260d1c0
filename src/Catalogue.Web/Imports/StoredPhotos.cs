using Catalogue.Data.Archives;
using Catalogue.Media.Photos;

namespace Catalogue.Web.Imports;

/// <summary>The media store and the photo intake, as archives see them.</summary>
internal static class StoredPhotos
{
    public static ArchivePhotos Of(MediaStore store, PhotoIntake intake) => new(
        async (name, cancel) => MediaKey.TryParse(name, out var key) && await store.OpenAsync(key, cancel) is { } content ? content.Stream : null,
        async (content, cancel) => await intake.ReceiveAsync(content, cancel) switch
        {
            PhotoReceipt.Accepted accepted => new ArchivePhotos.Taken(null, accepted.Hash.Text, accepted.Kind.ToString().ToLowerInvariant(), accepted.Width, accepted.Height),
            PhotoReceipt.Refused refused => new ArchivePhotos.Taken(refused.Text, "", "", 0, 0),
            PhotoReceipt.NotChecked notChecked => throw new IOException(notChecked.Text),
            _ => throw new InvalidOperationException("Every receipt is known."),
        });
}
