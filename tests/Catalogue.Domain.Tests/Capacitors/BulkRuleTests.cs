using Catalogue.Domain.Capacitors;
using static Catalogue.Domain.Tests.Quantities.Reckoned;

namespace Catalogue.Domain.Tests.Capacitors;

public sealed class BulkRuleTests
{
    [Fact]
    public void For_EveryUse_HasARuleInOrder() => Assert.All(Enum.GetValues<BulkUse>(), use =>
    {
        var rule = BulkRule.For(use);
        Assert.Equal(use, rule.Use);
        Assert.True(rule.Low > 0 && rule.Low <= rule.High);
    });

    [Fact]
    public void PerWatt_SpreadInputs_HoldsEveryCase() => HoldsEveryCase(given => BulkRule.PerWatt(given[0], given[1]), (1e-5, 1e-3), (10, 100));

    [Fact]
    public void PerWatt_AbsurdInputs_AreRefused() => RefusesTheAbsurd(given => BulkRule.PerWatt(given[0], given[1]), 68e-6, 36);
}
