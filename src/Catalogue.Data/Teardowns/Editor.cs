namespace Catalogue.Data.Teardowns;

/// <summary>Who makes a change, as the audit names them.</summary>
/// <param name="Name">A person's name, or a token's.</param>
public sealed record Editor(string Name);
