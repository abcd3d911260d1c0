using Catalogue.Domain.Figures;
using Catalogue.Domain.Products;
using Catalogue.Domain.Quantities;

namespace Catalogue.Domain.Consistency;

/// <summary>What ports offer against their labels, and against the total output that is claimed.</summary>
/// <remarks>
/// House rule: 3 % apart is no difference. Less by the captured words than printed is a contradiction only where nothing else explains it, so it is worth another look:
/// the words may have been captured with another port busy or through a 3 A cable. Ports that together offer more than the total share it.
/// </remarks>
internal static class PortsAgainstClaims
{
    private const double Slack = 0.03;

    public static IEnumerable<Contradiction> Find(ConsistencyFacts facts)
    {
        var outputs = facts.Facts.Ports.Where(port => port.Direction is not PortDirection.Input).ToList();
        foreach (var port in outputs)
            if (PortOffer.Decoded(port) is { } decoded && PortOffer.Printed(port) is { } printed && Math.Abs(decoded.MaxWatts - printed.MaxWatts) > Slack * printed.MaxWatts)
                yield return new Contradiction(
                    "capabilities_against_label",
                    ContradictionSeverity.LookAgain,
                    $"{port.Name}: the captured words offer {QuantityText.Of(decoded.MaxWatts, Unit.Watt, 3)} at most, the label says {QuantityText.Of(printed.MaxWatts, Unit.Watt, 3)}.",
                    new StatedFact("captured words", QuantityText.Of(decoded.MaxWatts, Unit.Watt, 3), string.Join(" ", port.CapabilityWords), port.Id.Value),
                    new StatedFact("label", port.AsPrinted ?? "", null, port.Id.Value));

        var offers = outputs.Select(port => (Port: port, Offer: PortOffer.Of(port))).Where(found => found.Offer is not null).ToList();
        foreach (var claim in facts.ClaimsIn(Unit.Watt).Where(claim => claim.PortId is null && claim.Subject.Contains("total", StringComparison.OrdinalIgnoreCase)))
        {
            var total = claim.Value;
            foreach (var (port, offer) in offers.Where(found => found.Offer!.MaxWatts > total * (1 + Slack)))
                yield return new Contradiction(
                    "port_above_total",
                    ContradictionSeverity.Contradiction,
                    $"{port.Name} alone offers more than the total that is claimed ({claim.Places}).",
                    new StatedFact(port.Name, QuantityText.Of(offer!.MaxWatts, Unit.Watt, 3), offer.How, port.Id.Value),
                    claim.As(claim.Subject));
            if (offers.Count == outputs.Count && offers.Count > 0 && offers.Sum(found => found.Offer!.MaxWatts * found.Port.Quantity) is var sum && sum < total * (1 - Slack))
                yield return new Contradiction(
                    "total_above_ports",
                    ContradictionSeverity.Contradiction,
                    $"All ports together offer less than the total that is claimed ({claim.Places}).",
                    new StatedFact("all ports", QuantityText.Of(sum, Unit.Watt, 3), null, null),
                    claim.As(claim.Subject));
        }
    }
}
