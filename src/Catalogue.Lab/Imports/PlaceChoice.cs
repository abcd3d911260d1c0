using Catalogue.Domain.Photos;
using Catalogue.Domain.Teardowns;

namespace Catalogue.Lab.Imports;

/// <summary>A place that a picture may be given, as a line of a list.</summary>
/// <param name="Words">What the line says.</param>
/// <param name="Place">The place without caption and step, or null to leave the picture out.</param>
public sealed record PlaceChoice(string Words, PhotoPlace? Place)
{
    /// <summary>All places: the product, each board with its sides, those to be added too, a step, a detail, and none.</summary>
    public static IReadOnlyList<PlaceChoice> Of(IReadOnlyList<Board> boards, IEnumerable<string> newBoards)
    {
        ArgumentNullException.ThrowIfNull(boards);
        ArgumentNullException.ThrowIfNull(newBoards);
        return
        [
            new PlaceChoice("The product from outside", new PhotoPlace(PhotoSubject.Product)),
            .. boards.SelectMany(board => Sides($"{Board.Letter(board.Position)}, {board.Name}", new PhotoPlace(PhotoSubject.Detail, board.Id))),
            .. newBoards.SelectMany(name => Sides($"New board {name}", new PhotoPlace(PhotoSubject.Detail, null, name))),
            new PlaceChoice("A step", new PhotoPlace(PhotoSubject.Step)),
            new PlaceChoice("A detail of no board", new PhotoPlace(PhotoSubject.Detail)),
            new PlaceChoice("Leave it out", null),
        ];
    }

    /// <summary>The line that a place is on, or that for leaving out.</summary>
    public static int IndexOf(IReadOnlyList<PlaceChoice> choices, PhotoPlace? place)
    {
        ArgumentNullException.ThrowIfNull(choices);
        var bare = place is null ? null : new PhotoPlace(place.Subject, place.Subject is PhotoSubject.Step ? null : place.BoardId, place.Subject is PhotoSubject.Step ? null : place.NewBoard);
        for (var i = 0; i < choices.Count; i++)
        {
            if (choices[i].Place == bare)
                return i;
        }

        return choices.Count - 1;
    }

    private static IEnumerable<PlaceChoice> Sides(string words, PhotoPlace detail) =>
    [
        new PlaceChoice($"{words}: top", detail with { Subject = PhotoSubject.BoardTop }),
        new PlaceChoice($"{words}: bottom", detail with { Subject = PhotoSubject.BoardBottom }),
        new PlaceChoice($"{words}: a detail", detail),
    ];
}
