using Catalogue.Domain.Quantities;
using Catalogue.Domain.Rails;

namespace Catalogue.Domain.Figures;

/// <summary>What a rail asks of a part in line with it; each may be missing.</summary>
/// <remarks>
/// <c>I_needed = P / (η · V_min · λ)</c>, or the rail's highest current where it is recorded itself. V_min, not the nominal voltage: a load
/// of constant power draws most when the voltage is lowest. λ (power factor) counts on mains only.
/// </remarks>
public abstract record RailLoad
{
    /// <summary>True when the part has a rail.</summary>
    public bool HasRail { get; init; }

    /// <summary>True when the rail is mains, so that a power factor is needed.</summary>
    public bool IsMains { get; init; }

    /// <summary>The rail's highest steady current, in ampere.</summary>
    public Given? MaxCurrent { get; init; }

    /// <summary>The rail's lowest voltage in use, in volt.</summary>
    public Given? MinVoltage { get; init; }

    /// <summary>Highest steady output power, in watt.</summary>
    public Given? MaxPower { get; init; }

    /// <summary>Efficiency from the rail to that output, 0 to 1.</summary>
    public Given? Efficiency { get; init; }

    /// <summary>Power factor, 0 to 1.</summary>
    public Given? PowerFactor { get; init; }

    /// <summary>The current needed, in ampere; what is missing for it is named on the sheet.</summary>
    /// <param name="sheet">The sheet.</param>
    /// <param name="part">What the part is called, such as <c>fuse</c>.</param>
    internal Term Needed(Sheet sheet, string part)
    {
        if (!HasRail)
        {
            sheet.Miss("rail", $"the rail the {part} sits in");
            return Term.Number(1);
        }

        if (MaxCurrent is not null)
            return sheet.Need(MaxCurrent, "I_needed", "highest current of the rail", Unit.Ampere, "max_current", "the rail's highest current");
        var power = sheet.Need(MaxPower, "P", "highest output power", Unit.Watt, "max_power", "the rail's highest power or current");
        var voltage = sheet.Need(MinVoltage, "V_min", "lowest voltage of the rail", Unit.Volt, "min_voltage", "the rail's lowest voltage");
        var divisor = sheet.Need(Efficiency, "η", "efficiency", Unit.Ratio, "efficiency", "the efficiency from the rail to its output") * voltage;
        if (IsMains)
            divisor *= sheet.Need(PowerFactor, "λ", "power factor", Unit.Ratio, "power_factor", "the power factor of a mains rail");
        return sheet.Step("I_needed", "current needed", Unit.Ampere, power / divisor);
    }

    /// <summary>The same with what is recorded or derived of a rail.</summary>
    /// <param name="rail">The rail, or null.</param>
    internal RailLoad With(RailFacts? rail) => this with
    {
        HasRail = rail is not null,
        IsMains = rail?.IsMains == true,
        MaxCurrent = rail?.Of(RailQuantityKind.MaxCurrent),
        MinVoltage = rail?.Of(RailQuantityKind.MinVoltage),
        MaxPower = rail?.Of(RailQuantityKind.MaxPower),
        Efficiency = rail?.Of(RailQuantityKind.Efficiency),
        PowerFactor = rail?.Of(RailQuantityKind.PowerFactor),
    };
}
