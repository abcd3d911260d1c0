using Catalogue.Domain.Components;

namespace Catalogue.Domain.Tests.Components;

public sealed class FunctionClassTextTests
{
    [Theory]
    [InlineData("switch", FunctionClass.Switch)]
    [InlineData("low-side MOSFETs of the bridge", FunctionClass.Switch)]
    [InlineData("ul_cartridge_fuse", FunctionClass.UlCartridgeFuse)]
    [InlineData("cartridge fuse, IEC style", FunctionClass.IecCartridgeFuse)]
    [InlineData("Resettable fuse", FunctionClass.ResettableFuse)]
    [InlineData("buck regulator", FunctionClass.Regulator)]
    [InlineData("PWM controller", FunctionClass.Controller)]
    [InlineData("fast charge protocol", FunctionClass.ProtocolChip)]
    [InlineData("Optocoupler for feedback", FunctionClass.Optocoupler)]
    public void Read_ARole_IsItsClass(string role, FunctionClass expected) => Assert.Equal(expected, FunctionClassText.Read(role));

    [Theory]
    [InlineData(null)]
    [InlineData(" ")]
    [InlineData("gate driver")]
    [InlineData("excellent")]
    [InlineData("a nice part")]
    public void Read_ARoleThatNamesNoClass_IsNull(string? role) => Assert.Null(FunctionClassText.Read(role));
}
