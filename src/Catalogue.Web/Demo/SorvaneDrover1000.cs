using Catalogue.Data.BenchLogs;
using Catalogue.Data.Photos;
using Catalogue.Data.Products;
using Catalogue.Data.Rails;
using Catalogue.Data.Teardowns;
using Catalogue.Domain.Components;
using Catalogue.Domain.Photos;
using Catalogue.Domain.Products;
using Catalogue.Domain.Quantities;
using Catalogue.Domain.Rails;
using Catalogue.Domain.Teardowns;
using static Catalogue.Web.Demo.DemoQuantities;

namespace Catalogue.Web.Demo;

/// <summary>A 12 V inverter whose three paralleled fuses carry more than their rating, and a fuse whose print is worn away.</summary>
internal static class SorvaneDrover1000
{
    private static readonly DateOnly Calibrated = new(2025, 3, 11);

    public static DemoTeardown Data => new()
    {
        Brand = "Sorvane",
        Name = "Drover 1000",
        Model = "SD-1000-12E",
        Category = ProductCategory.Inverter,
        Facts = new TeardownForm
        {
            Title = "Sorvane Drover 1000",
            Standfirst = "Three 35 A fuses carry 108 A between them at full load: more than their rating, before any guideline.",
            Year = 2023,
            MassKg = 2.94,
            TakenApartOn = new DateOnly(2025, 9, 30),
            TakenApartBy = "I. Sorrel",
            Obtained = SampleSource.Bought,
            ObtainedNote = "Bought over the counter from a chandler, at the full price, by the lab.",
            Condition = "New; box opened by the lab.",
            Firmware = "V17, printed on the microcontroller",
            CellChemistry = "lead-acid (external 12 V battery, not part of the unit)",
            MethodMarkdown = """
                Powered from a 12 V lead-acid battery bank through 50 mm² leads, 1.2 m each way; voltage taken at the unit's terminals.
                Loads were resistive. Temperatures by thermocouple, fixed before the cover went back on.

                The board was photographed on a cutting mat with a 40 mm grid; the pictures here are drawings made after it.
                """,
        },
        Ports =
        [
            new PortForm { Name = "AC outlets", Kind = "AC outlet", Quantity = 2, AsPrinted = "230V~ 50Hz" },
            new PortForm
            {
                Name = "USB-C",
                Kind = "USB-C",
                AsPrinted = "USB-C 30W",
                Protocols = ["USB Power Delivery"],
                CapabilityWords = ["0x0001912C", "0x0002D12C", "0x0004B0C8", "0x00064096"],
            },
            new PortForm { Name = "Battery terminals", Kind = "M8 stud", Direction = PortDirection.Input, AsPrinted = "12V" },
        ],
        Claims =
        [
            new(ClaimPlace.Label, "AC output, continuous", "1000W", 1000, Unit.Watt, "AC outlets"),
            new(ClaimPlace.Box, "AC output, peak", "2000W peak power", 2000, Unit.Watt, "AC outlets"),
            new(ClaimPlace.Manual, "efficiency", "max. efficiency > 90 %", 0.90, Unit.Ratio),
            new(ClaimPlace.Label, "USB-C output", "30W", 30, Unit.Watt, "USB-C"),
            new(ClaimPlace.Manual, "no-load draw", "< 0.6 A", 0.6, Unit.Ampere, "Battery terminals"),
            new(ClaimPlace.Box, "mass", "2.9 kg", 2.9, Unit.Kilogram),
        ],
        Tests =
        [
            new("cut-off", new BenchTestForm
            {
                Subject = "lowest input voltage",
                Conditions = "Three runs, 300 W resistive, battery bank drawn down until the unit stopped; voltage at the terminals.",
                Instrument = "Pardel 4½-digit meter",
                CalibratedOn = Calibrated,
                AmbientDegC = 23,
                Cable = "50 mm², 1.2 m each way",
                Low = 10.4,
                Value = 10.5,
                High = 10.6,
                Unit = Unit.Volt,
                TakenOn = new DateOnly(2025, 9, 24),
            }, "Battery terminals"),
            new("efficiency", new BenchTestForm
            {
                Subject = "efficiency",
                Conditions = "1000 W resistive, 11.8 V at the terminals, after two minutes.",
                Instrument = "Pardel PM-3 power meter and 200 A shunt",
                CalibratedOn = Calibrated,
                AmbientDegC = 23,
                Cable = "50 mm², 1.2 m each way",
                Low = 0.87,
                Value = 0.88,
                High = 0.89,
                Unit = Unit.Ratio,
                TakenOn = new DateOnly(2025, 9, 24),
            }, "AC outlets"),
            new("full load", new BenchTestForm
            {
                Subject = "AC output, continuous",
                Conditions = "1000 W resistive from a cold start, cover on, until the unit shut itself down.",
                Instrument = "Pardel PM-3 power meter",
                CalibratedOn = Calibrated,
                AmbientDegC = 24,
                Cable = "1.5 mm², 2 m, outlet to load",
                Value = 994,
                Low = 989,
                High = 999,
                Unit = Unit.Watt,
                ResultText = "Held for 9 min 20 s, then a thermal stop; none of F1 to F3 opened.",
                TakenOn = new DateOnly(2025, 9, 25),
            }, "AC outlets"),
            new("fuse temperature", new BenchTestForm
            {
                Subject = "temperature beside F1 to F3",
                Conditions = "At the end of the full-load test, thermocouple in the air 5 mm above F2.",
                Instrument = "Pardel TC-8 logger, type K",
                CalibratedOn = Calibrated,
                AmbientDegC = 24,
                Low = 42,
                Value = 45,
                High = 48,
                Unit = Unit.DegreeCelsius,
                ResultText = "The holder of F2 itself reached 97 °C.",
                TakenOn = new DateOnly(2025, 9, 25),
            }),
            new("no load", new BenchTestForm
            {
                Subject = "no-load draw",
                Conditions = "AC on, nothing connected, mean of 30 min.",
                Instrument = "Pardel PM-3 power meter and 200 A shunt",
                CalibratedOn = Calibrated,
                AmbientDegC = 23,
                Cable = "50 mm², 1.2 m each way",
                Value = 0.74,
                Unit = Unit.Ampere,
                TakenOn = new DateOnly(2025, 9, 24),
            }, "Battery terminals"),
            new("usb", new BenchTestForm
            {
                Subject = "USB-C output",
                Conditions = "20 V contract, load raised until the voltage left its band.",
                Instrument = "Pardel EL-60 electronic load",
                CalibratedOn = Calibrated,
                AmbientDegC = 23,
                Cable = "3 A marked, 1 m",
                Low = 30.2,
                Value = 30.4,
                High = 30.6,
                Unit = Unit.Watt,
                TakenOn = new DateOnly(2025, 9, 26),
            }, "USB-C"),
        ],
        Rails =
        [
            new RailForm
            {
                Name = "Battery inlet",
                Kind = RailKind.Pack,
                MinVoltageV = Of(10.5, Evidence.Measured, "lowest input voltage, three runs", 10.4, 10.6),
                NominalVoltageV = Of(12, Evidence.ReadOnPart, "label"),
                MaxVoltageV = Of(15, Evidence.Inferred, "manual: over-voltage stop at 15 V"),
                MaxPowerW = Of(1000, Evidence.ReadOnPart, "label; held for 9 min 20 s at 994 W"),
                Efficiency = Of(0.88, Evidence.Measured, "efficiency at 1000 W", 0.87, 0.89),
            },
            new RailForm
            {
                Name = "HV bus",
                Kind = RailKind.DcBus,
                MinVoltageV = Of(300, Evidence.Measured, "full-load test"),
                NominalVoltageV = Of(322, Evidence.Measured, "full-load test"),
                MaxVoltageV = Of(341, Evidence.Measured, "no load"),
            },
            new RailForm { Name = "AC out", Kind = RailKind.Mains, NominalVoltageV = Of(230, Evidence.ReadOnPart, "label") },
            new RailForm
            {
                Name = "Fan supply",
                Kind = RailKind.LowVoltage,
                NominalVoltageV = Of(12, Evidence.Inferred, "fed from the battery inlet"),
                MaxCurrentA = Of(0.45, Evidence.Measured, "fan at full speed, clamp meter", 0.42, 0.48),
            },
            new RailForm
            {
                Name = "USB feed",
                Kind = RailKind.LowVoltage,
                MinVoltageV = Of(10.5, Evidence.Inferred, "follows the battery inlet", 10.4, 10.6),
                MaxPowerW = Of(30, Evidence.ReadOnPart, "label"),
                Efficiency = Of(0.92, Evidence.Inferred, "buck converters of this kind on this bench", 0.90, 0.94),
            },
        ],
        Boards =
        [
            new(
                new BoardForm { Name = "Inverter board", Topology = ["push-pull", "H-bridge inverter"], Note = "Silkscreen SD-1000 R4, date 2247." },
                [
                    new("drover1000-a.jpg", new PhotoForm
                    {
                        Subject = PhotoSubject.BoardTop,
                        Caption = "Inverter board, top. Battery studs left, outlets lower right.",
                        AltText = "Drawing of a blue circuit board: two battery studs and three blade fuses on the left, eight transistors on two heatsinks, two blue transformers, two lying capacitors, four more transistors and the outlet terminal on the right.",
                    }),
                ],
                [
                    new("F1-F3", "battery fuses", FunctionClass.BladeFuse, "35")
                    {
                        Package = "blade, soldered holder",
                        Quantity = 3,
                        Parallel = 3,
                        Rail = "Battery inlet",
                        Note = "All three lie between the B+ stud and the transformer's centre taps.",
                        Ratings =
                        [
                            Printed(RatingKind.RatedCurrent, "35 A"),
                            Known(RatingKind.RatedVoltage, Evidence.Inferred, "blade style", 32),
                            Known(RatingKind.CurrentSharing, Evidence.Inferred, "length of the copper from the stud to each holder", 0.93, 0.80, 1),
                            Known(RatingKind.AmbientTemperature, Evidence.Measured, "temperature beside F1 to F3", 45, 42, 48),
                            Known(RatingKind.TemperatureSlope, Evidence.Inferred, "blade fuses in general", 0.002, 0.002, 0.005),
                        ],
                    },
                    new("C1-C4", "battery-side capacitors", FunctionClass.AluminiumCapacitor, "OND\n3300uF\n25V")
                    {
                        Maker = "Ondrel", Package = "radial, Ø 18 mm", Value = "3300 µF 25 V", Quantity = 4, Parallel = 4, Rail = "Battery inlet",
                        Ratings = [Printed(RatingKind.RatedVoltage, "25 V"), Printed(RatingKind.Capacitance, "3300 µF")],
                    },
                    new("Q1-Q4", "push-pull switches, side A", FunctionClass.Switch, "MWK\n06N75")
                    {
                        PartNumber = "MWK-06N75", Maker = "Merwick", Package = "TO-220", Quantity = 4, Parallel = 4, Rail = "Battery inlet",
                        Ratings = [Sheet(RatingKind.RatedVoltage, "60 V"), Known(RatingKind.OnResistance, Evidence.Datasheet, "maker's sheet", 0.0028, condition: "at 25 °C")],
                    },
                    new("Q5-Q8", "push-pull switches, side B", FunctionClass.Switch, "MWK\n06N75")
                    {
                        PartNumber = "MWK-06N75", Maker = "Merwick", Package = "TO-220", Quantity = 4, Parallel = 4, Rail = "Battery inlet",
                        Ratings = [Sheet(RatingKind.RatedVoltage, "60 V"), Known(RatingKind.OnResistance, Evidence.Datasheet, "maker's sheet", 0.0028, condition: "at 25 °C")],
                    },
                    new("T1, T2", "push-pull transformers", FunctionClass.Transformer, "HW-EE42-120\n2T+2T : 62T\n2247")
                    {
                        PartNumber = "HW-EE42-120", Maker = "Halwick", Package = "EE42", Quantity = 2,
                    },
                    new("U1", "push-pull controller", FunctionClass.Controller, "MWK-721\n2244 K7") { PartNumber = "MWK-721", Maker = "Merwick", Package = "SOIC-16" },
                    new("U2", "system microcontroller", FunctionClass.Microcontroller, "NTC8-064\nSD10 V17") { PartNumber = "NTC8-064", Package = "LQFP-32" },
                    new("U3", "feedback optocoupler", FunctionClass.Optocoupler, "HCO-17") { PartNumber = "HCO-17", Package = "DIP-4" },
                    new("D1-D4", "bus rectifier", FunctionClass.Rectifier, "YD12\nA65")
                    {
                        PartNumber = "YD12A65", Maker = "Yarrow", Package = "TO-220", Quantity = 4, Rail = "HV bus", Note = "Bridge of four.",
                        Ratings = [Sheet(RatingKind.RatedVoltage, "650 V"), Sheet(RatingKind.RatedCurrent, "12 A")],
                    },
                    new("C10, C11", "bus capacitors", FunctionClass.AluminiumCapacitor, "100uF 400V\n105C")
                    {
                        Package = "radial, lying, Ø 25 mm", Value = "100 µF 400 V", Quantity = 2, Parallel = 2, Rail = "HV bus",
                        Ratings = [Printed(RatingKind.RatedVoltage, "400 V"), Printed(RatingKind.Capacitance, "100 µF"), Known(RatingKind.MaxTemperature, Evidence.ReadOnPart, "printed on the part", 105)],
                    },
                    new("Q9-Q12", "bridge switches", FunctionClass.Switch, "YTN50\n14A")
                    {
                        PartNumber = "YTN50-14A", Maker = "Yarrow", Package = "TO-220", Quantity = 4, Rail = "HV bus", Note = "Two half bridges.",
                        Ratings = [Sheet(RatingKind.RatedVoltage, "500 V"), Sheet(RatingKind.RatedCurrent, "14 A")],
                    },
                    new("L1", "output choke", FunctionClass.Inductor, "HL-3m3")
                    {
                        PartNumber = "HL-3M3", Maker = "Halwick", Rail = "AC out", Ratings = [Known(RatingKind.Inductance, Evidence.Decoded, "3m3 in the marking", 0.0033)],
                    },
                    new("C12", "output capacitor", FunctionClass.SafetyCapacitor, "X2 MKP\n1u0\n310V~")
                    {
                        Package = "box, 22.5 mm pitch", Value = "1 µF X2", Rail = "AC out", Ratings = [Coded(RatingKind.Capacitance, "1 µF"), Printed(RatingKind.RatedVoltage, "310 V", "ac")],
                    },
                    new("RV1", "output varistor", FunctionClass.Varistor, "RV-471") { PartNumber = "RV-471", Package = "disc, 14 mm", Rail = "AC out" },
                    new("F5", "fan fuse", FunctionClass.UlCartridgeFuse, "2A")
                    {
                        Package = "glass, 5 × 20 mm", Rail = "Fan supply",
                        Ratings =
                        [
                            Printed(RatingKind.RatedCurrent, "2 A"),
                            Known(RatingKind.AmbientTemperature, Evidence.Inferred, "as beside F1 to F3", 45, 42, 48),
                            Known(RatingKind.TemperatureSlope, Evidence.Inferred, "glass fuses in general", 0.002, 0.002, 0.005),
                        ],
                    },
                ]),
            new(
                new BoardForm { Name = "USB board", Topology = ["buck"], Note = "Silkscreen SD-USB R2." },
                [
                    new("drover1000-b.jpg", new PhotoForm
                    {
                        Subject = PhotoSubject.BoardTop,
                        Caption = "USB board, top. The first character on F4 is worn away.",
                        AltText = "Drawing of a small blue circuit board: a scuffed chip fuse, a regulator with its inductor, a square protocol chip and a USB-C socket.",
                    }),
                ],
                [
                    new("F4", "USB feed fuse", FunctionClass.Fuse, "?A")
                    {
                        Package = "chip, 2410", Rail = "USB feed", Note = "The figure before the A is scraped off; under the lens it may have been 5 or 6.",
                        Ratings = [Known(RatingKind.Derating, Evidence.Inferred, "chip fuses of this size", 0.75)],
                    },
                    new("R21", "current shunt", FunctionClass.Shunt, "R005") { Package = "chip, 2010", Value = "5 mΩ", Rail = "USB feed", Ratings = [Coded(RatingKind.Resistance, "5 mΩ")] },
                    new("Q21", "output switch", FunctionClass.Switch, "YN40\n3R2")
                    {
                        PartNumber = "YN40-3R2", Maker = "Yarrow", Package = "PDFN 5 × 6", Ratings = [Sheet(RatingKind.RatedVoltage, "40 V"), Known(RatingKind.OnResistance, Evidence.Datasheet, "maker's sheet", 0.0032, condition: "at 25 °C")],
                    },
                    new("U10", "USB-C source controller", FunctionClass.ProtocolChip, "KPD-318\n2236") { PartNumber = "KPD-318", Maker = "Kestrin", Package = "QFN-24" },
                    new("U11", "buck regulator", FunctionClass.Regulator, "HRB-1240\n2240") { PartNumber = "HRB-1240", Maker = "Harrabin", Package = "SOIC-8", Rail = "USB feed" },
                    new("L11", "buck inductor", FunctionClass.Inductor, "100") { Package = "shielded, 10 × 10 mm", Value = "10 µH", Ratings = [Coded(RatingKind.Inductance, "10 µH")] },
                    new("C21", "output capacitor", FunctionClass.AluminiumCapacitor, "OND\n470uF\n25V")
                    {
                        Maker = "Ondrel", Package = "SMD can, Ø 10 mm", Value = "470 µF 25 V", Ratings = [Printed(RatingKind.RatedVoltage, "25 V"), Printed(RatingKind.Capacitance, "470 µF")],
                    },
                ]),
        ],
        Pictures =
        [
            new("drover1000-ends.png", new PhotoForm
            {
                Subject = PhotoSubject.Product,
                Caption = "Both ends of the unit: outlets and USB-C above, battery studs and fan below.",
                AltText = "Line drawing of both ends of a finned inverter: two AC outlets, a USB-C socket and a switch at one end; two battery studs and a fan at the other.",
            }),
        ],
        Findings =
        [
            new(
                "Three fuses in parallel carry more than their rating",
                """
                At its own cut-off of 10.5 V the inverter draws about 108 A for the claimed 1000 W. F1 to F3 are rated 35 A each, 105 A together,
                and three fuses never share evenly. Screened with the convention for blade fuses they may carry about 70 A: headroom **0.65**.

                In our run they did not open in nine minutes; the holder of F2 reached 97 °C before the unit stopped itself.
                """,
                ["F1-F3"],
                ["cut-off", "efficiency", "full load", "fuse temperature"]),
            new(
                "1000 W for nine minutes, not for longer",
                "The label says 1000 W and names no time. From a cold start the unit gave 994 W for 9 min 20 s and then stopped on temperature. The box's 2000 W peak was not measured.",
                [],
                ["full load"]),
            new(
                "One fuse cannot be screened",
                "The current on F4 is worn away: the record keeps it as `?A`, and its headroom stays unknown until a second sample is read.",
                ["F4"],
                []),
        ],
        Steps =
        [
            new("Outside", "Two end plates, four screws each. The housing is an extrusion with fins; it is the heatsink.", "drover1000-ends.png"),
            new("Before opening", "The bus capacitors were recorded as charged until a rated meter had shown their voltage. Nothing was bridged.", null),
            new("Inverter board", "The board slides out with both heatsinks on it. Every print was read before anything was moved.", "drover1000-a.jpg"),
            new("USB board", "Plugged in beside the outlets; fed from the battery inlet through J4.", "drover1000-b.jpg"),
        ],
    };
}
