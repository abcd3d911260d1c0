namespace Catalogue.Domain.Figures;

/// <summary>All that a reader needs to redo a figure by hand.</summary>
/// <param name="Steps">The steps, in order; the last one is the figure. Empty when it could not be computed.</param>
/// <param name="Inputs">The inputs known, each with its source.</param>
/// <param name="Lines">The lines the figure was held against, each in words.</param>
/// <param name="Notes">What the figure leaves out or assumes, each in words.</param>
/// <param name="Marks">Where those lines lie; null when it is held against none, was not computed, or was stored before marks were kept.</param>
public sealed record Working(
    IReadOnlyList<WorkingStep> Steps, IReadOnlyList<WorkingInput> Inputs, IReadOnlyList<string> Lines, IReadOnlyList<string> Notes, LineMarks? Marks = null);
