using System.ComponentModel;
using Catalogue.Domain.Components;
using Catalogue.Domain.Quantities;

namespace Catalogue.Data.Components;

/// <summary>What is filled in for a component.</summary>
public sealed class ComponentForm
{
    /// <summary>What it does in the circuit.</summary>
    [Description("What it does in the circuit.")]
    public string? Role { get; set; }

    /// <summary>What kind of part it is; a fuse class makes the catalogue compute its headroom.</summary>
    [Description("What kind of part it is; a fuse class makes the catalogue compute its headroom.")]
    public FunctionClass? FunctionClass { get; set; }

    /// <summary>Reference designators, such as C1, C2, C5-C8.</summary>
    [Description("Reference designators, such as C1, C2, C5-C8.")]
    public string? Designators { get; set; }

    /// <summary>The marking as read from the part.</summary>
    [Description("The marking as read from the part.")]
    public string? MarkingAsRead { get; set; }

    /// <summary>The part number; where no family is given it links the component to the family of that number.</summary>
    [Description("The part number; where no family is given it links the component to the family of that number.")]
    public string? PartNumber { get; set; }

    /// <summary>The value as given, such as 4k7.</summary>
    [Description("The value as given, such as 4k7.")]
    public string? Value { get; set; }

    /// <summary>The package.</summary>
    [Description("The package.")]
    public string? Package { get; set; }

    /// <summary>The maker as read.</summary>
    [Description("The maker as read.")]
    public string? Maker { get; set; }

    /// <summary>A description.</summary>
    [Description("A description.")]
    public string? Description { get; set; }

    /// <summary>How many of the part, 0 to 100000.</summary>
    [Description("How many of the part, 0 to 100000.")]
    public int? Quantity { get; set; }

    /// <summary>How many share the current, 1 to 1000.</summary>
    [Description("How many share the current, 1 to 1000.")]
    public int Parallel { get; set; } = 1;

    /// <summary>How many share the voltage, 1 to 1000.</summary>
    [Description("How many share the voltage, 1 to 1000.")]
    public int Series { get; set; } = 1;

    /// <summary>False where the place is left empty.</summary>
    [Description("False where the place is left empty.")]
    public bool IsFitted { get; set; } = true;

    /// <summary>The slug of its part family; null while it is not identified.</summary>
    [Description("The slug of its part family; null while it is not identified.")]
    public string? Family { get; set; }

    /// <summary>How the family is known.</summary>
    [Description("How the family is known.")]
    public Evidence? FamilyEvidence { get; set; }

    /// <summary>The id of the rail it sits on or in.</summary>
    [Description("The id of the rail it sits on or in.")]
    public Guid? RailId { get; set; }

    /// <summary>Where in the circuit it stands; it decides which voltage and current of the rail it sees.</summary>
    [Description("Where in the circuit it stands; it decides which voltage and current of the rail it sees.")]
    public CircuitPosition? CircuitPosition { get; set; }

    /// <summary>A remark.</summary>
    [Description("A remark.")]
    public string? Note { get; set; }
}
