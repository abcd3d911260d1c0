namespace Catalogue.Domain.Packages;

/// <summary>What sort of body a package is, by how it is joined to the board.</summary>
public enum PackageKind
{
    /// <summary>Two ends of metal, named by a size code: resistors, ceramic capacitors.</summary>
    Chip,

    /// <summary>A moulded chip tantalum capacitor, named by its case.</summary>
    TantalumChip,

    /// <summary>A small surface-mount transistor outline, such as SOT-23.</summary>
    SmdSmall,

    /// <summary>A surface-mount power outline with a tab or pad for heat, such as TO-252.</summary>
    SmdPower,

    /// <summary>Wires or pins through the board, such as DIP-8.</summary>
    ThroughHole,

    /// <summary>A power outline through the board, with a tab, such as TO-220.</summary>
    ThroughHolePower,

    /// <summary>Gull-wing leads on two sides, such as SOIC-8.</summary>
    GullWing,

    /// <summary>Gull-wing leads on four sides, such as LQFP-48.</summary>
    GullWingQuad,

    /// <summary>Pads under the body, such as QFN-24. One pin count comes in several sizes.</summary>
    Leadless,

    /// <summary>Pads under the body of one power switch, such as DFN5X6; the size is in the name.</summary>
    LeadlessPower,

    /// <summary>Balls or lands in a grid, such as BGA-100.</summary>
    GridArray,

    /// <summary>A surface-mount diode, such as SMA.</summary>
    DiodeSmd,

    /// <summary>A diode with a wire at each end, such as DO-41.</summary>
    DiodeAxial,

    /// <summary>A bridge rectifier.</summary>
    Bridge,

    /// <summary>A coupler.</summary>
    Opto,

    /// <summary>A part on two wires whose name says no size: radial, axial, disc, box.</summary>
    Wired,

    /// <summary>An electrolytic can on two surface-mount feet.</summary>
    SmdCan,
}
