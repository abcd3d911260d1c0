using Catalogue.Domain.Products;
using Catalogue.Domain.Quantities;
using Catalogue.Domain.Text;

namespace Catalogue.Domain.Consistency;

/// <summary>One value that is claimed, wherever it is printed: what label and box say alike is said once.</summary>
/// <param name="Claims">The claims of this value in the order of the list; at least one.</param>
/// <param name="Value">The value, above zero.</param>
internal sealed record StatedClaim(IReadOnlyList<Claim> Claims, double Value)
{
    /// <summary>What is claimed, as the first of them says it.</summary>
    public string Subject => Claims[0].Subject;

    /// <summary>The port it speaks of, or null.</summary>
    public PortId? PortId => Claims[0].PortId;

    /// <summary>Where it is printed, such as <c>label and box</c>.</summary>
    public string Places => string.Join(" and ", Claims.Select(claim => SnakeCase.Code(claim.Place).Replace('_', ' ')).Distinct());

    /// <summary>What they say together, each wording once.</summary>
    public string AsPrinted => string.Join(" / ", Claims.Select(claim => claim.AsPrinted).Distinct());

    /// <summary>Their side of a contradiction; the record is the first of them.</summary>
    /// <param name="what">What it is about.</param>
    public StatedFact As(string what) => new(what, AsPrinted, Places, Claims[0].Id.Value);

    /// <summary>True where it speaks of what comes out of a port, not of what the cells hold.</summary>
    public bool IsOutput => PortId is not null || Claims.Any(claim => claim.Subject.Contains("output", StringComparison.OrdinalIgnoreCase));

    /// <summary>The one voltage that is printed beside it, in volt, or null where there is none, or several.</summary>
    public double? PrintedVolts
    {
        get
        {
            var volts = Claims
                .SelectMany(claim => QuantityParser.Read(claim.AsPrinted) is QuantityReading.Read read ? read.Quantities : [])
                .Where(found => found.Quantity is { Unit: Unit.Volt, Value: > 0 })
                .Select(found => found.Quantity.Value!.Value)
                .Distinct()
                .ToList();
            return volts is [var only] ? only : null;
        }
    }
}
