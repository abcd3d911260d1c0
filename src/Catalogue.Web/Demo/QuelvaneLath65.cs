using Catalogue.Data.BenchLogs;
using Catalogue.Data.Isolation;
using Catalogue.Data.Photos;
using Catalogue.Data.Products;
using Catalogue.Data.Rails;
using Catalogue.Data.Teardowns;
using Catalogue.Domain.Components;
using Catalogue.Domain.Isolation;
using Catalogue.Domain.Photos;
using Catalogue.Domain.Products;
using Catalogue.Domain.Quantities;
using Catalogue.Domain.Rails;
using Catalogue.Domain.Teardowns;
using static Catalogue.Web.Demo.DemoQuantities;

namespace Catalogue.Web.Demo;

/// <summary>A charger that does what its label says.</summary>
internal static class QuelvaneLath65
{
    private static readonly DateOnly Calibrated = new(2025, 3, 11);

    public static DemoTeardown Data => new()
    {
        Brand = "Quelvane",
        Name = "Lath 65",
        Model = "QL-65C1",
        Category = ProductCategory.Charger,
        Facts = new TeardownForm
        {
            Title = "Quelvane Lath 65",
            Standfirst = "Gives the 65 W that its label promises, at every voltage it offers, and its mains fuse has room for the current.",
            Year = 2024,
            MassKg = 0.118,
            TakenApartOn = new DateOnly(2025, 10, 14),
            TakenApartBy = "M. Adair",
            Obtained = SampleSource.Lent,
            ObtainedNote = "Lent by a reader, who knew that it would not come back in one piece. Nobody else saw this record before it was published.",
            Condition = "Used for about a year; no marks of heat.",
            MethodMarkdown = """
                Fed from an isolated source of 90 to 264 V. The USB-C port was loaded through a 5 A marked cable of 1 m; voltage and current were
                taken at the cable's far end and corrected for its drop, which is recorded.

                The case is glued; it was opened along its seam after the capacitors had been recorded as discharged.
                """,
        },
        Ports =
        [
            new PortForm
            {
                Name = "USB-C",
                Kind = "USB-C",
                AsPrinted = "5V 3A / 9V 3A / 15V 3A / 20V 3.25A / PPS 3.3-21V 3A",
                Protocols = ["USB Power Delivery", "programmable supply"],
                CapabilityWords = ["0x0801912C", "0x0002D12C", "0x0004B12C", "0x00064145", "0xC1A4213C"],
            },
            new PortForm { Name = "Mains pins", Kind = "mains plug", Direction = PortDirection.Input, AsPrinted = "100-240V~ 50/60Hz 1.6A" },
        ],
        Claims =
        [
            new(ClaimPlace.Label, "USB-C output", "20V 3.25A", 65, Unit.Watt, "USB-C"),
            new(ClaimPlace.Box, "USB-C output", "65 W", 65, Unit.Watt, "USB-C"),
            new(ClaimPlace.Label, "mains current", "1.6A", 1.6, Unit.Ampere, "Mains pins"),
            new(ClaimPlace.WebPage, "efficiency", "up to 93 %", 0.93, Unit.Ratio),
            new(ClaimPlace.WebPage, "no-load draw", "below 75 mW", 0.075, Unit.Watt, "Mains pins"),
            new(ClaimPlace.Box, "mass", "120 g", 0.12, Unit.Kilogram),
        ],
        Tests =
        [
            new("output", new BenchTestForm
            {
                Subject = "USB-C output",
                Conditions = "20 V contract, 3.25 A for two hours, 230 V in.",
                Instrument = "Pardel EL-60 electronic load",
                CalibratedOn = Calibrated,
                AmbientDegC = 25,
                Cable = "5 A marked, 1 m, 92 mΩ both ways",
                Low = 64.8,
                Value = 65.1,
                High = 65.4,
                Unit = Unit.Watt,
                ResultText = "20.03 V at 3.25 A at the socket; no fall in two hours.",
                TakenOn = new DateOnly(2025, 10, 9),
            }, "USB-C"),
            new("efficiency", new BenchTestForm
            {
                Subject = "efficiency",
                Conditions = "65 W out, 90 V in: the lowest line that was tried.",
                Instrument = "Pardel PM-3 power meter",
                CalibratedOn = Calibrated,
                AmbientDegC = 25,
                Cable = "5 A marked, 1 m, drop corrected",
                Low = 0.90,
                Value = 0.91,
                High = 0.92,
                Unit = Unit.Ratio,
                TakenOn = new DateOnly(2025, 10, 9),
            }, "Mains pins"),
            new("power factor", new BenchTestForm
            {
                Subject = "power factor",
                Conditions = "65 W out, 90 V in.",
                Instrument = "Pardel PM-3 power meter",
                CalibratedOn = Calibrated,
                AmbientDegC = 25,
                Low = 0.62,
                Value = 0.65,
                High = 0.68,
                Unit = Unit.Ratio,
                TakenOn = new DateOnly(2025, 10, 9),
            }, "Mains pins"),
            new("no load", new BenchTestForm
            {
                Subject = "no-load draw",
                Conditions = "Nothing plugged in, 230 V in, mean of 30 min.",
                Instrument = "Pardel PM-3 power meter",
                CalibratedOn = Calibrated,
                AmbientDegC = 25,
                Low = 0.058,
                Value = 0.062,
                High = 0.066,
                Unit = Unit.Watt,
                TakenOn = new DateOnly(2025, 10, 10),
            }, "Mains pins"),
            new("temperature", new BenchTestForm
            {
                Subject = "temperature beside F1",
                Conditions = "65 W out for two hours, 90 V in, case closed, thermocouple beside F1.",
                Instrument = "Pardel TC-8 logger, type K",
                CalibratedOn = Calibrated,
                AmbientDegC = 25,
                Low = 57,
                Value = 60,
                High = 63,
                Unit = Unit.DegreeCelsius,
                TakenOn = new DateOnly(2025, 10, 10),
            }),
        ],
        Rails =
        [
            new RailForm
            {
                Name = "Mains in",
                Kind = RailKind.Mains,
                MinVoltageV = Of(90, Evidence.Inferred, "label says 100 V; ten per cent below it"),
                NominalVoltageV = Of(230, Evidence.ReadOnPart, "label, 100 to 240 V"),
                MaxVoltageV = Of(264, Evidence.Inferred, "label says 240 V; ten per cent above it"),
                MaxPowerW = Of(65, Evidence.ReadOnPart, "label; measured at 65.1 W"),
                Efficiency = Of(0.91, Evidence.Measured, "efficiency at 90 V", 0.90, 0.92),
                PowerFactor = Of(0.65, Evidence.Measured, "power factor at 90 V", 0.62, 0.68),
            },
            new RailForm
            {
                Name = "Bulk bus",
                Kind = RailKind.DcBus,
                MinVoltageV = Of(98, Evidence.Measured, "valley at 90 V in, 65 W out"),
                NominalVoltageV = Of(322, Evidence.Measured, "at 230 V in"),
                MaxVoltageV = Of(373, Evidence.Inferred, "peak of 264 V"),
            },
            new RailForm
            {
                Name = "Output",
                Kind = RailKind.LowVoltage,
                MinVoltageV = Of(3.3, Evidence.Decoded, "capability words"),
                NominalVoltageV = Of(20, Evidence.Decoded, "capability words"),
                MaxVoltageV = Of(21, Evidence.Decoded, "capability words"),
                MaxCurrentA = Of(3.25, Evidence.Decoded, "capability words"),
            },
        ],
        Boards =
        [
            new(
                new BoardForm { Name = "Main board", Topology = ["quasi-resonant flyback", "synchronous rectifier"], Note = "Silkscreen LATH65-M V3, date 2331." },
                [
                    new("lath65-a.jpg", new PhotoForm
                    {
                        Subject = PhotoSubject.BoardTop,
                        Caption = "Main board, top. Mains left, output right of the slot.",
                        AltText = "Drawing of a black circuit board: mains terminal, fuse, choke and bridge on the left, two green lying capacitors below, a large transformer across the isolation slot, two output capacitors on the right.",
                    }),
                ],
                [
                    new("F1", "mains fuse", FunctionClass.IecCartridgeFuse, "T2AL\n250V")
                    {
                        Package = "radial, 8.5 × 8 mm", Rail = "Mains in",
                        Ratings =
                        [
                            Printed(RatingKind.RatedCurrent, "2 A", "time lag"),
                            Printed(RatingKind.RatedVoltage, "250 V", "ac"),
                            Known(RatingKind.AmbientTemperature, Evidence.Measured, "temperature beside F1", 60, 57, 63),
                            Known(RatingKind.TemperatureSlope, Evidence.Datasheet, "curve of like fuses", 0.002, 0.002, 0.003),
                        ],
                    },
                    new("RV1", "mains varistor", FunctionClass.Varistor, "RV-471") { PartNumber = "RV-471", Package = "disc, 10 mm", Rail = "Mains in" },
                    new("C1", "X capacitor", FunctionClass.SafetyCapacitor, "X2 MKP\nu33 310V~")
                    {
                        Package = "box, 15 mm pitch", Value = "0.33 µF X2", Rail = "Mains in", Ratings = [Coded(RatingKind.Capacitance, "0.33 µF"), Printed(RatingKind.RatedVoltage, "310 V", "ac")],
                    },
                    new("L1", "common-mode choke", FunctionClass.Inductor, "HL-18m")
                    {
                        PartNumber = "HL-18M", Maker = "Halwick", Rail = "Mains in", Ratings = [Known(RatingKind.Inductance, Evidence.Decoded, "18m in the marking", 0.018)],
                    },
                    new("BD1", "bridge rectifier", FunctionClass.Rectifier, "KBQ-404\n~ + - ~")
                    {
                        PartNumber = "KBQ-404", Package = "flat bridge", Rail = "Bulk bus", Ratings = [Sheet(RatingKind.RatedVoltage, "600 V"), Sheet(RatingKind.RatedCurrent, "4 A")],
                    },
                    new("C2, C3", "bulk capacitors", FunctionClass.AluminiumCapacitor, "82uF 400V\n105C")
                    {
                        Package = "radial, lying, Ø 16 mm", Value = "82 µF 400 V", Quantity = 2, Parallel = 2, Rail = "Bulk bus",
                        Ratings = [Printed(RatingKind.RatedVoltage, "400 V"), Printed(RatingKind.Capacitance, "82 µF"), Known(RatingKind.MaxTemperature, Evidence.ReadOnPart, "printed on the part", 105)],
                    },
                    new("Q1", "primary switch", FunctionClass.Switch, "GNV-6514\n2329")
                    {
                        PartNumber = "GNV-6514", Maker = "Gannavel", Package = "QFN 8 × 8", Rail = "Bulk bus",
                        Ratings = [Sheet(RatingKind.RatedVoltage, "650 V"), Known(RatingKind.OnResistance, Evidence.Datasheet, "maker's sheet", 0.14, condition: "at 25 °C")],
                    },
                    new("U1", "flyback controller", FunctionClass.Controller, "QRF-226\nA2331") { PartNumber = "QRF-226", Maker = "Kestrin", Package = "SOIC-8" },
                    new("T1", "flyback transformer", FunctionClass.Transformer, "QLA-RM10-65\n26T : 5T\n2330") { PartNumber = "QLA-RM10-65", Package = "RM10" },
                    new("U2", "feedback optocoupler", FunctionClass.Optocoupler, "HCO-24") { PartNumber = "HCO-24", Package = "DIP-4" },
                    new("CY1", "Y capacitor", FunctionClass.SafetyCapacitor, "Y1 222") { Package = "disc", Value = "2.2 nF Y1", Ratings = [Coded(RatingKind.Capacitance, "2.2 nF")] },
                    new("Q2", "synchronous rectifier", FunctionClass.Switch, "YN100\n7R5")
                    {
                        PartNumber = "YN100-7R5", Maker = "Yarrow", Package = "PDFN 5 × 6", Rail = "Output",
                        Ratings = [Sheet(RatingKind.RatedVoltage, "100 V"), Known(RatingKind.OnResistance, Evidence.Datasheet, "maker's sheet", 0.0075, condition: "at 25 °C")],
                    },
                    new("U3", "rectifier controller", FunctionClass.Controller, "SRQ-11") { PartNumber = "SRQ-11", Maker = "Kestrin", Package = "SOT-23-6" },
                    new("C11, C12", "output capacitors", FunctionClass.AluminiumCapacitor, "QPC\n560uF\n25V")
                    {
                        Package = "polymer, Ø 8 mm", Value = "560 µF 25 V", Quantity = 2, Parallel = 2, Rail = "Output", Ratings = [Printed(RatingKind.RatedVoltage, "25 V"), Printed(RatingKind.Capacitance, "560 µF")],
                    },
                    new("J2", "board connector", FunctionClass.Connector, null) { Package = "header, 8 ways", Note = "Board B stands on it." },
                ]),
            new(
                new BoardForm { Name = "USB-C board", Note = "Silkscreen LATH65-C V2." },
                [
                    new("lath65-b.jpg", new PhotoForm
                    {
                        Subject = PhotoSubject.BoardTop,
                        Caption = "USB-C board, top.",
                        AltText = "Drawing of a small black circuit board: a square protocol chip in the middle, a load switch, a shunt and a USB-C socket on the right.",
                    }),
                ],
                [
                    new("U4", "USB-C source controller", FunctionClass.ProtocolChip, "KPD-318\n2327") { PartNumber = "KPD-318", Maker = "Kestrin", Package = "QFN-24", Rail = "Output" },
                    new("U5", "voltage reference", FunctionClass.Regulator, "VRS-43") { PartNumber = "VRS-43", Package = "SOT-23-6", Rail = "Output" },
                    new("Q3", "load switch", FunctionClass.Switch, "YN40\n3R2")
                    {
                        PartNumber = "YN40-3R2", Maker = "Yarrow", Package = "PDFN 5 × 6", Rail = "Output",
                        Ratings = [Sheet(RatingKind.RatedVoltage, "40 V"), Known(RatingKind.OnResistance, Evidence.Datasheet, "maker's sheet", 0.0032, condition: "at 25 °C")],
                    },
                    new("R31", "current shunt", FunctionClass.Shunt, "R005") { Package = "chip, 2010", Value = "5 mΩ", Rail = "Output", Ratings = [Coded(RatingKind.Resistance, "5 mΩ")] },
                    new("RT1", "temperature sensor", FunctionClass.Thermistor, "104") { Value = "100 kΩ", Ratings = [Coded(RatingKind.Resistance, "100 kΩ")] },
                    new("J1", "USB-C socket", FunctionClass.Connector, null) { Rail = "Output" },
                ]),
        ],
        IsolationPaths =
        [
            new(
                new MeasuredPathForm
                {
                    From = "primary pads of U2",
                    To = "secondary pads of U2",
                    PathKind = PathKind.Creepage,
                    LowMm = 7.0,
                    NominalMm = 7.2,
                    HighMm = 7.4,
                    Method = "caliper, print side, parts in place",
                    NarrowestGrooveMm = 1.5,
                    WorkingVoltageV = 240,
                    Insulation = InsulationKind.Reinforced,
                    OvervoltageCategory = 2,
                    PollutionDegree = 2,
                    MaterialGroup = MaterialGroup.ThreeA,
                    AltitudeM = 2000,
                    IsCoated = false,
                    Remark = "The slot under U2 is followed, not bridged. The way inside U2 cannot be seen.",
                },
                "Main board"),
        ],
        DischargeReadings =
        [
            new(
                new DischargeReadingForm { Place = "C2, at its pins", LowV = 1.2, NominalV = 1.3, HighV = 1.4, TakenAt = new DateTimeOffset(2025, 10, 14, 9, 42, 0, TimeSpan.Zero), Instrument = "Pardel 4½-digit meter" },
                "Bulk bus"),
        ],
        Pictures =
        [
            new("lath65-sides.png", new PhotoForm
            {
                Subject = PhotoSubject.Product,
                Caption = "Port side, and label side with the pins.",
                AltText = "Line drawing of a small box-shaped charger with one USB-C port, and of its label side with two mains pins.",
            }),
        ],
        Findings =
        [
            new(
                "65 W, as the label says",
                "The port offered every voltage on the label and gave 65.1 W at 20 V for two hours without falling back. The five capability words agree with the print.",
                ["U4"],
                ["output"]),
            new(
                "The mains fuse has room for the current, not for every voltage",
                "At 90 V, the lowest line we tried, 65 W out needs about 1.22 A. The 2 A time-lag fuse, at the 60 °C measured beside it, may carry about 1.86 A: headroom **1.52**, and 1.37 in the worst case. Its print says 250 V; a socket at 240 V may reach 264 V, and there it is over its rating.",
                ["F1"],
                ["efficiency", "power factor", "temperature"]),
            new(
                "Efficiency is a little below the web page",
                "The web page says up to 93 % and names no condition. At full load we measured 91 % at 90 V.",
                [],
                ["efficiency"]),
        ],
        Steps =
        [
            new("Outside", "A glued case without screws. The label names both the fixed voltages and the programmable range.", "lath65-sides.png"),
            new("Main board", "The boards come out in one piece. The print under the transformer's label was read with the label in place.", "lath65-a.jpg"),
            new("USB-C board", "Stands upright on J2; unplugged for its drawing.", "lath65-b.jpg"),
        ],
    };
}
