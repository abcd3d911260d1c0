using Catalogue.Domain.Components;

namespace Catalogue.Domain.Derating;

/// <summary>How the classes of the guidelines hang together and which recorded parts belong to them.</summary>
public static class DeratingParts
{
    /// <summary>The wider class whose guidelines hold too, or null.</summary>
    public static DeratingPart? Parent(this DeratingPart part) => part switch
    {
        DeratingPart.UlCartridgeFuse or DeratingPart.IecCartridgeFuse => DeratingPart.CartridgeFuse,
        DeratingPart.Mosfet or DeratingPart.RectifierDiode => DeratingPart.Semiconductor,
        _ => null,
    };

    /// <summary>
    /// The guidelines' class of a recorded part, or null where none fits. A power transistor is taken as a MOSFET unless it is recorded as
    /// bipolar; for those no guideline is listed. A safety capacitor has none: its ac rating already is the limit.
    /// </summary>
    public static DeratingPart? For(FunctionClass? functionClass) => functionClass switch
    {
        FunctionClass.CeramicCapacitor => DeratingPart.CeramicCapacitor,
        FunctionClass.FilmCapacitor => DeratingPart.FilmCapacitor,
        FunctionClass.AluminiumCapacitor => DeratingPart.AluminiumCapacitor,
        FunctionClass.TantalumCapacitor => DeratingPart.SolidTantalumCapacitor,
        FunctionClass.BladeFuse => DeratingPart.BladeFuse,
        FunctionClass.UlCartridgeFuse => DeratingPart.UlCartridgeFuse,
        FunctionClass.IecCartridgeFuse => DeratingPart.IecCartridgeFuse,
        FunctionClass.Switch => DeratingPart.Mosfet,
        FunctionClass.Rectifier => DeratingPart.RectifierDiode,
        FunctionClass.Connector => DeratingPart.Connector,
        _ => null,
    };
}
