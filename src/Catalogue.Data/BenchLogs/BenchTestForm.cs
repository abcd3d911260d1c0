using System.ComponentModel;
using Catalogue.Domain.Quantities;

namespace Catalogue.Data.BenchLogs;

/// <summary>What is filled in for a bench test.</summary>
public sealed class BenchTestForm
{
    /// <summary>What was measured, such as energy.</summary>
    [Description("What was measured, such as energy.")]
    public string? Subject { get; set; }

    /// <summary>The conditions in words.</summary>
    [Description("The conditions in words.")]
    public string? Conditions { get; set; }

    /// <summary>The instrument.</summary>
    [Description("The instrument.")]
    public string? Instrument { get; set; }

    /// <summary>When the instrument was last calibrated.</summary>
    [Description("When the instrument was last calibrated.")]
    public DateOnly? CalibratedOn { get; set; }

    /// <summary>Ambient temperature in degC.</summary>
    [Description("Ambient temperature in degC.")]
    public double? AmbientDegC { get; set; }

    /// <summary>The cable used.</summary>
    [Description("The cable used.")]
    public string? Cable { get; set; }

    /// <summary>The lowest case of the result.</summary>
    [Description("The lowest case of the result.")]
    public double? Low { get; set; }

    /// <summary>The result in the base unit.</summary>
    [Description("The result in the base unit.")]
    public double? Value { get; set; }

    /// <summary>The highest case of the result.</summary>
    [Description("The highest case of the result.")]
    public double? High { get; set; }

    /// <summary>The unit of the result.</summary>
    [Description("The unit of the result.")]
    public Unit? Unit { get; set; }

    /// <summary>The result in words where a number does not say it.</summary>
    [Description("The result in words where a number does not say it.")]
    public string? ResultText { get; set; }

    /// <summary>When it was measured.</summary>
    [Description("When it was measured.")]
    public DateOnly? TakenOn { get; set; }

    /// <summary>The id of the port measured.</summary>
    [Description("The id of the port measured.")]
    public Guid? PortId { get; set; }
}
