using Catalogue.Domain.Quantities;

namespace Catalogue.Domain.Tests.Quantities;

public sealed class PartKindsTests
{
    [Theory]
    [InlineData("resistor", PartKind.Resistor)]
    [InlineData("Resistors", PartKind.Resistor)]
    [InlineData("film capacitor", PartKind.Capacitor)]
    [InlineData("MLCC", PartKind.Capacitor)]
    [InlineData("mosfet", PartKind.Transistor)]
    [InlineData("switch", PartKind.Transistor)]
    [InlineData("choke", PartKind.Inductor)]
    [InlineData("blade-fuse", PartKind.Fuse)]
    [InlineData("MOV", PartKind.Varistor)]
    public void Find_WordOrSynonym_IsItsKind(string word, PartKind kind) => Assert.Equal(kind, PartKinds.Find(word));

    [Theory]
    [InlineData("toaster")]
    [InlineData("")]
    [InlineData(null)]
    public void Find_OtherWord_IsNone(string? word) => Assert.Null(PartKinds.Find(word));

    [Fact]
    public void Known_EachWord_IsFoundAndPrintedAlike() => Assert.All(PartKinds.Known, word => Assert.Equal(word, PartKinds.Find(word)!.Value.Word()));
}
