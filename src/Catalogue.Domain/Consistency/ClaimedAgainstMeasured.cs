using Catalogue.Domain.Quantities;

namespace Catalogue.Domain.Consistency;

/// <summary>A claim and a bench test of the same subject, unit and port, held against each other.</summary>
/// <remarks>
/// House rule: measured below 0.90 or above 1.10 of the claim is worth another look, below 0.60 or above 1.50 a contradiction. Energy and charge that leave a port
/// are below what the cells hold by the losses of the converter: from 0.60 to 1.00 of the claim they agree with it, above 1.00 of it is worth another look.
/// </remarks>
internal static class ClaimedAgainstMeasured
{
    public static IEnumerable<Contradiction> Find(ConsistencyFacts facts)
    {
        foreach (var claim in facts.StatedClaims)
        {
            foreach (var test in facts.Tests.Where(test => test.Unit == claim.Claims[0].Unit && test.Value is not null && test.Subject.Trim().Equals(claim.Subject.Trim(), StringComparison.OrdinalIgnoreCase)))
            {
                if (claim.PortId is not null && test.PortId is not null && claim.PortId != test.PortId)
                    continue;
                // The case that lies nearest to the claim decides: the spread of a measurement contradicts nothing.
                var (low, high) = ((test.Low ?? test.Value!.Value) / claim.Value, (test.High ?? test.Value!.Value) / claim.Value);
                if (Weigh(low, high, test.Unit is Unit.WattHour or Unit.AmpereHour) is not { } severity)
                    continue;
                yield return new Contradiction(
                    "claimed_against_measured",
                    severity,
                    $"{claim.Subject}: measured is {QuantityText.Number(100 * test.Value!.Value / claim.Value, 3)} % of what is claimed ({claim.Places}).",
                    claim.As("claimed"),
                    new StatedFact("measured", QuantityText.Of(test.Value.Value, test.Unit!.Value), test.Conditions, test.Id.Value));
            }
        }
    }

    private static ContradictionSeverity? Weigh(double low, double high, bool leavesBehindLosses) => (leavesBehindLosses, low, high) switch
    {
        (true, > 1, _) => ContradictionSeverity.LookAgain,
        (true, _, < 0.6) => ContradictionSeverity.Contradiction,
        (true, _, _) => null,
        (false, > 1.5, _) or (false, _, < 0.6) => ContradictionSeverity.Contradiction,
        (false, > 1.1, _) or (false, _, < 0.9) => ContradictionSeverity.LookAgain,
        _ => null,
    };
}
