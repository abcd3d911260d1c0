using System.Text.Json.Serialization;
using Catalogue.Domain.Photos;

namespace Catalogue.Web.Imports;

/// <summary>What came of many pictures, or would come of them. Every file that was sent is in it once.</summary>
/// <param name="Teardown">The address of the teardown.</param>
/// <param name="DryRun">True where nothing was changed.</param>
/// <param name="Added">How many were added, or would be.</param>
/// <param name="AlreadyThere">How many the teardown had already, or came twice.</param>
/// <param name="Refused">How many could not be taken in.</param>
/// <param name="Skipped">How many were passed over or left out.</param>
/// <param name="Warnings">What a person should know of all of them.</param>
/// <param name="Entries">One entry a file: those with a place in the order in which they are added, then the others.</param>
internal sealed record PhotosReport(string Teardown, bool DryRun, int Added, int AlreadyThere, int Refused, int Skipped, IReadOnlyList<string> Warnings, IReadOnlyList<PhotosReport.Entry> Entries)
{
    /// <summary>One file.</summary>
    /// <param name="Path">Its path as it came; the name by which places are given.</param>
    /// <param name="Outcome">What became of it.</param>
    /// <param name="Place">Where it goes, or null.</param>
    /// <param name="Sure">False where the place is unsure; null where there is none or a person gave it.</param>
    /// <param name="Reasons">Why it goes there.</param>
    /// <param name="Doubts">What is unsure.</param>
    /// <param name="Reason">Why it is not added, or what is odd about it, or null.</param>
    /// <param name="Photo">The id of the photo, or null.</param>
    public sealed record Entry(
        string Path, PhotoOutcome Outcome, Place? Place = null, bool? Sure = null, IReadOnlyList<string>? Reasons = null, IReadOnlyList<string>? Doubts = null, string? Reason = null, Guid? Photo = null);

    /// <summary>A place in the teardown.</summary>
    /// <param name="Subject">What the picture shows.</param>
    /// <param name="Board">The id of a board, or null.</param>
    /// <param name="BoardName">Its name, or null.</param>
    /// <param name="NewBoard">The name of a board that is added, or null.</param>
    /// <param name="Step">The step, from 1, or null.</param>
    /// <param name="Caption">The caption, or null.</param>
    public sealed record Place(PhotoSubject Subject, Guid? Board, string? BoardName, string? NewBoard, int? Step, string? Caption)
    {
        /// <summary>A place as the report says it.</summary>
        public static Place From(PhotoPlace place, IReadOnlyList<KnownBoard> boards) => new(
            place.Subject, place.BoardId?.Value, boards.FirstOrDefault(board => board.Id == place.BoardId)?.Name, place.NewBoard, place.Step, place.Caption);
    }

    /// <summary>The report of entries, counted.</summary>
    public static PhotosReport Of(string teardown, bool dryRun, IReadOnlyList<string> warnings, IReadOnlyList<Entry> entries) => new(
        teardown,
        dryRun,
        entries.Count(entry => entry.Outcome is PhotoOutcome.Added or PhotoOutcome.WouldAdd),
        entries.Count(entry => entry.Outcome is PhotoOutcome.AlreadyThere or PhotoOutcome.Repeated),
        entries.Count(entry => entry.Outcome is PhotoOutcome.Refused),
        entries.Count(entry => entry.Outcome is PhotoOutcome.Skipped or PhotoOutcome.LeftOut),
        warnings,
        entries);

    /// <summary>The number of files.</summary>
    [JsonIgnore]
    public int Total => Entries.Count;
}
