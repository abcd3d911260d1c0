namespace Catalogue.Data.Teardowns;

/// <summary>Who makes a change, as the audit names them.</summary>
/// <param name="Name">A person's name, or a token's.</param>
/// <param name="IsPerson">False for a script with a token.</param>
public sealed record Editor(string Name, bool IsPerson = true);
