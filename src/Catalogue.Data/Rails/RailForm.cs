using System.ComponentModel;
using Catalogue.Domain.Rails;

namespace Catalogue.Data.Rails;

/// <summary>What is filled in for a rail. Quantities that are not known stay away; they are never taken as zero.</summary>
public sealed class RailForm
{
    /// <summary>What the reviewer calls it; unique in the teardown.</summary>
    [Description("What the reviewer calls it; unique in the teardown.")]
    public string? Name { get; set; }

    /// <summary>What it is.</summary>
    [Description("What it is.")]
    public RailKind Kind { get; set; } = RailKind.Other;

    /// <summary>Lowest voltage in use, in volt; rms on mains.</summary>
    [Description("Lowest voltage in use, in volt; rms on mains.")]
    public GivenQuantity? MinVoltageV { get; set; }

    /// <summary>Nominal voltage, in volt; rms on mains.</summary>
    [Description("Nominal voltage, in volt; rms on mains.")]
    public GivenQuantity? NominalVoltageV { get; set; }

    /// <summary>Highest voltage in use, in volt; rms on mains.</summary>
    [Description("Highest voltage in use, in volt; rms on mains.")]
    public GivenQuantity? MaxVoltageV { get; set; }

    /// <summary>Highest steady current, in ampere; rms on mains.</summary>
    [Description("Highest steady current, in ampere; rms on mains.")]
    public GivenQuantity? MaxCurrentA { get; set; }

    /// <summary>Highest steady power that the load of the rail puts out, in watt.</summary>
    [Description("Highest steady power that the load of the rail puts out, in watt.")]
    public GivenQuantity? MaxPowerW { get; set; }

    /// <summary>Efficiency from the rail to that output, a ratio of 0 to 1.</summary>
    [Description("Efficiency from the rail to that output, a ratio of 0 to 1.")]
    public GivenQuantity? Efficiency { get; set; }

    /// <summary>Power factor of the load, a ratio of 0 to 1; not needed on dc.</summary>
    [Description("Power factor of the load, a ratio of 0 to 1; not needed on dc.")]
    public GivenQuantity? PowerFactor { get; set; }

    /// <summary>Frequency of the mains that feeds a dc bus or is fed by it, in hertz.</summary>
    [Description("Frequency of the mains that feeds a dc bus or is fed by it, in hertz; its power then pulses at twice that.")]
    public GivenQuantity? LineFrequencyHz { get; set; }

    /// <summary>Mains that a rectifier makes a dc bus from, in volt rms, over their range.</summary>
    [Description("Mains that a rectifier makes a dc bus from, in volt rms: low and high are the ends of the range. Not for a bus behind a power-factor stage.")]
    public GivenQuantity? LineVoltageV { get; set; }

    /// <summary>What bleeds the rail's capacitors when it is switched off, in ohm.</summary>
    [Description("What bleeds the rail's capacitors when it is switched off, in ohm.")]
    public GivenQuantity? BleedResistanceOhm { get; set; }

    /// <summary>Resistance of the path from a pack's cells to its first fuse and back, cells left out, in ohm.</summary>
    [Description("Resistance of the path from a pack's cells to its first fuse and back, cells left out, in ohm; zero makes a short-circuit current an upper one.")]
    public GivenQuantity? PathResistanceOhm { get; set; }

    /// <summary>The current that the rail can deliver into a short, in ampere; rms on mains.</summary>
    [Description("The current that the rail can deliver into a short, in ampere; rms on mains.")]
    public GivenQuantity? ProspectiveCurrentA { get; set; }

    /// <summary>The id of the port whose rail it is.</summary>
    [Description("The id of the port whose rail it is; what the port offers then says what the rail carries where nothing is recorded.")]
    public Guid? PortId { get; set; }

    /// <summary>A remark.</summary>
    [Description("A remark.")]
    public string? Note { get; set; }
}
