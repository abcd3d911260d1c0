using Catalogue.Domain.BenchLogs;
using Catalogue.Domain.Products;
using Catalogue.Domain.Quantities;

namespace Catalogue.Site.Teardowns;

/// <summary>What is claimed and what was measured of one subject.</summary>
/// <param name="Subject">The subject, with a capital letter.</param>
/// <param name="Claims">The claims, in their order; may be empty.</param>
/// <param name="Tests">The bench tests, in their order; may be empty.</param>
/// <param name="MassKg">The measured mass, in the row about mass; else null.</param>
public sealed record KeyFact(string Subject, IReadOnlyList<Claim> Claims, IReadOnlyList<BenchTest> Tests, double? MassKg)
{
    /// <summary>
    /// Measured over claimed, or null where they cannot be divided: no number on one side, several numbers on one, or different units.
    /// </summary>
    public double? ShareOfClaim
    {
        get
        {
            var claimed = Claims.Where(claim => claim.Value is not null).Select(claim => (claim.Value!.Value, claim.Unit)).Distinct().ToList();
            var measured = Tests.Where(test => test.Value is not null).Select(test => (test.Value!.Value, test.Unit)).ToList();
            if (MassKg is { } mass && measured.Count == 0)
                measured.Add((mass, Unit.Kilogram));
            return claimed is [var one] && measured is [var other] && one.Unit == other.Unit && one.Value > 0 ? other.Value / one.Value : null;
        }
    }
}
