using Catalogue.Domain.Components;

namespace Catalogue.Domain.Figures;

/// <summary>How much of a fuse's rated current is used steadily, by the way it is rated.</summary>
/// <param name="Derating">A ratio above 0 and at most 1.</param>
/// <param name="Name">The convention, as it is named beside the figure.</param>
public sealed record FuseConvention(double Derating, string Name)
{
    /// <summary>
    /// The convention for a class of fuse, or null where there is none to default to. Trade convention, not a clause of a standard; a
    /// reviewer may give another.
    /// </summary>
    public static FuseConvention? For(FunctionClass? functionClass) => functionClass switch
    {
        FunctionClass.BladeFuse => new FuseConvention(0.75, "75 % convention for blade fuses"),
        FunctionClass.UlCartridgeFuse => new FuseConvention(0.75, "75 % convention for UL-style fuses"),
        FunctionClass.IecCartridgeFuse => new FuseConvention(1.00, "100 % convention for IEC cartridge fuses at 23 °C"),
        _ => null,
    };
}
