namespace Catalogue.Domain.Components.Lists;

/// <summary>What a column of a component list holds.</summary>
public enum ColumnMeaning
{
    /// <summary>Places on the board, such as <c>R1, R2, C5-C8</c>.</summary>
    Designators,

    /// <summary>How many are fitted on one board.</summary>
    Quantity,

    /// <summary>The value or, where the list has no better column, the name of the part.</summary>
    Value,

    /// <summary>The maker's ordering code.</summary>
    PartNumber,

    /// <summary>Who made the part.</summary>
    Maker,

    /// <summary>Package or footprint.</summary>
    Package,

    /// <summary>What the part is, in words.</summary>
    Description,

    /// <summary>What the part does in the circuit.</summary>
    Role,

    /// <summary>Says that a part is fitted.</summary>
    Fitted,

    /// <summary>Says that a part is not fitted.</summary>
    NotFitted,

    /// <summary>Remarks.</summary>
    Remarks,

    /// <summary>The build variant that a part belongs to.</summary>
    Variant,

    /// <summary>Who sells the part.</summary>
    Supplier,

    /// <summary>A seller's or the lab's own order code; never the maker's part number.</summary>
    SupplierPartNumber,

    /// <summary>A running number of the lines; never a quantity.</summary>
    RunningNumber,

    /// <summary>An address on the web.</summary>
    Link,
}
