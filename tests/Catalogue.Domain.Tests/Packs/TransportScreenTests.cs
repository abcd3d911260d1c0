using Catalogue.Domain.Packs;
using Catalogue.Domain.Quantities;
using static Catalogue.Domain.Tests.Quantities.Reckoned;

namespace Catalogue.Domain.Tests.Packs;

public sealed class TransportScreenTests
{
    [Theory]
    [InlineData(99.792, TransportBand.UpTo100Wh)]
    [InlineData(100, TransportBand.UpTo100Wh)]
    [InlineData(100.01, TransportBand.UpTo160Wh)]
    [InlineData(160, TransportBand.UpTo160Wh)]
    [InlineData(160.1, TransportBand.Above160Wh)]
    public void Of_EnergyAgainstTheLines_GivesTheBand(double energy, TransportBand band) =>
        Assert.Equal(band, Done(TransportScreen.Of(Exactly(energy))).Band);

    [Fact]
    public void Of_SpreadOverALine_SaysTheHighestBandToo()
    {
        var screen = Done(TransportScreen.Of(Interval.Create(97, 99, 102)));

        Assert.Equal((TransportBand.UpTo100Wh, TransportBand.UpTo160Wh), (screen.Band, screen.HighestBand));
    }

    [Fact]
    public void Words_OfEveryBand_PermitNothing() => Assert.All(
        Enum.GetValues<TransportBand>().Select(TransportScreen.Words).Append(TransportScreen.Caution),
        words => Assert.DoesNotContain("allowed", words, StringComparison.OrdinalIgnoreCase));

    [Fact]
    public void Of_AbsurdEnergy_IsRefused() => RefusesTheAbsurd(given => TransportScreen.Of(given[0]), 99);
}
