namespace Catalogue.Domain.Quantities;

/// <summary>Why an input cannot be computed with.</summary>
/// <param name="Input">The input's lasting code, such as <c>rated_voltage</c>.</param>
/// <param name="Reason">What is wrong with it and what would be right, a clause without a full stop.</param>
public sealed record RefusedInput(string Input, string Reason);
