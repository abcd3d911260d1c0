using System.Text.Json;
using System.Text.Json.Serialization;
using Catalogue.Data.Conversions;
using Catalogue.Data.Teardowns;
using Catalogue.Domain.Photos;
using Catalogue.Domain.Teardowns;
using Catalogue.Domain.Text;

namespace Catalogue.Web.Imports;

/// <summary>Places that a person gave to pictures of a batch, by their paths; each takes the place of what was proposed.</summary>
internal sealed class PhotoCorrections
{
    /// <summary>The name of the option.</summary>
    public const string Option = "places";

    /// <summary>How the option is written, for messages.</summary>
    public const string Form = "places is a JSON object: a path as the preview gives it, and its place {\"subject\", \"board\" or \"new_board\", \"step\", \"caption\"}, or {\"leave_out\": true}.";

    /// <summary>The highest number of a step.</summary>
    public const int HighestStep = 999;

    private static readonly JsonSerializerOptions Strict = new(StoredJson.Options) { UnmappedMemberHandling = JsonUnmappedMemberHandling.Disallow };

    private readonly Dictionary<string, Correction> _byPath;

    private PhotoCorrections(Dictionary<string, Correction> byPath) => _byPath = byPath;

    /// <summary>None.</summary>
    public static PhotoCorrections None { get; } = new([]);

    /// <summary>The paths that places are given for.</summary>
    public IEnumerable<string> Paths => _byPath.Keys;

    /// <summary>The boards that are pointed at.</summary>
    public IEnumerable<Guid> Boards => _byPath.Values.Select(correction => correction.Board).OfType<Guid>();

    /// <summary>Reads the option; a blank one gives none.</summary>
    public static PhotoCorrections? TryParse(string? json, out Refusal? refusal)
    {
        refusal = null;
        if (string.IsNullOrWhiteSpace(json))
            return None;
        try
        {
            if (JsonSerializer.Deserialize<Dictionary<string, Correction?>>(json, Strict) is { } read)
            {
                refusal = read.Select(pair => Check(pair.Key, pair.Value)).FirstOrDefault(found => found is not null);
                return refusal is null ? new PhotoCorrections(read.ToDictionary(pair => pair.Key, pair => pair.Value!, StringComparer.Ordinal)) : null;
            }
        }
        catch (Exception exception) when (exception is JsonException or InvalidOperationException)
        {
            // Said below.
        }

        refusal = new Refusal(Option, Form);
        return null;
    }

    /// <summary>The place that a person gave to a picture; null where none was given.</summary>
    public PhotoPlace? PlaceOf(string path) =>
        _byPath.TryGetValue(path, out var correction) && !correction.LeaveOut
            ? new PhotoPlace(correction.Subject!.Value, correction.Board is { } board ? BoardId.From(board) : null, PlainText.Clean(correction.NewBoard), correction.Step, PlainText.Clean(correction.Caption))
            : null;

    /// <summary>True for a picture that is to be left out.</summary>
    public bool LeavesOut(string path) => _byPath.TryGetValue(path, out var correction) && correction.LeaveOut;

    private static Refusal? Check(string path, Correction? correction)
    {
        var reason = correction switch
        {
            null => "has no place",
            { LeaveOut: true } => null,
            { Subject: null } => $"has no subject; it is one of {string.Join(", ", SnakeCase.All<PhotoSubject>())}",
            { Board: not null, NewBoard: not null } => "has a board and a new_board; it takes one of them",
            { Subject: PhotoSubject.BoardTop or PhotoSubject.BoardBottom, Board: null } when string.IsNullOrWhiteSpace(correction.NewBoard) => "shows a side of a board and names none; give board or new_board",
            { Step: not null, Subject: not PhotoSubject.Step } => "has a step and shows none; its subject would be step",
            { Step: < 1 or > HighestStep } => $"has a step that is not 1 to {HighestStep}",
            { NewBoard.Length: > Board.MaxNameLength } => $"has a new_board of more than {Board.MaxNameLength} characters",
            { Caption.Length: > Photo.MaxCaptionLength } => $"has a caption of more than {Photo.MaxCaptionLength} characters",
            _ => null,
        };
        return reason is null ? null : new Refusal(Option, $"“{path}” {reason}.");
    }

    /// <summary>What is given for one picture.</summary>
    private sealed record Correction(PhotoSubject? Subject = null, Guid? Board = null, string? NewBoard = null, int? Step = null, string? Caption = null, bool LeaveOut = false);
}
