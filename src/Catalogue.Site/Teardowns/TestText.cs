using Catalogue.Domain.BenchLogs;
using Catalogue.Domain.Quantities;

namespace Catalogue.Site.Teardowns;

/// <summary>The result of a bench test in words.</summary>
internal static class TestText
{
    /// <summary>The value with its unit, else the words, else that there is none.</summary>
    public static string Result(BenchTest test) => test switch
    {
        { Value: { } value, Unit: { } unit } when double.IsFinite(value) => QuantityText.Of(value, unit),
        { ResultText: { } words } => words,
        _ => "no result recorded",
    };

    /// <summary>From the lowest to the highest case, or null without a spread.</summary>
    public static string? Spread(BenchTest test) =>
        test is { Low: { } low, High: { } high, Unit: { } unit } && low < high ? $"{QuantityText.Of(low, unit)} to {QuantityText.Of(high, unit)}" : null;
}
