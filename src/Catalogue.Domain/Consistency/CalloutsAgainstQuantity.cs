using System.Globalization;

namespace Catalogue.Domain.Consistency;

/// <summary>More callouts of a part on one photo than there are parts.</summary>
internal static class CalloutsAgainstQuantity
{
    public static IEnumerable<Contradiction> Find(ConsistencyFacts facts)
    {
        var byPart = facts.Callouts.Where(callout => callout.ComponentId is not null).ToLookup(callout => callout.ComponentId!.Value);
        foreach (var component in facts.Facts.Components)
        {
            if (component.Quantity is not { } quantity || byPart[component.Id].GroupBy(callout => callout.PhotoId).MaxBy(group => group.Count()) is not { } most || most.Count() <= Math.Max(1, quantity))
                continue;
            yield return new Contradiction(
                "callouts_against_quantity",
                ContradictionSeverity.Contradiction,
                $"{component.Name}: one photo shows it {most.Count().ToString(CultureInfo.InvariantCulture)} times, the quantity is {quantity.ToString(CultureInfo.InvariantCulture)}.",
                new StatedFact("callouts on one photo", string.Join(", ", most.Select(callout => callout.Number.ToString(CultureInfo.InvariantCulture))), null, most.Key.Value),
                new StatedFact("quantity", quantity.ToString(CultureInfo.InvariantCulture), null, component.Id.Value));
        }
    }
}
