namespace Catalogue.Domain.Components.Lists;

/// <summary>What a person decided about a component list, where the guess was wrong. Null means: find out from the content.</summary>
/// <param name="Encoding">IANA name of the text's encoding, such as <c>Shift_JIS</c>.</param>
/// <param name="Delimiter">The character between fields.</param>
public sealed record ComponentListOptions(string? Encoding = null, char? Delimiter = null);
