namespace Catalogue.Domain.Consistency;

/// <summary>Two recorded facts that do not go together. It says so and what to look at; which of them is wrong it does not say.</summary>
/// <param name="Code">The lasting code of the rule that found it, such as <c>pack_energy_against_claim</c>.</param>
/// <param name="Severity">How much it weighs.</param>
/// <param name="Words">What does not go together, a sentence.</param>
/// <param name="One">The one side.</param>
/// <param name="Other">The other side.</param>
public sealed record Contradiction(string Code, ContradictionSeverity Severity, string Words, StatedFact One, StatedFact Other);
