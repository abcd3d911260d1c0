using Catalogue.Domain.Packs;
using Catalogue.Domain.Text;

namespace Catalogue.Domain.Tests.Packs;

public sealed class PackWordsTests
{
    [Fact]
    public void Word_OfEveryValue_IsItsOwn()
    {
        AllDifferent(Enum.GetValues<ProtectionFunction>(), PackWords.Word);
        AllDifferent(Enum.GetValues<Balancing>(), PackWords.Word);
        AllDifferent(Enum.GetValues<CapacityConvention>(), PackWords.Word);
        AllDifferent(Enum.GetValues<EnergyLabel>(), PackWords.Word);
        AllDifferent(Enum.GetValues<EfficiencyLabel>(), PackWords.Word);
    }

    [Fact]
    public void Codes_OfTheVocabularies_AreTheTradesWords()
    {
        Assert.Equal(
            [
                "cell_overvoltage", "cell_undervoltage", "charge_overcurrent", "discharge_overcurrent", "short_circuit", "charge_over_temperature",
                "charge_under_temperature", "discharge_over_temperature", "cell_imbalance", "secondary_overvoltage", "chemical_fuse", "thermal_cutoff", "ptc", "interlock",
                "communication_loss",
            ],
            SnakeCase.All<ProtectionFunction>());
        Assert.Equal(["none", "passive_bleed", "active_inductor", "active_capacitor", "unknown"], SnakeCase.All<Balancing>());
    }

    private static void AllDifferent<T>(T[] values, Func<T, string> word) => Assert.Equal(values.Length, values.Select(word).Distinct().Count(text => text.Length > 0));
}
