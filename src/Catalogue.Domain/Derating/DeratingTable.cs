using static Catalogue.Domain.Derating.DeratingParameter;
using static Catalogue.Domain.Derating.DeratingPart;
using static Catalogue.Domain.Derating.DeratingSource;
using static Catalogue.Domain.Quantities.Confidence;

namespace Catalogue.Domain.Derating;

/// <summary>
/// The guidelines of public documents, each with its mark. Rows marked low are listed so that nobody adds them as better ones; they are
/// never used.
/// </summary>
public static class DeratingTable
{
    private const string Severe = "severe environment";
    private const string Benign = "benign environment";

    /// <summary>All rows.</summary>
    public static IReadOnlyList<DeratingGuideline> All { get; } =
    [
        new(Nasa, CeramicCapacitor, Voltage, 0.6, High, "ambient up to 110 °C; dc plus peak ripple") { UpToDegC = 110 },
        new(Nasa, FilmCapacitor, Voltage, 0.6, High, "ambient up to 85 °C") { UpToDegC = 85 },
        new(Nasa, GlassCapacitor, Voltage, 0.5, High, "ambient up to 110 °C") { UpToDegC = 110 },
        new(Nasa, SolidTantalumCapacitor, Voltage, 0.5, High, "up to 70 °C, falling to 0.30 at 110 °C") { Line = new(70, 110, 0.3) },
        new(Nasa, WetTantalumCapacitor, Voltage, 0.6, High, "up to 70 °C, falling to 0.40 at 110 °C") { Line = new(70, 110, 0.4) },
        NasaFuse(0.5, 2, 15, "2 to 15 A"),
        NasaFuse(0.45, 1, 1.5, "1 to 1.5 A"),
        NasaFuse(0.4, 0.5, 0.75, "0.5 to 0.75 A"),
        NasaFuse(0.35, 0.375, 0.375, "0.375 A"),
        NasaFuse(0.3, 0.25, 0.25, "0.25 A"),
        NasaFuse(0.25, 0.125, 0.125, "0.125 A"),
        new(Nasa, CartridgeFuse, CurrentTemperatureSlope, 0.002, Low, "above 25 °C; an older secondary table gives 0.005") { Measure = DeratingMeasure.PerDegC },
        new(Nasa, Mosfet, DrainSourceVoltage, 0.75, Medium),
        new(Nasa, Mosfet, DrainCurrent, 0.75, Medium),
        new(Nasa, Mosfet, Power, 0.6, Medium),
        new(Nasa, RectifierDiode, ReverseVoltage, 0.7, Medium),
        new(Nasa, RectifierDiode, ForwardCurrent, 0.5, Medium),
        new(Nasa, FilmResistor, Power, 0.6, Low, "depends on style and temperature"),
        new(Ecss, CermetFuse, Current, 0.65, High, "case up to 85 °C, falling to 0.50 at 110 °C (6.17, Table 6-17); cermet fuses only") { Line = new(85, 110, 0.5) },
        new(Ecss, Connector, Current, 0.5, High, "6.11, Table 6-10"),
        new(Ecss, Connector, Voltage, 0.75, High, "of the rated working voltage, or 25 % of the withstand test where that is lower"),
        new(Ecss, Mosfet, DrainSourceVoltage, 0.8, Medium),
        new(Ecss, Mosfet, DrainCurrent, 0.75, Medium),
        new(Ecss, RectifierDiode, ReverseVoltage, 0.75, Medium),
        new(Ecss, RectifierDiode, ForwardCurrent, 0.75, Medium),
        new(Ecss, Semiconductor, JunctionTemperature, 110, Medium, "or 40 °C below the highest rated one, whichever is lower") { Measure = DeratingMeasure.HighestDegC, AlsoDegCBelowRating = 40 },
        new(Ecss, CeramicCapacitor, Voltage, 0.6, Medium),
        new(Ecss, SolidTantalumCapacitor, Voltage, 0.6, Low, "depends on temperature"),
        new(Ipc, CeramicCapacitor, Voltage, 0.8, Medium, "from a reading of a draft"),
        new(Ipc, AluminiumCapacitor, Voltage, 0.8, Medium, "from a reading of a draft"),
        new(Ipc, AluminiumCapacitor, RippleCurrent, 0.7, Medium, "from a reading of a draft"),
        new(Ipc, AluminiumCapacitor, TemperatureMargin, 10, Medium, "from a reading of a draft") { Measure = DeratingMeasure.DegCBelowRating },
        new(Ipc, SolidTantalumCapacitor, Voltage, 0.7, Medium, "from a reading of a draft; not recommended in power designs"),
        new(Ipc, Mosfet, DrainSourceVoltage, 0.8, Low, "from secondary sources"),
        .. SevereAndBenign(AluminiumCapacitor, Voltage, 0.7, 0.8),
        .. SevereAndBenign(CeramicCapacitor, Voltage, 0.6, 0.7),
        .. SevereAndBenign(FilmCapacitor, Voltage, 0.6, 0.7),
        .. SevereAndBenign(SolidTantalumCapacitor, Voltage, 0.7, 0.8),
        .. SevereAndBenign(RectifierDiode, ReverseVoltage, 0.7, 0.8),
        .. SevereAndBenign(RectifierDiode, ForwardCurrent, 0.9, 1),
        .. SevereAndBenign(Connector, Current, 0.7, 0.85),
        .. SevereAndBenign(RectifierDiode, JunctionTemperature, 95, 115, DeratingMeasure.HighestDegC),
        new(Mil, Mosfet, DrainGateVoltage, 0.6, High, "nominal working"),
        new(Mil, Mosfet, DrainGateVoltage, 0.7, High, "repetitive peak"),
        new(Mil, Mosfet, DrainGateVoltage, 0.8, High, "non-repetitive"),
        new(Mil, Mosfet, DrainCurrent, 0.6, High, "nominal"),
        new(Mil, Mosfet, DrainCurrent, 0.8, High, "maximum"),
        new(Mil, Mosfet, GateSourceVoltage, 0.7, High),
        new(TradeConvention, BladeFuse, Current, 0.75, Medium, "75 % convention for blade fuses"),
        new(TradeConvention, UlCartridgeFuse, Current, 0.75, Medium, "75 % convention for UL-style fuses"),
        new(TradeConvention, IecCartridgeFuse, Current, 1, Medium, "100 % convention for IEC cartridge fuses at 23 °C"),
    ];

    /// <summary>The usable rows of a class and of its wider class, in the order of the table; may be empty.</summary>
    public static IEnumerable<DeratingGuideline> UsableFor(DeratingPart part, DeratingParameter parameter) =>
        All.Where(row => row.IsUsable && row.Parameter == parameter && (row.Part == part || row.Part == part.Parent()));

    private static DeratingGuideline NasaFuse(double factor, double from, double to, string rated) =>
        new(Nasa, CartridgeFuse, Current, factor, Medium, $"rated {rated}, 25 °C") { RatedAmpere = (from, to) };

    private static DeratingGuideline[] SevereAndBenign(DeratingPart part, DeratingParameter parameter, double severe, double benign, DeratingMeasure measure = DeratingMeasure.Factor) =>
    [
        new(Rac, part, parameter, severe, High, Severe) { Measure = measure },
        new(Rac, part, parameter, benign, High, Benign) { Measure = measure },
    ];
}
