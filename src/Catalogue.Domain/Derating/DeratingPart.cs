namespace Catalogue.Domain.Derating;

/// <summary>A class of parts, as the guidelines divide them.</summary>
public enum DeratingPart
{
    /// <summary>Ceramic capacitors.</summary>
    CeramicCapacitor,

    /// <summary>Plastic film capacitors.</summary>
    FilmCapacitor,

    /// <summary>Glass capacitors.</summary>
    GlassCapacitor,

    /// <summary>Aluminium electrolytic capacitors.</summary>
    AluminiumCapacitor,

    /// <summary>Solid tantalum capacitors.</summary>
    SolidTantalumCapacitor,

    /// <summary>Wet tantalum capacitors.</summary>
    WetTantalumCapacitor,

    /// <summary>Cartridge fuses of either style.</summary>
    CartridgeFuse,

    /// <summary>Cartridge fuses rated the UL 248-14 way.</summary>
    UlCartridgeFuse,

    /// <summary>Cartridge fuses rated the IEC 60127-2 way.</summary>
    IecCartridgeFuse,

    /// <summary>Blade fuses.</summary>
    BladeFuse,

    /// <summary>Cermet fuses.</summary>
    CermetFuse,

    /// <summary>Semiconductors of any kind.</summary>
    Semiconductor,

    /// <summary>MOSFETs.</summary>
    Mosfet,

    /// <summary>Rectifier diodes.</summary>
    RectifierDiode,

    /// <summary>Film resistors.</summary>
    FilmResistor,

    /// <summary>Connectors.</summary>
    Connector,
}
