using Catalogue.Domain.Teardowns;

namespace Catalogue.Domain.Photos;

/// <summary>A board that a teardown has already, as far as names of pictures can point at it.</summary>
/// <param name="Id">Its id.</param>
/// <param name="Position">Its place in the record, from 0; it gives the letter it is printed with.</param>
/// <param name="Name">What the reviewer calls it.</param>
public sealed record KnownBoard(BoardId Id, int Position, string Name);
