using Catalogue.Domain.Stress;
using static Catalogue.Domain.Tests.Quantities.Reckoned;

namespace Catalogue.Domain.Tests.Stress;

public sealed class WaveformRmsTests
{
    [Fact]
    public void Sums_ByHand()
    {
        Near(5, Done(WaveformRms.OfPulse(Exactly(10), Exactly(0.25))).Nominal);
        Near(70.7107, Done(WaveformRms.OfPushPullSide(Exactly(100), Exactly(0.5))).Nominal);
        Near(6.14878, Done(WaveformRms.OfBridgeSwitch(Exactly(8.69565))).Nominal);
    }

    [Fact]
    public void OfPulse_SampledWaveform_HasThatRms()
    {
        const int samples = 1000;
        var squares = Enumerable.Range(0, samples).Sum(i => i < 300 ? 4.0 * 4.0 : 0);

        Near(Math.Sqrt(squares / samples), Done(WaveformRms.OfPulse(Exactly(4), Exactly(0.3))).Nominal, 1e-9);
    }

    [Fact]
    public void OfPushPullSide_SpreadInputs_HoldsEveryCase() => HoldsEveryCase(given => WaveformRms.OfPushPullSide(given[0], given[1]), (1, 100), (0.1, 0.5));

    [Fact]
    public void OfPushPullSide_BothSidesAtOnce_IsRefused() => Assert.Equal(["duty"], Refused(WaveformRms.OfPushPullSide(Exactly(100), Exactly(0.6))));

    [Fact]
    public void Sums_AbsurdInputs_AreRefused()
    {
        RefusesTheAbsurd(given => WaveformRms.OfPulse(given[0], given[1]), 10, 0.5);
        RefusesTheAbsurd(given => WaveformRms.OfPushPullSide(given[0], given[1]), 10, 0.5);
        RefusesTheAbsurd(given => WaveformRms.OfBridgeSwitch(given[0]), 10);
    }
}
