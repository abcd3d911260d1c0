using Catalogue.Data.Photos;
using Catalogue.Data.Teardowns;
using Catalogue.Media.Photos;

namespace Catalogue.Web.Imports;

/// <summary>Carries what the intake says over to the record, and outcomes over to reports.</summary>
internal static class Receipts
{
    private const int LongestFileName = 255;

    /// <summary>A picture that was taken in, as the record keeps it.</summary>
    public static PhotoChanges.TakenIn ToTakenIn(this PhotoReceipt.Accepted accepted, string? fileName) =>
        new(accepted.Hash.Text, accepted.Kind.ToString().ToLowerInvariant(), accepted.Bytes, accepted.Width, accepted.Height, fileName);

    /// <summary>The name that is kept of a path; of a long one the end, which says most. Null for a blank one.</summary>
    public static string? FileNameOf(string? path) => Domain.Text.PlainText.Clean(path is null || path.Length <= LongestFileName ? path : path[^LongestFileName..]);

    /// <summary>Why a change was not made.</summary>
    public static string Reason<T>(this ChangeOutcome<T> outcome) => outcome switch
    {
        ChangeOutcome<T>.NotFound x => x.Reason,
        ChangeOutcome<T>.Refused x => x.Reason,
        ChangeOutcome<T>.Stale x => x.Reason,
        _ => throw new InvalidOperationException("A change that was done has no reason."),
    };
}
