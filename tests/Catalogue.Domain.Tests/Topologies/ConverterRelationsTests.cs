using Catalogue.Domain.Topologies;
using static Catalogue.Domain.Tests.Quantities.Reckoned;

namespace Catalogue.Domain.Tests.Topologies;

public sealed class ConverterRelationsTests
{
    [Fact]
    public void Relations_ByHand()
    {
        Near(0.25, Done(ConverterRelations.BuckDuty(Exactly(20), Exactly(5))).Nominal);
        Near(0.75, Done(ConverterRelations.BoostDuty(Exactly(5), Exactly(20))).Nominal);
        Near(20, Done(ConverterRelations.FlybackOutput(Exactly(300), Exactly(0.4), Exactly(10))).Nominal);
        Near(20, Done(ConverterRelations.HalfBridgeLlcOutput(Exactly(400), Exactly(10))).Nominal);
        Near(92351.3, Done(ConverterRelations.Resonance(Exactly(90e-6), Exactly(33e-9))).Nominal);
        Near(384, Done(ConverterRelations.PushPullBus(Exactly(12.8), Exactly(30))).Nominal);
        Near(230, Done(ConverterRelations.FullBridgeOutput(Exactly(325.269), Exactly(1))).Nominal);
    }

    [Fact]
    public void Relations_SpreadInputs_HoldEveryCase()
    {
        HoldsEveryCase(given => ConverterRelations.BuckDuty(given[0], given[1]), (15, 21), (3, 12));
        HoldsEveryCase(given => ConverterRelations.BoostDuty(given[0], given[1]), (3, 12), (15, 21));
        HoldsEveryCase(given => ConverterRelations.FlybackOutput(given[0], given[1], given[2]), (100, 400), (0.1, 0.6), (2, 15));
        HoldsEveryCase(given => ConverterRelations.HalfBridgeLlcOutput(given[0], given[1]), (350, 420), (5, 20));
        HoldsEveryCase(given => ConverterRelations.Resonance(given[0], given[1]), (1e-5, 1e-3), (1e-9, 1e-7));
        HoldsEveryCase(given => ConverterRelations.PushPullBus(given[0], given[1]), (10, 58), (5, 30));
        HoldsEveryCase(given => ConverterRelations.FullBridgeOutput(given[0], given[1]), (150, 400), (0.5, 1));
    }

    [Fact]
    public void Duties_OutputOnTheWrongSide_AreRefused()
    {
        Assert.Equal(["output_voltage"], Refused(ConverterRelations.BuckDuty(Exactly(5), Exactly(20))));
        Assert.Equal(["output_voltage"], Refused(ConverterRelations.BoostDuty(Exactly(20), Exactly(5))));
    }

    [Fact]
    public void Relations_AbsurdInputs_AreRefused()
    {
        RefusesTheAbsurd(given => ConverterRelations.BuckDuty(given[0], given[1]), 20, 5);
        RefusesTheAbsurd(given => ConverterRelations.BoostDuty(given[0], given[1]), 5, 20);
        RefusesTheAbsurd(given => ConverterRelations.FlybackOutput(given[0], given[1], given[2]), 300, 0.4, 10);
        RefusesTheAbsurd(given => ConverterRelations.HalfBridgeLlcOutput(given[0], given[1]), 400, 10);
        RefusesTheAbsurd(given => ConverterRelations.Resonance(given[0], given[1]), 90e-6, 33e-9);
        RefusesTheAbsurd(given => ConverterRelations.PushPullBus(given[0], given[1]), 12.8, 30);
        RefusesTheAbsurd(given => ConverterRelations.FullBridgeOutput(given[0], given[1]), 325, 1);
    }
}
