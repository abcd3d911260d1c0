using Catalogue.Domain.Codes;
using Catalogue.Domain.Quantities;

namespace Catalogue.Domain.Tests.Codes;

public sealed class CapacitorVoltageTests
{
    [Theory]
    [InlineData("0E 2.5;0G 4;0J 6.3;1A 10;1C 16;1D 20;1E 25;1V 35;1H 50;1J 63;1K 80;2A 100;2B 125;2C 160;2D 200;2E 250;2V 350;2G 400;2W 450;2H 500;2J 630;2K 800;3A 1000", Certainty.High)]
    [InlineData("1B 12.5;1F 31.5;1G 40;1W 45;2F 315;3B 1250;3C 1600;3D 2000;3F 3150", Certainty.Medium)]
    [InlineData("0L 5.5;2Q 110;2P 220;2Z 180;2T 150;3L 1200", Certainty.Medium)]
    public void Decode_DigitAndLetter_GivesVolts(string pairs, Certainty confidence)
    {
        foreach (var pair in pairs.Split(';'))
        {
            var (voltage, sure) = CapacitorVoltage.Decode(pair[..2])!.Value;
            Assert.Equal(double.Parse(pair[3..], System.Globalization.CultureInfo.InvariantCulture), voltage.Value);
            Assert.Equal((CurrentKind.Direct, confidence), (voltage.Current, sure));
        }
    }

    [Theory]
    [InlineData("4A")]
    [InlineData("1X")]
    [InlineData("A1")]
    [InlineData("1")]
    [InlineData("")]
    public void Decode_OtherText_IsNone(string code) => Assert.Null(CapacitorVoltage.Decode(code));

    [Theory]
    [InlineData('G', 4)]
    [InlineData('J', 6.3)]
    [InlineData('A', 10)]
    [InlineData('C', 16)]
    [InlineData('D', 20)]
    [InlineData('E', 25)]
    [InlineData('V', 35)]
    [InlineData('H', 50)]
    [InlineData('T', 50)]
    public void DecodeLetter_ChipTantalum_GivesVolts(char letter, double volts) => Assert.Equal(volts, CapacitorVoltage.DecodeLetter(letter)!.Value.Value);
}
