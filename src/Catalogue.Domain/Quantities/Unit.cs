namespace Catalogue.Domain.Quantities;

/// <summary>The units values are stored in: SI base or coherent units, never a multiple.</summary>
public enum Unit
{
    /// <summary>Volt.</summary>
    Volt,

    /// <summary>Ampere.</summary>
    Ampere,

    /// <summary>Watt.</summary>
    Watt,

    /// <summary>Watt-hour.</summary>
    WattHour,

    /// <summary>Ampere-hour.</summary>
    AmpereHour,

    /// <summary>Ohm.</summary>
    Ohm,

    /// <summary>Farad.</summary>
    Farad,

    /// <summary>Henry.</summary>
    Henry,

    /// <summary>Hertz.</summary>
    Hertz,

    /// <summary>Degree Celsius.</summary>
    DegreeCelsius,

    /// <summary>Metre.</summary>
    Metre,

    /// <summary>Second.</summary>
    Second,

    /// <summary>Kilogram.</summary>
    Kilogram,

    /// <summary>Per degree Celsius; the slope of a derating line.</summary>
    PerDegreeCelsius,

    /// <summary>Joule, one watt-second; stored energy.</summary>
    Joule,

    /// <summary>Degree Celsius per watt; a thermal resistance.</summary>
    DegreeCelsiusPerWatt,

    /// <summary>A dimensionless ratio, 1 meaning one to one.</summary>
    Ratio,
}
