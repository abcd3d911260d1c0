namespace Catalogue.Domain.Rails;

/// <summary>The words a person reads for each kind of rail.</summary>
public static class RailKindWords
{
    /// <summary>Such as <c>dc bus</c>.</summary>
    public static string Word(this RailKind kind) => kind switch
    {
        RailKind.Pack => "pack",
        RailKind.DcBus => "dc bus",
        RailKind.LowVoltage => "low voltage",
        RailKind.Mains => "mains",
        _ => "other",
    };
}
