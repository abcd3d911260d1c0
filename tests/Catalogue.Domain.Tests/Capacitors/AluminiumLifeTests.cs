using Catalogue.Domain.Capacitors;
using Catalogue.Domain.Quantities;
using static Catalogue.Domain.Tests.Quantities.Reckoned;

namespace Catalogue.Domain.Tests.Capacitors;

public sealed class AluminiumLifeTests
{
    private const double Hour = 3600;

    [Theory]
    [InlineData(105, 2000)]
    [InlineData(95, 4000)]
    [InlineData(65, 32000)]
    [InlineData(115, 1000)]
    public void Of_TwoThousandHoursAt105_DoublesEveryTenDegrees(double degC, double hours) =>
        Near(hours * Hour, Done(AluminiumLife.Of(Exactly(2000 * Hour), Exactly(105), Exactly(degC))).Nominal);

    [Fact]
    public void Of_Warmer_NeverLonger()
    {
        Moves(Sum, 2, -1, (1e6, 1e8), (85, 105), (20, 100));
        HoldsEveryCase(Sum, (1e6, 1e8), (85, 105), (20, 100));
    }

    [Fact]
    public void Of_AbsurdInputs_AreRefused()
    {
        RefusesTheAbsurd(given => AluminiumLife.Of(given[0], given[1], given[2]), 2000 * Hour, 105, 65);
        Assert.Equal(["actual_temperature"], Refused(AluminiumLife.Of(Exactly(Hour), Exactly(105), Exactly(900))));
    }

    private static Reckoning<Interval> Sum(Interval[] given) => AluminiumLife.Of(given[0], given[1], given[2]);
}
