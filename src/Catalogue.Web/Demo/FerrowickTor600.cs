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

/// <summary>A power station: a capacity claim that does not add up, an inverter fuse past the guideline, and a correction that moved its figure.</summary>
internal static class FerrowickTor600
{
    private const string FuseFinding = "The inverter fuse is loaded past the guideline";

    private static readonly DateOnly Calibrated = new(2025, 3, 11);

    public static DemoTeardown Data => new()
    {
        Brand = "Ferrowick",
        Name = "Tor 600",
        Model = "TOR600-EU",
        Category = ProductCategory.PowerStation,
        Facts = new TeardownForm
        {
            Title = "Ferrowick Tor 600",
            Standfirst = "A 512 Wh claim that rests on cells marked for 461 Wh.",
            Year = 2024,
            MassKg = 6.52,
            TakenApartOn = new DateOnly(2025, 10, 21),
            TakenApartBy = "I. Sorrel",
            Obtained = SampleSource.Bought,
            ObtainedNote = "Bought by the lab from a hardware shop on 2 September 2025. The maker was not told.",
            Condition = "New; seal on the box unbroken.",
            Firmware = "1.08, shown at switch-on",
            CellChemistry = "lithium iron phosphate (LFP)",
            MethodMarkdown = """
                All capacity runs start from a full charge that the unit itself ended, after an hour's rest. Energy is integrated from one
                sample a second at the AC outlet; the pack's voltage was logged at the P+ and P− lugs.

                Temperatures by thermocouple, fixed before the case was closed again. No cell was taken out of the pack and none was measured alone.
                """,
        },
        Ports =
        [
            new PortForm { Name = "AC outlets", Kind = "AC outlet", Quantity = 2, AsPrinted = "AC 230V~ 50Hz 600W" },
            new PortForm
            {
                Name = "USB-C",
                Kind = "USB-C",
                Direction = PortDirection.Both,
                Quantity = 2,
                AsPrinted = "USB-C 100W",
                Protocols = ["USB Power Delivery", "programmable supply"],
                CapabilityWords = ["0x2001912C", "0x0002D12C", "0x0004B12C", "0x000641F4", "0xC0DC213C", "0xC9A43264"],
            },
            new PortForm { Name = "USB-A", Kind = "USB-A", Quantity = 2, AsPrinted = "USB-A 5V 3A" },
            new PortForm { Name = "12 V socket", Kind = "12 V vehicle socket", AsPrinted = "12V 10A" },
            new PortForm { Name = "DC input", Kind = "barrel, 5.5 mm", Direction = PortDirection.Input, AsPrinted = "DC IN 12-30V" },
        ],
        Claims =
        [
            new(ClaimPlace.Label, "energy", "512Wh", 512, Unit.WattHour),
            new(ClaimPlace.Box, "energy", "512 Wh", 512, Unit.WattHour),
            new(ClaimPlace.Label, "AC output, continuous", "600W", 600, Unit.Watt, "AC outlets"),
            new(ClaimPlace.Label, "USB-C, one port alone", "100W", 100, Unit.Watt, "USB-C"),
            new(ClaimPlace.Label, "pack voltage", "25.6V", 25.6, Unit.Volt),
            new(ClaimPlace.Label, "12 V socket, current", "10A", 10, Unit.Ampere, "12 V socket"),
            new(ClaimPlace.Manual, "inverter cut-off", "inverter stops at 24 V", 24, Unit.Volt),
            new(ClaimPlace.WebPage, "recharge", "0 to 80 % in 60 minutes"),
            new(ClaimPlace.Box, "mass", "6.4 kg", 6.4, Unit.Kilogram),
        ],
        Tests =
        [
            new("pack voltage", new BenchTestForm
            {
                Subject = "pack voltage",
                Conditions = "At rest, half charged, at the P+ and P− lugs.",
                Instrument = "Pardel 4½-digit meter",
                CalibratedOn = Calibrated,
                AmbientDegC = 23,
                Value = 26.4,
                Unit = Unit.Volt,
                TakenOn = new DateOnly(2025, 9, 8),
            }),
            new("energy", new BenchTestForm
            {
                Subject = "energy",
                Conditions = "300 W resistive at the AC outlet, from full to the unit's own stop.",
                Instrument = "Pardel PM-3 power meter",
                CalibratedOn = Calibrated,
                AmbientDegC = 23,
                Cable = "1.5 mm², 2 m, outlet to load",
                Low = 392,
                Value = 396,
                High = 400,
                Unit = Unit.WattHour,
                TakenOn = new DateOnly(2025, 9, 9),
            }, "AC outlets"),
            new("efficiency", new BenchTestForm
            {
                Subject = "efficiency",
                Conditions = "Pack to AC outlet, 300 W and 588 W resistive; the lower of the two is given.",
                Instrument = "Pardel PM-3 power meter and 100 A shunt",
                CalibratedOn = Calibrated,
                AmbientDegC = 23,
                Cable = "1.5 mm², 2 m, outlet to load",
                Low = 0.883,
                Value = 0.893,
                High = 0.903,
                Unit = Unit.Ratio,
                TakenOn = new DateOnly(2025, 9, 9),
            }, "AC outlets"),
            new("full load", new BenchTestForm
            {
                Subject = "AC output, continuous",
                Conditions = "600 W resistive, case closed, until the unit shut itself down.",
                Instrument = "Pardel PM-3 power meter",
                CalibratedOn = Calibrated,
                AmbientDegC = 24,
                Cable = "1.5 mm², 2 m, outlet to load",
                Low = 585,
                Value = 588,
                High = 591,
                Unit = Unit.Watt,
                ResultText = "Held for 41 min, then the unit shut itself down; F1 did not open.",
                TakenOn = new DateOnly(2025, 9, 10),
            }, "AC outlets"),
            new("no load", new BenchTestForm
            {
                Subject = "no-load draw",
                Conditions = "AC on, nothing connected, mean of 30 min, at the pack.",
                Instrument = "Pardel PM-3 power meter and 100 A shunt",
                CalibratedOn = Calibrated,
                AmbientDegC = 23,
                Low = 8.4,
                Value = 8.6,
                High = 8.8,
                Unit = Unit.Watt,
                TakenOn = new DateOnly(2025, 9, 11),
            }),
            new("fuse temperature", new BenchTestForm
            {
                Subject = "temperature beside F1",
                Conditions = "At the end of the full-load test, thermocouple in the air beside F1.",
                Instrument = "Pardel TC-8 logger, type K",
                CalibratedOn = Calibrated,
                AmbientDegC = 24,
                Low = 42,
                Value = 45,
                High = 48,
                Unit = Unit.DegreeCelsius,
                ResultText = "The holder of F1 itself reached 83 °C.",
                TakenOn = new DateOnly(2025, 9, 10),
            }),
            new("usb-c", new BenchTestForm
            {
                Subject = "USB-C, one port alone",
                Conditions = "20 V contract, 4.89 A for one hour, the other port empty.",
                Instrument = "Pardel EL-60 electronic load",
                CalibratedOn = Calibrated,
                AmbientDegC = 23,
                Cable = "5 A marked, 1 m",
                Low = 97.5,
                Value = 97.8,
                High = 98.1,
                Unit = Unit.Watt,
                ResultText = "20.0 V at 4.89 A. With both ports in use the offer falls to 60 W and 30 W.",
                TakenOn = new DateOnly(2025, 9, 12),
            }, "USB-C"),
            new("12 v", new BenchTestForm
            {
                Subject = "12 V socket, current",
                Conditions = "Held for one hour at 10.0 A; then raised until the output stopped.",
                Instrument = "Pardel EL-60 electronic load",
                CalibratedOn = Calibrated,
                AmbientDegC = 23,
                Cable = "2.5 mm², 1 m",
                Low = 10,
                Value = 10,
                High = 10.4,
                Unit = Unit.Ampere,
                ResultText = "The output stopped at 10.4 A, electronically; F2 did not open.",
                TakenOn = new DateOnly(2025, 9, 12),
            }, "12 V socket"),
        ],
        Rails =
        [
            Pack(Of(24, Evidence.Inferred, "manual: inverter stops at 24 V")),
            new RailForm
            {
                Name = "HV bus",
                Kind = RailKind.DcBus,
                MinVoltageV = Of(340, Evidence.Measured, "full-load test"),
                NominalVoltageV = Of(355, Evidence.Measured, "full-load test"),
                MaxVoltageV = Of(372, Evidence.Measured, "no load"),
                MaxPowerW = Of(600, Evidence.ReadOnPart, "label"),
                LineFrequencyHz = Of(50, Evidence.ReadOnPart, "label"),
                BleedResistanceOhm = Of(470e3, Evidence.Decoded, "R44, marked 474"),
            },
            new RailForm { Name = "AC out", Kind = RailKind.Mains, NominalVoltageV = Of(230, Evidence.ReadOnPart, "label") },
            OutputFeed(Of(24, Evidence.Inferred, "follows the pack rail")),
            new RailForm
            {
                Name = "12 V rail",
                Kind = RailKind.LowVoltage,
                MinVoltageV = Of(11.8, Evidence.Measured, "at 10 A"),
                NominalVoltageV = Of(12.2, Evidence.Measured, "at 5 A"),
                MaxVoltageV = Of(12.6, Evidence.Measured, "no load"),
                MaxCurrentA = Of(10, Evidence.Measured, "held at 10.0 A, stopped at 10.4 A", 10, 10.4),
            },
        ],
        Boards =
        [
            new(
                new BoardForm { Name = "Main power board", Topology = ["push-pull", "H-bridge inverter"], Note = "Silkscreen TOR-PWR V1.3, date 2325." },
                [
                    new("tor600-a.jpg", new PhotoForm
                    {
                        Subject = PhotoSubject.BoardTop,
                        Caption = "Main power board, top. Pack side right, mains side left of the slots.",
                        AltText = "Drawing of a green circuit board: pack lugs, a 35 A blade fuse and four capacitors on the right, a large transformer in the middle, two lying capacitors, a toroid, a relay and the outlet terminal on the left.",
                    }),
                ],
                [
                    new("F1", "inverter fuse", FunctionClass.BladeFuse, "35")
                    {
                        Package = "blade, board holder", Rail = "Pack rail",
                        Ratings =
                        [
                            Printed(RatingKind.RatedCurrent, "35 A"),
                            Known(RatingKind.RatedVoltage, Evidence.Inferred, "blade style", 32),
                            Known(RatingKind.AmbientTemperature, Evidence.Measured, "temperature beside F1", 45, 42, 48),
                            Known(RatingKind.TemperatureSlope, Evidence.Inferred, "blade fuses in general", 0.002, 0.002, 0.005),
                        ],
                    },
                    new("R1", "pack current shunt", FunctionClass.Shunt, "R0005") { Package = "metal strip, 15 × 5 mm", Value = "0.5 mΩ", Rail = "Pack rail", Ratings = [Coded(RatingKind.Resistance, "0.5 mΩ")] },
                    new("C21-C24", "pack rail capacitors", FunctionClass.AluminiumCapacitor, "OND\n2200uF\n50V")
                    {
                        Maker = "Ondrel", Package = "radial, Ø 18 mm", Value = "2200 µF 50 V", Quantity = 4, Parallel = 4, Rail = "Pack rail",
                        Ratings = [Printed(RatingKind.RatedVoltage, "50 V"), Printed(RatingKind.Capacitance, "2200 µF")],
                    },
                    new("Q1-Q4", "push-pull switches", FunctionClass.Switch, "MWK\n10N32")
                    {
                        PartNumber = "MWK-10N32", Maker = "Merwick", Package = "TO-220", Quantity = 4, Parallel = 2, Rail = "Pack rail", Position = CircuitPosition.PushPullPrimary, Note = "Two in parallel on each of two sides.",
                        Ratings =
                        [
                            Sheet(RatingKind.RatedVoltage, "100 V"), Sheet(RatingKind.RatedCurrent, "120 A"),
                            Known(RatingKind.OnResistance, Evidence.Datasheet, "maker's sheet", 0.0034, condition: "at 25 °C"),
                            Known(RatingKind.TemperatureFactor, Evidence.Datasheet, "maker's sheet, at 100 °C", 1.5, 1.4, 1.6),
                            Known(RatingKind.CurrentSharing, Evidence.Inferred, "one heatsink, leads of equal length", 0.9, 0.85, 1),
                            Known(RatingKind.DutyCycle, Evidence.Inferred, "one side of two, dead time left out", 0.5, 0.46, 0.5),
                        ],
                    },
                    new("T1", "push-pull transformer", FunctionClass.Transformer, "HW-EE55-071\n3T+3T : 42T\nHI-POT OK\n2325") { PartNumber = "HW-EE55-071", Maker = "Halwick", Package = "EE55" },
                    new("U1", "push-pull controller", FunctionClass.Controller, "MWK-721\n2321 K7") { PartNumber = "MWK-721", Maker = "Merwick", Package = "SOIC-16" },
                    new("U2", "controller of the control module", FunctionClass.Microcontroller, "??????") { Package = "LQFP-32", Note = "The print was ground off before the unit was sold; six characters, none readable." },
                    new("D1-D4", "bus rectifier", FunctionClass.Rectifier, "YD12\nA65")
                    {
                        PartNumber = "YD12A65", Maker = "Yarrow", Package = "TO-220", Quantity = 4, Rail = "HV bus", Position = CircuitPosition.BridgeSecondary, Note = "Bridge of four.",
                        Ratings = [Sheet(RatingKind.RatedVoltage, "650 V"), Sheet(RatingKind.RatedCurrent, "12 A")],
                    },
                    new("C1, C2", "bus capacitors", FunctionClass.AluminiumCapacitor, "220uF 450V\n105C")
                    {
                        Package = "snap-in, lying, Ø 30 mm", Value = "220 µF 450 V", Quantity = 2, Parallel = 2, Rail = "HV bus",
                        Ratings = [Printed(RatingKind.RatedVoltage, "450 V"), Printed(RatingKind.Capacitance, "220 µF"), Known(RatingKind.MaxTemperature, Evidence.ReadOnPart, "printed on the part", 105)],
                    },
                    new("R44", "bus bleeder", FunctionClass.Resistor, "474") { Package = "chip, 2512", Value = "470 kΩ", Rail = "HV bus", Ratings = [Coded(RatingKind.Resistance, "470 kΩ")] },
                    new("Q5-Q8", "bridge switches", FunctionClass.Switch, "YTQ65\n-080\nY2318")
                    {
                        PartNumber = "YTQ65-080", Maker = "Yarrow", Package = "TO-247", Quantity = 4, Rail = "HV bus", Position = CircuitPosition.Bridge, Note = "Two half bridges.",
                        Ratings = [Sheet(RatingKind.RatedVoltage, "650 V"), Known(RatingKind.OnResistance, Evidence.Datasheet, "maker's sheet", 0.080, condition: "at 25 °C")],
                    },
                    new("L1", "output inductor", FunctionClass.Inductor, null) { Package = "toroid, Ø 29 mm", Rail = "AC out", Ratings = [Known(RatingKind.Inductance, Evidence.Measured, "bridge at 10 kHz, out of circuit", 480e-6)] },
                    new("C3", "output capacitor", FunctionClass.SafetyCapacitor, "X2 MKP 2u2\n310V~\n40/110/56")
                    {
                        Package = "box, 27.5 mm pitch", Value = "2.2 µF X2", Rail = "AC out", Ratings = [Coded(RatingKind.Capacitance, "2.2 µF"), Printed(RatingKind.RatedVoltage, "310 V", "ac")],
                    },
                    new("K1", "output relay", FunctionClass.Relay, "ZR-112D\n12VDC\n?0A 250V~")
                    {
                        PartNumber = "ZR-112D", Package = "PCB relay", Rail = "AC out", Note = "The first digit of the contact current is scratched away; 10, 20 and 30 A types exist.",
                        Ratings = [Printed(RatingKind.RatedVoltage, "250 V", "ac, contact")],
                    },
                    new("CY1", "Y capacitor", FunctionClass.SafetyCapacitor, "Y1") { Package = "disc" },
                    new("U3, U4", "feedback optocouplers", FunctionClass.Optocoupler, "HCO-17") { PartNumber = "HCO-17", Package = "DIP-4", Quantity = 2 },
                ]),
            new(
                new BoardForm { Name = "Battery board", Topology = ["cell protection", "passive balancing"], Note = "Silkscreen TOR-BMS 8S V2.0." },
                [
                    new("tor600-b.jpg", new PhotoForm
                    {
                        Subject = PhotoSubject.BoardTop,
                        Caption = "Battery board, top. Cell taps along the lower edge.",
                        AltText = "Drawing of a long green circuit board: eight small transistors, a wide monitor chip, two chip fuses side by side, a shunt and nine cell taps.",
                    }),
                    new("tor600-cells.png", new PhotoForm
                    {
                        Subject = PhotoSubject.Detail,
                        Caption = "The pack: eight groups of four cells, and the print on one sleeve.",
                        AltText = "Line drawing of 32 round cells in eight rows of four, and of one cell's sleeve with the print PLK-32L45 3.2V 4.5Ah.",
                    }),
                ],
                [
                    new("BT1", "pack, 8 in series × 4 in parallel", FunctionClass.Cell, "PLK-32L45\n3.2V 4.5Ah")
                    {
                        PartNumber = "PLK-32L45", Package = "cylindrical, 32 × 70 mm", Value = "4.5 Ah 3.2 V", Quantity = 32, Parallel = 4, Series = 8, Rail = "Pack rail",
                        Note = "32 × 4.5 Ah × 3.2 V = 460.8 Wh as marked.",
                        Ratings = [Printed(RatingKind.CellVoltage, "3.2 V"), Printed(RatingKind.CellCapacity, "4.5 Ah")],
                    },
                    new("Q9-Q16", "pack switches", FunctionClass.Switch, "YN40\n1R9")
                    {
                        PartNumber = "YN40-1R9", Maker = "Yarrow", Package = "PDFN 5 × 6", Quantity = 8, Parallel = 4, Rail = "Pack rail", Position = CircuitPosition.InLine, Note = "Two groups of four back to back; each blocks one way.",
                        Ratings = [Sheet(RatingKind.RatedVoltage, "40 V"), Known(RatingKind.OnResistance, Evidence.Datasheet, "maker's sheet", 0.0019, condition: "at 25 °C")],
                    },
                    new("U101", "cell monitor", FunctionClass.CellProtection, "HCB-814\n8S 2319") { PartNumber = "HCB-814", Maker = "Harrabin", Package = "SSOP-24" },
                    new("F101, F102", "pack fuses", FunctionClass.Fuse, "30")
                    {
                        Package = "chip, 9 × 5 mm", Quantity = 2, Parallel = 2, Rail = "Pack rail", Note = "How the two share the current was not measured and is not guessed.",
                        Ratings = [Printed(RatingKind.RatedCurrent, "30 A"), Known(RatingKind.Derating, Evidence.Datasheet, "sheets of like chip fuses", 0.75)],
                    },
                    new("R101", "pack current shunt", FunctionClass.Shunt, "R001") { Package = "metal strip", Value = "1 mΩ", Rail = "Pack rail", Ratings = [Coded(RatingKind.Resistance, "1 mΩ")] },
                    new("R110-R117", "balancing resistors", FunctionClass.Resistor, "330") { Package = "chip, 1206", Value = "33 Ω", Quantity = 8, Ratings = [Coded(RatingKind.Resistance, "33 Ω")] },
                    new("RT1", "cell temperature sensor", FunctionClass.Thermistor, "103") { Value = "10 kΩ", Ratings = [Coded(RatingKind.Resistance, "10 kΩ")] },
                ]),
            new(
                new BoardForm { Name = "Output board", Topology = ["four-switch buck-boost", "buck", "charger"], Note = "Silkscreen TOR-OUT V1.1, date 2324." },
                [
                    new("tor600-c.jpg", new PhotoForm
                    {
                        Subject = PhotoSubject.BoardTop,
                        Caption = "Output board, top. Ports along the upper edge.",
                        AltText = "Drawing of a green circuit board: two USB-C and two USB-A sockets along the top edge, a 15 A blade fuse at the right, inductors, controllers and a chip fuse below.",
                    }),
                ],
                [
                    new("F2", "12 V socket fuse", FunctionClass.BladeFuse, "15")
                    {
                        Package = "blade, board holder", Rail = "12 V rail",
                        Ratings =
                        [
                            Printed(RatingKind.RatedCurrent, "15 A"),
                            Known(RatingKind.AmbientTemperature, Evidence.Inferred, "as beside F1", 45, 42, 48),
                            Known(RatingKind.TemperatureSlope, Evidence.Inferred, "blade fuses in general", 0.002, 0.002, 0.005),
                        ],
                    },
                    new("F3", "USB-C feed fuse", FunctionClass.Fuse, "10")
                    {
                        Package = "chip, 6 × 3 mm", Rail = "Output board feed",
                        Ratings = [Printed(RatingKind.RatedCurrent, "10 A"), Known(RatingKind.Derating, Evidence.Datasheet, "sheets of like chip fuses", 0.75)],
                    },
                    new("U5", "buck-boost controller", FunctionClass.Controller, "BBX-4027\nY2320") { PartNumber = "BBX-4027", Maker = "Yarrow", Package = "QFN-32", Rail = "Output board feed" },
                    new("Q17-Q20", "buck-boost switches", FunctionClass.Switch, "YN40\n3R2")
                    {
                        PartNumber = "YN40-3R2", Maker = "Yarrow", Package = "PDFN 5 × 6", Quantity = 4, Rail = "Output board feed",
                        Ratings = [Sheet(RatingKind.RatedVoltage, "40 V"), Known(RatingKind.OnResistance, Evidence.Datasheet, "maker's sheet", 0.0032, condition: "at 25 °C")],
                    },
                    new("L2", "buck-boost inductor", FunctionClass.Inductor, "4R7") { Package = "shielded, 13 × 13 mm", Value = "4.7 µH", Ratings = [Coded(RatingKind.Inductance, "4.7 µH")] },
                    new("U6", "USB-C source controller", FunctionClass.ProtocolChip, "KPD-318\n2322") { PartNumber = "KPD-318", Maker = "Kestrin", Package = "QFN-24" },
                    new("U7", "12 V buck regulator", FunctionClass.Regulator, "HRB-1240\n2314") { PartNumber = "HRB-1240", Maker = "Harrabin", Package = "SOIC-8", Rail = "12 V rail" },
                    new("L3", "12 V buck inductor", FunctionClass.Inductor, "150") { Package = "shielded, 10 × 10 mm", Value = "15 µH", Rail = "12 V rail", Ratings = [Coded(RatingKind.Inductance, "15 µH")] },
                    new("U8", "5 V buck regulator", FunctionClass.Regulator, "HRB-1240\n2314") { PartNumber = "HRB-1240", Maker = "Harrabin", Package = "SOIC-8", Rail = "12 V rail" },
                    new("L4", "5 V buck inductor", FunctionClass.Inductor, "6R8") { Package = "shielded, 8 × 8 mm", Value = "6.8 µH", Ratings = [Coded(RatingKind.Inductance, "6.8 µH")] },
                    new("C61, C62", "output capacitors", FunctionClass.AluminiumCapacitor, "OND\n470uF\n25V")
                    {
                        Maker = "Ondrel", Package = "SMD can, Ø 10 mm", Value = "470 µF 25 V", Quantity = 2, Ratings = [Printed(RatingKind.RatedVoltage, "25 V"), Printed(RatingKind.Capacitance, "470 µF")],
                    },
                    new("U9", "charger controller", FunctionClass.Controller, "CHQ-62") { PartNumber = "CHQ-62", Package = "QFN-24", Rail = "Pack rail" },
                    new("J2, J3", "USB-C sockets", FunctionClass.Connector, null) { Quantity = 2 },
                    new("J4, J5", "USB-A sockets", FunctionClass.Connector, null) { Quantity = 2 },
                ]),
        ],
        Pictures =
        [
            new("tor600-front.png", new PhotoForm
            {
                Subject = PhotoSubject.Product,
                Caption = "Front of the unit.",
                AltText = "Line drawing of the front of a power station: display above, two AC outlets lower left, USB-C, USB-A, a 12 V socket and a DC input lower right.",
            }),
        ],
        Findings =
        [
            new(
                FuseFinding,
                """
                The inverter is fed through one 35 A blade fuse. Down to 24 V, where the manual says that it stops, the claimed 600 W draws 28.0 A:
                within the rating, but above the 25.2 A that the convention allows for hours in a 45 °C compartment. Headroom **0.90**.
                """,
                ["F1"],
                ["efficiency", "full load", "fuse temperature"]),
            new(
                "The cells, as marked, do not make 512 Wh",
                """
                We counted eight groups of four. Each cell is marked 4.5 Ah, 3.2 V: 32 × 4.5 Ah × 3.2 V = **460.8 Wh**. The label's 512 Wh would need 5.0 Ah in each.

                This rests on markings: no single cell was measured. What came out of the AC outlet, 396 Wh at 89 % efficiency, agrees with about 443 Wh from the pack.
                """,
                ["BT1"],
                ["energy", "efficiency"]),
            new(
                "The 12 V socket's fuse is thin",
                "At 10 A the 15 A blade fuse has a headroom of 1.08; at the 10.4 A where the output stops, and in the warmest compartment we saw, it is 0.96. The electronic stop acts first.",
                ["F2"],
                ["12 v"]),
            new(
                "Two markings could not be read",
                "The print on U2 was ground off. On K1 the first digit of the contact current is scratched away, so the relay cannot be screened; the record keeps `?0A 250V~`.",
                ["U2", "K1"],
                []),
        ],
        Steps =
        [
            new("Outside", "Eight screws under the rubber feet; front and back come off separately.", "tor600-front.png"),
            new("Pack", "Left whole. Its lugs stay live and were covered for as long as the case was open.", "tor600-cells.png"),
            new("Battery board", "Drawn in place, above the pack.", "tor600-b.jpg"),
            new("Main power board", "The bus was treated as charged until a rated meter had shown its voltage; it was measured again before each step.", "tor600-a.jpg"),
            new("Output board", "Behind the front panel, held by the sockets' nuts.", "tor600-c.jpg"),
        ],
        Corrections =
        [
            new DemoCorrection
            {
                Note = "The lowest pack voltage had been taken from the manual (24 V). Three capacity runs ended at 22.0 V, so the inverter needs more current than we had said: "
                    + "headroom of F1 0.90 → 0.83. The verdict, over guideline, stands.",
                Standfirst = "A 512 Wh claim that rests on cells marked for 461 Wh, and an inverter fuse loaded past the guideline.",
                Tests =
                [
                    new("cut-off", new BenchTestForm
                    {
                        Subject = "inverter cut-off",
                        Conditions = "Three capacity runs at 300 W; pack voltage when the inverter stopped.",
                        Instrument = "Pardel 4½-digit meter",
                        CalibratedOn = Calibrated,
                        AmbientDegC = 23,
                        Cable = "sense leads on the P+ and P− lugs",
                        Low = 21.8,
                        Value = 22.0,
                        High = 22.2,
                        Unit = Unit.Volt,
                        TakenOn = new DateOnly(2025, 11, 4),
                    }),
                ],
                Rails =
                [
                    Pack(Of(22.0, Evidence.Measured, "inverter cut-off, three runs", 21.8, 22.2)),
                    OutputFeed(Of(22.0, Evidence.Inferred, "follows the pack rail", 21.8, 22.2)),
                ],
                Findings =
                [
                    new(
                        FuseFinding,
                        """
                        The inverter is fed through one 35 A blade fuse. At the measured cut-off of 22.0 V the claimed 600 W draws 30.5 A: within the fuse's
                        rating, but above the 25.2 A that the convention allows for hours in a 45 °C compartment. Headroom **0.83**.

                        In our test it did not open; its holder reached 83 °C before the unit shut itself down. What shut it down we do not know.
                        """,
                        ["F1"],
                        ["cut-off", "efficiency", "full load", "fuse temperature"]),
                ],
            },
        ],
    };

    private static RailForm Pack(GivenQuantity lowest) => new()
    {
        Name = "Pack rail",
        Kind = RailKind.Pack,
        MinVoltageV = lowest,
        NominalVoltageV = Of(25.6, Evidence.ReadOnPart, "label; eight cells in series"),
        MaxVoltageV = Of(29.2, Evidence.ReadOnPart, "board print B+ 29V2"),
        MaxPowerW = Of(600, Evidence.ReadOnPart, "label; held for 41 min at 588 W"),
        Efficiency = Of(0.893, Evidence.Measured, "efficiency, pack to AC outlet", 0.883, 0.903),
    };

    private static RailForm OutputFeed(GivenQuantity lowest) => new()
    {
        Name = "Output board feed",
        Kind = RailKind.LowVoltage,
        MinVoltageV = lowest,
        NominalVoltageV = Of(25.6, Evidence.Inferred, "follows the pack rail"),
        MaxVoltageV = Of(29.2, Evidence.Inferred, "follows the pack rail"),
        MaxPowerW = Of(100, Evidence.ReadOnPart, "label, both USB-C ports together"),
        Efficiency = Of(0.94, Evidence.Inferred, "four-switch converters of this kind on this bench", 0.93, 0.95),
    };
}
