using Catalogue.Domain.Capacitors;
using Catalogue.Domain.Quantities;
using static Catalogue.Domain.Tests.Quantities.Reckoned;

namespace Catalogue.Domain.Tests.Capacitors;

public sealed class StoredChargeTests
{
    private static readonly (double, double)[] Ranges = [(1e-6, 1e-3), (0, 450)];

    [Fact]
    public void Of_SpreadInputs_HoldsEveryCase() => HoldsEveryCase(Energy, Ranges);

    [Fact]
    public void Of_VoltageInAnotherUnit_ScalesByItsSquare() => Scales(Energy, [0, 1], 2, Ranges);

    [Fact]
    public void Of_AbsurdInputs_AreRefused() => RefusesTheAbsurd(given => StoredCharge.Of(given[0], given[1]), 1e-4, 400);

    private static Reckoning<Interval> Energy(Interval[] given) => StoredCharge.Of(given[0], given[1]).Then(stored => new Reckoning<Interval>.Done(stored.Energy));
}
