using Catalogue.Domain.Components;
using Catalogue.Domain.Quantities;

namespace Catalogue.Domain.Figures;

/// <summary>The capacitance across a rail: each place counts <c>n · C / m</c> for n in parallel and m in series, in farad.</summary>
/// <remarks>Marked values are an upper limit for class 2 ceramics, which lose capacitance with dc voltage. Source: physics.</remarks>
internal static class RailCapacitance
{
    /// <summary>The capacitors across a rail.</summary>
    public static IEnumerable<PartFacts> Of(RailFacts rail) =>
        rail.Parts.Where(part => part.Is(FunctionClass.Capacitor) && part.Component.CircuitPosition is null or CircuitPosition.AcrossRail or CircuitPosition.InLine);

    /// <summary>Their sum; each that is missing is named on the sheet.</summary>
    public static Term On(Sheet sheet, RailFacts rail)
    {
        Term? sum = null;
        var index = 0;
        foreach (var part in Of(rail))
        {
            index++;
            var name = part.Component.Name;
            var one = sheet.Need(part.Best(RatingKind.Capacitance), $"C_{index}", $"capacitance of one {name}", Unit.Farad, "capacitance", $"the capacitance of {name}");
            if (part.Component.ParallelCount > 1)
                one = Term.Number(part.Component.ParallelCount) * one;
            if (part.Component.SeriesCount > 1)
                one /= Term.Number(part.Component.SeriesCount);
            sum = sum is null ? one : sum + one;
            if (part.Is(FunctionClass.CeramicCapacitor))
                sheet.Note($"{name}: ceramic capacitors hold less at voltage than is marked; the marked value is an upper limit.");
        }

        if (sum is not null)
            return sheet.Step("C", "capacitance across the rail", Unit.Farad, sum);
        sheet.Miss("capacitance", "the capacitors across the rail");
        return Term.Number(1);
    }
}
