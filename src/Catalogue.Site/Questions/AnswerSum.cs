using Catalogue.Domain.Figures;
using Catalogue.Domain.Quantities;

namespace Catalogue.Site.Questions;

/// <summary>The sum of a ranked row at its nominal values.</summary>
/// <param name="Product">What makes up the allowance, such as <c>35 A × 0.75</c>.</param>
/// <param name="Allowed">The allowance with its unit.</param>
/// <param name="Needed">The need with its unit.</param>
public sealed record AnswerSum(string Product, string Allowed, string Needed)
{
    private const string AllowedSymbol = "I_allowed";
    private const string NeededSymbol = "I_needed";

    /// <summary>The sum in a working, or null in one that divides no allowance by a need.</summary>
    public static AnswerSum? Of(Working? working)
    {
        if (working?.Steps.FirstOrDefault(step => step.Symbol == AllowedSymbol) is not { } allowed)
            return null;
        // The need is computed, or it was recorded and then stands among the inputs.
        var needed = working.Steps.Where(step => step.Symbol == NeededSymbol).Select(step => (step.Nominal, step.Unit))
            .Concat(working.Inputs.Where(input => input.Symbol == NeededSymbol).Select(input => (input.Nominal, input.Unit)))
            .Select(found => QuantityText.Of(found.Nominal, found.Unit, 3))
            .FirstOrDefault();
        return needed is null ? null : new AnswerSum(allowed.InNumbers, QuantityText.Of(allowed.Nominal, allowed.Unit, 3), needed);
    }
}
