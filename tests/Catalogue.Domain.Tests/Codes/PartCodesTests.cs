using System.Globalization;
using Catalogue.Domain.Codes;
using Catalogue.Domain.Quantities;
using Catalogue.Domain.Tests.Samples;
using CsCheck;

namespace Catalogue.Domain.Tests.Codes;

public sealed class PartCodesTests
{
    public static TheoryData<string[]> Markings => [.. SampleFile.TabLines("Codes", "markings.tsv")];

    public static TheoryData<string[]> WorkedExamples => DocumentTable.Rows("marking-codes.md", "## Worked examples");

    [Fact]
    public void Samples_AreThere() => Assert.True(Markings.Count > 130 && WorkedExamples.Count >= 25);

    [Theory]
    [MemberData(nameof(Markings))]
    public void Decode_Marking_GivesValueToleranceAndVoltage(string[] row)
    {
        var kind = PartKinds.Find(row[0])!.Value;
        var readings = row[1].Contains(' ', StringComparison.Ordinal) ? ColourBands.Decode(row[1]) : PartCodes.Decode(row[1], kind);
        if (row[2] == "")
        {
            Assert.Empty(readings);
            return;
        }

        // The tables give one reading each; where the code has several, it is among them and first unless another is as sure.
        var reading = readings.First(found => Same(row[2], found.Quantity.Value));
        Assert.Equal(readings[0].Confidence, reading.Confidence);
        Assert.True(Same(row[3], reading.Quantity.Low) && Same(row[4], reading.Quantity.High), reading.ToString());
        Assert.Equal(row[5] == "" ? null : Number(row[5]), reading.RatedVoltage?.Value);
        Assert.Equal(row[1], reading.Used);
        if (row[6] != "")
            Assert.Contains(readings, found => Same(row[6], found.Quantity.Value));
    }

    [Theory]
    [MemberData(nameof(Markings))]
    public void Read_Marking_ThroughTheParser_HoldsTheSameValue(string[] row)
    {
        var reading = QuantityParser.Read(row[1], PartKinds.Find(row[0])!.Value);
        IReadOnlyList<FoundQuantity>[] ways = reading switch
        {
            QuantityReading.Read read => [read.Quantities, .. read.Alternatives.Select(alternative => alternative.Quantities)],
            QuantityReading.Ambiguous ambiguous => [.. ambiguous.Alternatives.Select(alternative => alternative.Quantities)],
            _ => [],
        };
        // A comma is no code, but it is a number: 4,7 beside a resistor.
        if (row[2] == "")
            Assert.True(row[1] == "4,7" ? Same("4.7", ways[0][0].Quantity.Value) : ways.Length == 0);
        else
            Assert.Contains(ways, way => Same(row[2], way[0].Quantity.Value) && (row[5] == "" ? way.Count == 1 : Same(row[5], way[1].Quantity.Value)));
    }

    [Theory]
    [MemberData(nameof(WorkedExamples))]
    public void Decode_WorkedExample_GivesTheDocumentedReadings(string[] row)
    {
        var readings = row[1].Contains(' ', StringComparison.Ordinal) ? ColourBands.Decode(row[1]) : PartCodes.Decode(row[1], PartKinds.Find(row[0])!.Value);

        Assert.Equal(row[2], string.Join("; ", readings.Select(reading => $"{QuantityText.Exact(reading.Quantity.Value!.Value, reading.Quantity.Unit)}{(reading.Tolerance is null ? "" : " " + reading.Tolerance)}{(reading.RatedVoltage is { Value: { } volts } ? ", " + QuantityText.Exact(volts, Unit.Volt) : "")} ({reading.Scheme.Word()}, {reading.Confidence.ToString().ToLowerInvariant()})")).Replace('\u00A0', ' '));
    }

    [Fact]
    public void Decode_AnyText_NeverThrows_AndSurestComesFirst() =>
        Gen.Select(Gen.Char["0123456789RKMLENpnuµ4AJCZ.-"].Array[0, 9], Gen.Int[0, 10]).Sample((letters, kind) =>
        {
            var readings = PartCodes.Decode(new string(letters), (PartKind)kind);
            Assert.Equal(readings.OrderByDescending(reading => reading.Confidence), readings);
            Assert.All(readings, reading => Assert.True(reading.Quantity.Low >= 0 && double.IsFinite(reading.Quantity.High!.Value)));
            _ = FuseMark.Decode(new string(letters));
            _ = DateCode.Decode(new string(letters), new DateOnly(2026, 6, 1));
            _ = Dielectric.Find(new string(letters));
        }, iter: 20_000);

    [Fact]
    public void E96_IsTheRoundedGeometricSeries_AndEveryIndexDecodes()
    {
        Assert.Equal([100, 102, 105, 107, 110, 113, 115, 118, 121, 124, 127, 130, 133, 137, 140, 143], PreferredValues.E96.Take(16));
        Assert.Equal([931, 953, 976], PreferredValues.E96.Skip(93));
        for (var index = 1; index <= 96; index++)
            Assert.Equal(PreferredValues.E96[index - 1], ChipResistorCode.Decode($"{index:00}A")[0].Quantity.Value);
    }

    [Fact]
    public void Decode_MilliAndMegaOfCapacitors_AreNeverMixedUp()
    {
        Assert.Equal(4.7e-3, LetterNumberCode.Decode("4m7", PartKind.Capacitor)[0].Quantity.Value);
        Assert.Empty(LetterNumberCode.Decode("4M7", PartKind.Capacitor));
        Assert.Empty(LetterNumberCode.Decode("4m7", PartKind.Resistor));
    }

    private static bool Same(string cell, double? value) => value is { } number && Math.Abs(number - Number(cell)) <= 1e-9 * Math.Abs(Number(cell));

    private static double Number(string cell) => double.Parse(cell, CultureInfo.InvariantCulture);
}
