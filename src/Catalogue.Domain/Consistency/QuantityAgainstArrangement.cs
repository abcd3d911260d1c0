using System.Globalization;
using Catalogue.Domain.Components;

namespace Catalogue.Domain.Consistency;

/// <summary>How many of a part there are, said in several ways: the quantity, the arrangement, the designators.</summary>
/// <remarks>For cells the arrangement is the pack: a count that differs from S times P is a contradiction. Elsewhere a quantity that is no multiple of the arrangement is worth another look.</remarks>
internal static class QuantityAgainstArrangement
{
    public static IEnumerable<Contradiction> Find(ConsistencyFacts facts)
    {
        foreach (var component in facts.Facts.Components)
        {
            if (component.Quantity is not { } quantity)
                continue;
            var arranged = component.ParallelCount * component.SeriesCount;
            var isCell = component.FunctionClass is FunctionClass.Cell;
            // Two groups of four in parallel are eight of an arrangement of four; a pack is one group.
            if (isCell ? arranged != quantity : arranged > 1 && (quantity == 0 || quantity % arranged != 0))
                yield return new Contradiction(
                    isCell ? "cells_against_arrangement" : "quantity_against_arrangement",
                    isCell ? ContradictionSeverity.Contradiction : ContradictionSeverity.LookAgain,
                    $"{component.Name}: the arrangement makes {Text(arranged)}, the quantity is {Text(quantity)}.",
                    new StatedFact("arrangement", $"{Text(component.SeriesCount)} in series × {Text(component.ParallelCount)} in parallel", null, component.Id.Value),
                    new StatedFact("quantity", Text(quantity), null, component.Id.Value));
            // One designator names a whole pack.
            if (!isCell && component.DesignatorList.Length > 0 && component.DesignatorList.Length != quantity)
                yield return new Contradiction(
                    "designators_against_quantity",
                    ContradictionSeverity.LookAgain,
                    $"{component.Name}: {Text(component.DesignatorList.Length)} {(component.DesignatorList.Length == 1 ? "designator" : "designators")}, a quantity of {Text(quantity)}.",
                    new StatedFact("designators", component.Designators ?? "", null, component.Id.Value),
                    new StatedFact("quantity", Text(quantity), null, component.Id.Value));
        }
    }

    private static string Text(int count) => count.ToString(CultureInfo.InvariantCulture);
}
