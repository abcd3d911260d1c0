using Catalogue.Domain.Quantities;

namespace Catalogue.Domain.Figures;

/// <summary>The lines of a margin: 0 is the rating itself, a guideline that allows a share k of it lies at 1 − k.</summary>
internal static class MarginLines
{
    /// <summary>Puts the lines down in words and gives them.</summary>
    /// <param name="sheet">The sheet.</param>
    /// <param name="guideline">The guideline, or null where the rating alone counts.</param>
    /// <param name="whyNot">Why it alone counts.</param>
    /// <param name="ampleTimes">How many times below its line a stress is called ample.</param>
    /// <param name="stress">What the place sees.</param>
    /// <param name="rated">What it is rated for.</param>
    /// <param name="unit">The unit of both.</param>
    public static FigureLines On(Sheet sheet, Guideline? guideline, string whyNot, double ampleTimes, Term stress, Term rated, Unit unit)
    {
        var factor = guideline?.Factor ?? 1;
        var (line, ample) = (1 - factor, 1 - (factor / ampleTimes));
        sheet.Line(() => guideline is null
            ? $"Line at {QuantityText.TwoDecimals(0)}: the rating alone; {whyNot}."
            : $"Line at {QuantityText.TwoDecimals(line)}: {guideline.Words}.");
        if (guideline is not null)
            sheet.Note($"Guideline: {guideline.Source}.");
        sheet.Line(() => $"Rating: {QuantityText.Of(stress.Nominal, unit)} of {QuantityText.Of(rated.Nominal, unit)} rated.");
        sheet.Line(() => $"Ample from {QuantityText.TwoDecimals(ample)} on, a house rule.");
        return new FigureLines(true, 0, guideline is null ? null : line, ample);
    }
}
