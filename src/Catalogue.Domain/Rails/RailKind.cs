namespace Catalogue.Domain.Rails;

/// <summary>What a rail is.</summary>
public enum RailKind
{
    /// <summary>The cells' own terminals.</summary>
    Pack,

    /// <summary>A dc bus between converters.</summary>
    DcBus,

    /// <summary>A low-voltage dc output or supply.</summary>
    LowVoltage,

    /// <summary>Mains, in or out.</summary>
    Mains,

    /// <summary>Anything else.</summary>
    Other,
}
