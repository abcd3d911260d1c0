using System.Diagnostics;
using System.Globalization;
using Catalogue.Domain.Packages;
using Catalogue.Domain.Tests.Samples;
using CsCheck;

namespace Catalogue.Domain.Tests.Packages;

public sealed class PackageTextTests
{
    // Pieces of names, sizes and separators, so that chance writes what people might.
    private static readonly string[] Pieces =
    [
        "SOT", "23", "-", "_", " ", "3", "QFN", "20", "1EP", "EP", "x", "×", "3.3", "3,3", "mm", "P0.4mm", "0603", "402", "R", "C_", "metric", "M", "SOIC", "8", "W", "L5.0", "D6.3mm", "Ø", "E3,5-8", "TO-220",
        "DPAK", "贴片", "：", "/", "(", ")", "case", "B", "radial", ",", "\u00A0", "\uD800", "\uFFFE", "µ", "150MIL", "pins", "SMA", "99999", "0x0",
    ];

    private static readonly string[] Shapes = ["QFN", "DFN", "SOIC", "TSSOP", "DIP", "SSOP", "MSOP"];

    private static readonly Gen<string> GenWritten = Gen.Int[0, Pieces.Length - 1].Select(i => Pieces[i]).Array[0, 12].Select(string.Concat);

    private static readonly Gen<string> GenName = Gen.OneOf(
        Gen.Int[0, PackageOutlines.All.Count - 1].Select(i => PackageOutlines.All[i].Name),
        Gen.Select(Gen.Int[0, Shapes.Length - 1], Gen.Int[4, 8], (shape, half) => FormattableString.Invariant($"{Shapes[shape]}-{half * 2}")));

    public static TheoryData<string[]> WorkedExamples => FigureDocument.Theory("packages.md", "## Worked examples");

    public static TheoryData<string[]> NamesOfTheTrade => [.. SampleFile.TabLines("Text", "package_names.tsv")];

    [Theory]
    [MemberData(nameof(WorkedExamples))]
    public void Read_WorkedExample_GivesTheDocumentedPackage(string[] row)
    {
        var text = row[0].Trim('`');
        var reading = PackageText.Read(text);

        Assert.Equal(text, reading.AsWritten);
        Assert.Equal((row[1], row[2], row[3], row[4]), (reading.Canonical ?? "", Pins(reading), Beside(reading), Remarks(reading)));
    }

    [Theory]
    [MemberData(nameof(NamesOfTheTrade))]
    public void Read_EveryNameOfAnOutline_GivesOneCanonicalName(string[] row)
    {
        foreach (var name in row[2].Split('|', StringSplitOptions.RemoveEmptyEntries).Append(row[0]))
        {
            var read = Assert.IsType<PackageReading.Recognised>(PackageText.Read(name));
            Assert.Equal((row[0], row[1]), (read.Canonical, Pins(read)));
        }
    }

    [Theory]
    [InlineData("1206\u00A0", "trailing U+00A0 removed")]
    [InlineData("\uFEFF1206", "leading U+FEFF removed")]
    [InlineData("\u30001206\u200B", "leading U+3000 removed; trailing U+200B removed")]
    [InlineData(" 1206\t\r\n", "")]
    public void Read_BlanksAtTheEnds_AreRemovedAndOddOnesSaid(string text, string remarks)
    {
        var read = Assert.IsType<PackageReading.Recognised>(PackageText.Read(text));

        Assert.Equal(("1206", remarks), (read.Canonical, Remarks(read)));
    }

    [Theory]
    [InlineData(null)]
    [InlineData("")]
    [InlineData(" ")]
    [InlineData("?")]
    [InlineData("N/A")]
    [InlineData("#REF!")]
    [InlineData("0.603")]
    [InlineData("QFN-9999")]
    [InlineData("SOIC-7")]
    [InlineData("HDR-1X2/2.54")]
    [InlineData("VK-USBC-16P")]
    [InlineData("IND-SMD_L7.8-W7.0_0630")]
    [InlineData("ZB-18650-A")]
    [InlineData("R_Zorvex_ZX2512")]
    [InlineData("RJ45_8P8C")]
    [InlineData("DIP switch")]
    [InlineData("0603x4")]
    public void Read_WhatNamesNoPackage_StaysAsWritten(string? text)
    {
        var unknown = Assert.IsType<PackageReading.Unknown>(PackageText.Read(text));

        Assert.Equal((text ?? "", null), (unknown.AsWritten, unknown.Canonical));
        Assert.NotEmpty(unknown.Reason);
    }

    [Theory]
    [InlineData("SOIC-8_0x0mm")]
    [InlineData("SOIC-8_P999mm")]
    [InlineData("radial, Ø 900 mm")]
    public void Read_SizesThatCannotBe_AreSaidAndNotTaken(string text)
    {
        var read = Assert.IsType<PackageReading.Recognised>(PackageText.Read(text));

        Assert.Equal((null, null, null), (read.Body, read.PitchMm, read.DiameterMm));
        Assert.Contains(read.Warnings, warning => warning.EndsWith("is no size of a package", StringComparison.Ordinal));
    }

    [Fact]
    public void Read_AnyText_NeverThrowsAndKeepsItAsWritten() =>
        Gen.OneOf(Gen.String, GenWritten, Gen.String[Gen.Char.AlphaNumeric, 0, 300]).Sample(text =>
        {
            var reading = PackageText.Read(text);
            Assert.Equal(text, reading.AsWritten);
            if (reading is not PackageReading.Recognised read)
                return;
            Assert.All(new[] { read.PitchMm, read.DiameterMm, read.HeightMm, read.Body?.NarrowMm, read.ExposedPad?.NarrowMm }.OfType<double>(), size => Assert.InRange(size, 1e-4, 200));
            Assert.True(read.Pins is null or > 0);
        }, iter: 20_000);

    [Fact]
    public void Read_TheCanonicalNameOfAReading_GivesThatName() =>
        Gen.OneOf(GenWritten, GenName).Sample(text =>
        {
            if (PackageText.Read(text) is not PackageReading.Recognised read)
                return;
            var again = Assert.IsType<PackageReading.Recognised>(PackageText.Read(read.Canonical));
            Assert.Equal((read.Canonical, read.Pins, read.Outline.Kind), (again.Canonical, again.Pins, again.Outline.Kind));
        }, iter: 20_000);

    [Fact]
    public void Read_CaseWidthBlanksAndDashes_ChangeNothing() =>
        Gen.Select(GenName, Gen.Int[0, 5]).Sample((name, how) =>
        {
            var written = how switch
            {
                0 => name.ToLowerInvariant(),
                1 => string.Concat(name.Select(character => character is > ' ' and <= '~' ? (char)(character + 0xFEE0) : character)),
                2 => name.Replace('-', ' '),
                3 => name.Replace('-', '\u2011'),
                4 => name.Replace("-", "", StringComparison.Ordinal),
                _ => $"  {name}\t",
            };
            Assert.Equal(PackageText.Read(name).Canonical, PackageText.Read(written).Canonical);
        });

    [Fact]
    public void Read_AMetricCodeOfEveryChip_GivesTheSameChip()
    {
        var chips = PackageOutlines.All.Where(outline => outline.Kind is PackageKind.Chip).ToList();

        Assert.NotEmpty(chips);
        Assert.All(chips, chip => Assert.All(
            new[] { $"{chip.Metric}M", $"{chip.Metric} metric", $"C_{chip.Name}_{chip.Metric}Metric", $"{chip.Name} ({chip.Metric} metric)", $"SMD {chip.Name}", $"{chip.Name} inch" },
            written => Assert.Equal(chip.Name, PackageText.Read(written).Canonical)));
    }

    [Fact]
    public void Read_TenMillionCharacters_IsUnknownAtOnce()
    {
        var text = string.Concat(Enumerable.Repeat("SOT-23 ", 1_500_000));
        var clock = Stopwatch.StartNew();
        var unknown = Assert.IsType<PackageReading.Unknown>(PackageText.Read(text));

        Assert.Same(text, unknown.AsWritten);
        Assert.True(clock.ElapsedMilliseconds < 1000, $"{clock.ElapsedMilliseconds} ms");
    }

    private static string Pins(PackageReading reading) => (reading as PackageReading.Recognised)?.Pins?.ToString(CultureInfo.InvariantCulture) ?? "";

    private static string Remarks(PackageReading reading) => reading switch
    {
        PackageReading.Recognised read => string.Join("; ", read.Warnings),
        PackageReading.Unknown unknown => unknown.Reason,
        _ => throw new InvalidOperationException("Every reading is known."),
    };

    private static string Beside(PackageReading reading)
    {
        if (reading is not PackageReading.Recognised read)
            return "";
        (string Name, string? Text)[] all =
        [
            ("metric", read.Outline.Metric), ("alias", read.Alias), ("body", Mm(read.Body)), ("pitch", Mm(read.PitchMm)), ("exposed_pad", Mm(read.ExposedPad)), ("diameter", Mm(read.DiameterMm)),
            ("height", Mm(read.HeightMm)),
        ];
        return string.Join("; ", all.Where(entry => entry.Text is not null).Select(entry => $"{entry.Name}={entry.Text}"));
    }

    private static string? Mm<T>(T? size)
        where T : struct => size is { } value ? string.Create(CultureInfo.InvariantCulture, $"{value} mm") : null;
}
