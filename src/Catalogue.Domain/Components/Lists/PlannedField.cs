namespace Catalogue.Domain.Components.Lists;

/// <summary>A field that an import changes, or leaves.</summary>
/// <param name="Field">Name of the component's property.</param>
/// <param name="From">What stands there, as text; null where nothing does.</param>
/// <param name="To">What the list says; null where it says nothing.</param>
public sealed record PlannedField(string Field, string? From, string? To);
