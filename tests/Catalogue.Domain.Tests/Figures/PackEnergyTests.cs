using Catalogue.Domain.Components;
using Catalogue.Domain.Figures;
using Catalogue.Domain.Packs;
using Catalogue.Domain.Quantities;
using Catalogue.Domain.Rails;

namespace Catalogue.Domain.Tests.Figures;

public sealed class PackEnergyTests
{
    public static IEnumerable<TheoryDataRow<IReadOnlyDictionary<string, string>>> Examples => WorkedExamples.Of("pack-energy.md");

    [Theory]
    [MemberData(nameof(Examples))]
    public void Compute_WorkedExample_GivesTheDocumentedNumbers(IReadOnlyDictionary<string, string> row)
    {
        var ratings = new List<Rating> { Bench.Rating(RatingKind.CellCapacity, row.Number("Q_cell") / 1000) };
        if (row.ContainsKey("v"))
            ratings.Add(Bench.Rating(RatingKind.CellVoltage, row.Number("v")));
        var facts = Bench.Part(FunctionClass.Cell, Bench.Rail(kind: RailKind.Pack), ratings, parallel: row.Count("P"), series: row.Count("S")) with { CellChemistry = row["chemistry"] };
        WorkedExamples.Near(row.Number("E"), Bench.Computed(facts, PackEnergy.Rule).Value.Nominal);
        var rail = Assert.Single(facts.ByRail());
        WorkedExamples.Near(row.Number("V_min"), rail.Of(RailQuantityKind.MinVoltage)!.Interval.Nominal);
        WorkedExamples.Near(row.Number("V_nom"), rail.Of(RailQuantityKind.NominalVoltage)!.Interval.Nominal);
        WorkedExamples.Near(row.Number("V_max"), rail.Of(RailQuantityKind.MaxVoltage)!.Interval.Nominal);
        Assert.Equal(Evidence.Inferred, rail.Of(RailQuantityKind.MaxVoltage)!.Evidence);
        Assert.Contains("in series", rail.Of(RailQuantityKind.MaxVoltage)!.Source, StringComparison.Ordinal);
    }

    [Fact]
    public void Rail_RecordedVoltage_WinsOverTheDerivedOne()
    {
        var facts = Bench.Part(FunctionClass.Cell, Bench.Rail(min: 22, kind: RailKind.Pack), [], series: 8) with { CellChemistry = "LiFePO4" };
        var rail = Assert.Single(facts.ByRail());
        Assert.Equal((22, Evidence.Measured), (rail.Of(RailQuantityKind.MinVoltage)!.Interval.Nominal, rail.Of(RailQuantityKind.MinVoltage)!.Evidence));
        WorkedExamples.Near(29.2, rail.Of(RailQuantityKind.MaxVoltage)!.Interval.Nominal);
    }

    [Fact]
    public void Compute_ChemistryUnknownAndNoVoltage_NamesBoth()
    {
        var figure = Bench.Unknown(Bench.Part(FunctionClass.Cell, Bench.Rail(kind: RailKind.Pack), []) with { CellChemistry = "lithium ion" }, PackEnergy.Rule);
        Assert.Equal(["cell_capacity", "cell_voltage"], figure.Missing.Select(missing => missing.Code));
    }

    [Theory]
    [InlineData("lithium iron phosphate (LFP)", "lfp")]
    [InlineData("LiFePO4, 32 Ah", "lfp")]
    [InlineData("NMC 18650", "nmc")]
    [InlineData("nmc37", "nmc37")]
    [InlineData("lithium titanate", "lto")]
    [InlineData("Li-ion", null)]
    [InlineData("leadless", null)]
    [InlineData("lead acid", "pb")]
    [InlineData(null, null)]
    public void Find_Words_NameTheChemistryOrNone(string? text, string? code) => Assert.Equal(code, ChemistryWords.Find(text)?.Code);

    [Theory]
    [InlineData("Li-ion", true)]
    [InlineData("lithium polymer", true)]
    [InlineData("LFP", true)]
    [InlineData("alkaline", false)]
    [InlineData("nickel metal hydride", false)]
    public void IsLithium_Words_SaySo(string text, bool lithium) => Assert.Equal(lithium, ChemistryWords.IsLithium(text));
}
