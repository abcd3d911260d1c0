using System.ComponentModel;
using Catalogue.Domain.Products;

namespace Catalogue.Data.Products;

/// <summary>What is filled in for a port.</summary>
public sealed class PortForm
{
    /// <summary>What the product calls it.</summary>
    [Description("What the product calls it.")]
    public string? Name { get; set; }

    /// <summary>The kind of connector in words, such as USB-C.</summary>
    [Description("The kind of connector in words, such as USB-C.")]
    public string? Kind { get; set; }

    /// <summary>Which way power flows, seen from the product.</summary>
    [Description("Which way power flows, seen from the product.")]
    public PortDirection Direction { get; set; }

    /// <summary>How many alike, 1 to 100.</summary>
    [Description("How many alike, 1 to 100.")]
    public int Quantity { get; set; } = 1;

    /// <summary>What is printed beside it.</summary>
    [Description("What is printed beside it.")]
    public string? AsPrinted { get; set; }

    /// <summary>Protocols seen.</summary>
    [Description("Protocols seen.")]
    public IReadOnlyList<string>? Protocols { get; set; }

    /// <summary>Source capability words as captured, each 0x and eight hex digits.</summary>
    [Description("Source capability words as captured, each 0x and eight hex digits.")]
    public IReadOnlyList<string>? CapabilityWords { get; set; }
}
