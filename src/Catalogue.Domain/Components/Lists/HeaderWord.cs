namespace Catalogue.Domain.Components.Lists;

/// <summary>What a header may mean.</summary>
/// <param name="Meaning">The meaning, the likeliest one where the word is loose.</param>
/// <param name="Rank">Among several columns of one meaning the highest is taken.</param>
/// <param name="IsLoose">The cells below decide between name, running number and designators.</param>
internal sealed record HeaderWord(ColumnMeaning Meaning, int Rank, bool IsLoose = false);
