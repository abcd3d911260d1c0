using Catalogue.Domain.Photos;
using Catalogue.Domain.Teardowns;

namespace Catalogue.Lab.Imports;

/// <summary>What an import run of photos reports, as far as the lab shows it.</summary>
/// <param name="Added">How many were added, or would be.</param>
/// <param name="AlreadyThere">How many were there or came twice.</param>
/// <param name="Refused">How many could not be taken in.</param>
/// <param name="Skipped">How many were passed over.</param>
/// <param name="Warnings">What a person should know.</param>
/// <param name="Entries">One entry a file.</param>
public sealed record PhotosRunReport(int Added, int AlreadyThere, int Refused, int Skipped, IReadOnlyList<string> Warnings, IReadOnlyList<PhotosRunReport.Entry> Entries)
{
    /// <summary>One file.</summary>
    public sealed record Entry(string Path, string Outcome, EntryPlace? Place, IReadOnlyList<string>? Reasons, IReadOnlyList<string>? Doubts, string? Reason)
    {
        /// <summary>The file as it waits to be added.</summary>
        public PictureInHand ToPicture() => new()
        {
            Path = Path,
            Place = Place?.ToPlace(),
            Reasons = Reasons ?? [],
            Doubts = Doubts ?? [],
            IsRefused = Outcome is not "would_add",
            Remark = Reason,
        };
    }

    /// <summary>Where a file goes.</summary>
    public sealed record EntryPlace(PhotoSubject Subject, Guid? Board, string? NewBoard, int? Step, string? Caption)
    {
        /// <summary>The place.</summary>
        public PhotoPlace ToPlace() => new(Subject, Board is { } board ? BoardId.From(board) : null, NewBoard, Step, Caption);
    }
}
