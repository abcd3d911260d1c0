using Catalogue.Domain.Teardowns;

namespace Catalogue.Domain.Photos;

/// <summary>A picture in a revision. The file itself is kept once, under its SHA-256.</summary>
public sealed class Photo : IEditableRecord
{
    /// <summary>Longest caption.</summary>
    public const int MaxCaptionLength = 400;

    /// <inheritdoc />
    public required RevisionId RevisionId { get; set; }

    /// <summary>Its id.</summary>
    public required PhotoId Id { get; init; }

    /// <summary>The SHA-256 of the original file, 64 lower-case hex digits.</summary>
    public required string Sha256 { get; init; }

    /// <summary>Width of the upright picture in pixels.</summary>
    public required int WidthPixels { get; init; }

    /// <summary>Height of the upright picture in pixels.</summary>
    public required int HeightPixels { get; init; }

    /// <summary>Its place in the record, from 0; printed from 1.</summary>
    public int Position { get; set; }

    /// <summary>What it shows.</summary>
    public PhotoSubject Subject { get; set; }

    /// <summary>The board it shows, or null.</summary>
    public BoardId? BoardId { get; set; }

    /// <summary>The caption, or null.</summary>
    public string? Caption { get; set; }

    /// <summary>Words for readers who do not see it, or null.</summary>
    public string? AltText { get; set; }

    /// <summary>Who made it, or null.</summary>
    public string? Credit { get; set; }

    /// <summary>Its licence where it differs from the lab's, or null.</summary>
    public string? Licence { get; set; }

    /// <summary>True for a drawing; the page then says so.</summary>
    public bool IsDrawing { get; set; }

    /// <summary>The name of the file as it came, kept for the reviewer and never used as a path.</summary>
    public string? FileName { get; init; }

    /// <inheritdoc />
    public uint Version { get; init; }
}
