namespace Catalogue.Domain.Figures;

/// <summary>An input that a figure lacks, so that it is unknown.</summary>
/// <param name="Code">A lasting code, such as <c>rail</c> or <c>rated_current</c>; questions count by it.</param>
/// <param name="Words">What is missing, in words that finish the sentence “not computed: …”.</param>
public sealed record MissingInput(string Code, string Words);
