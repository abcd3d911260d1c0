namespace Catalogue.Domain.Families;

/// <summary>One of the names under which a family may stand on a part.</summary>
/// <param name="Text">The name as written.</param>
/// <param name="Letters">Its letters and digits (<see cref="Identification.MarkingKeys.Letters"/>), not empty.</param>
/// <param name="Kind">What kind of name it is.</param>
/// <param name="Maker">Whose name it is, where only one maker uses it; else null.</param>
public sealed record FamilyName(string Text, string Letters, FamilyNameKind Kind, string? Maker = null);
