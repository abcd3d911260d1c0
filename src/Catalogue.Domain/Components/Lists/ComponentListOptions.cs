namespace Catalogue.Domain.Components.Lists;

/// <summary>What a person decided about a component list, where the guess was wrong. Null means: find out from the content.</summary>
/// <param name="Encoding">IANA name of the text's encoding, such as <c>Shift_JIS</c>.</param>
/// <param name="Delimiter">The character between fields.</param>
/// <param name="Sheet">Name of the only sheet to read, hidden or not; null for all visible ones with a header.</param>
public sealed record ComponentListOptions(string? Encoding = null, char? Delimiter = null, string? Sheet = null);
