using System.ComponentModel;
using Catalogue.Domain.Products;
using Catalogue.Domain.Quantities;

namespace Catalogue.Data.Products;

/// <summary>What is filled in for a claim.</summary>
public sealed class ClaimForm
{
    /// <summary>What is claimed, such as energy.</summary>
    [Description("What is claimed, such as energy.")]
    public string? Subject { get; set; }

    /// <summary>The words as printed.</summary>
    [Description("The words as printed.")]
    public string? AsPrinted { get; set; }

    /// <summary>The value in the base unit.</summary>
    [Description("The value in the base unit.")]
    public double? Value { get; set; }

    /// <summary>The unit of the value.</summary>
    [Description("The unit of the value.")]
    public Unit? Unit { get; set; }

    /// <summary>Where it is printed.</summary>
    [Description("Where it is printed.")]
    public ClaimPlace Place { get; set; }

    /// <summary>The id of the port it speaks of.</summary>
    [Description("The id of the port it speaks of.")]
    public Guid? PortId { get; set; }
}
