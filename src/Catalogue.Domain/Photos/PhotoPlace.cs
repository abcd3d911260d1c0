using Catalogue.Domain.Teardowns;

namespace Catalogue.Domain.Photos;

/// <summary>Where a picture goes in a teardown. At most one of the two boards is given.</summary>
/// <param name="Subject">What it shows.</param>
/// <param name="BoardId">The board it shows, of those that are there already, or null.</param>
/// <param name="NewBoard">The name of a board that is yet to be added, 1 to <see cref="Board.MaxNameLength"/> characters, or null. Equal names mean one board.</param>
/// <param name="Step">The step it belongs to, from 1 as printed; only with <see cref="PhotoSubject.Step"/>; null where no number is known.</param>
/// <param name="Caption">The caption, at most <see cref="Photo.MaxCaptionLength"/> characters, or null.</param>
public sealed record PhotoPlace(PhotoSubject Subject, BoardId? BoardId = null, string? NewBoard = null, int? Step = null, string? Caption = null);
