using Catalogue.Domain.Capacitors;
using Catalogue.Domain.Quantities;
using CsCheck;
using static Catalogue.Domain.Tests.Quantities.Reckoned;

namespace Catalogue.Domain.Tests.Capacitors;

public sealed class CapacitorBankTests
{
    [Fact]
    public void Of_TwoInSeriesByThree_IsByHand()
    {
        // 3 / 2 × 220 µF = 330 µF; 400 V / 2 = 200 V; ½ × 330 µF × 400² = 26.4 J.
        var bank = Done(CapacitorBank.Of(Exactly(220e-6), 3, 2, Exactly(400)));

        Near(330e-6, bank.Capacitance.Nominal);
        Assert.Equal(Exactly(200), bank.VoltageOfPart);
        Near(26.4, bank.Stored.Energy.Nominal);
    }

    [Fact]
    public void Of_ToleranceOfTwentyPercent_ShiftsTheVoltages()
    {
        // 400 V × 1.2 / (0.8 + 1.2) = 240 V, the other 160 V.
        var bank = Done(CapacitorBank.Of(Interval.Create(80e-6, 100e-6, 120e-6), 1, 2, Exactly(400)));

        Near(240, bank.VoltageOfPart.High);
        Near(160, bank.VoltageOfPart.Low);
    }

    [Fact]
    public void Of_SinglePart_SeesTheWholeVoltage() =>
        Assert.Equal(Exactly(400), Done(CapacitorBank.Of(Interval.Create(80e-6, 100e-6, 120e-6), 2, 1, Exactly(400))).VoltageOfPart);

    [Fact]
    public void Of_AnyPartsWithinTheTolerance_SeeAVoltageWithinTheInterval() =>
        Gen.Select(Gen.Double[0.8, 1.2].Array[2, 6], Gen.Double[10, 500]).Sample((parts, volts) =>
        {
            var bank = Done(CapacitorBank.Of(Interval.Create(0.8e-6, 1e-6, 1.2e-6), 1, parts.Length, Exactly(volts)));
            var whole = 1 / parts.Sum(part => 1 / part);
            Assert.All(parts, part => Assert.InRange(volts * whole / part, bank.VoltageOfPart.Low * (1 - 1e-12), bank.VoltageOfPart.High * (1 + 1e-12)));
            Assert.InRange(whole * 1e-6, bank.Capacitance.Low * (1 - 1e-12), bank.Capacitance.High * (1 + 1e-12));
        });

    [Fact]
    public void Of_AbsurdInputs_AreRefused()
    {
        RefusesTheAbsurd(given => CapacitorBank.Of(given[0], 2, 2, given[1]), 100e-6, 400);
        Assert.Equal(["parallel", "series"], Refused(CapacitorBank.Of(Exactly(1e-6), 0, -1, Exactly(400))));
    }
}
