using System.ComponentModel;
using Catalogue.Domain.Isolation;

namespace Catalogue.Data.Isolation;

/// <summary>What is filled in for a measured path across an insulation. Assumptions that are not said stay away; the note then names them.</summary>
public sealed class MeasuredPathForm
{
    /// <summary>Longest words for an end.</summary>
    public const int MaxEndLength = 200;

    /// <summary>The id of the board it was measured on.</summary>
    [Description("The id of the board it was measured on.")]
    public Guid? BoardId { get; set; }

    /// <summary>One end in words.</summary>
    [Description("One end in words, such as primary pads of U3.")]
    public string? From { get; set; }

    /// <summary>The other end in words.</summary>
    [Description("The other end in words.")]
    public string? To { get; set; }

    /// <summary>Which of the two paths was measured.</summary>
    [Description("Which of the two paths was measured: along the surface, or through air.")]
    public PathKind? PathKind { get; set; }

    /// <summary>The lowest case of the distance in millimetre.</summary>
    [Description("The lowest case of the distance in millimetre; the value itself when not given.")]
    public double? LowMm { get; set; }

    /// <summary>The distance in millimetre.</summary>
    [Description("The distance in millimetre, above 0 and at most 1000.")]
    public double? NominalMm { get; set; }

    /// <summary>The highest case of the distance in millimetre.</summary>
    [Description("The highest case of the distance in millimetre; the value itself when not given.")]
    public double? HighMm { get; set; }

    /// <summary>How it was measured.</summary>
    [Description("How it was measured, such as caliper.")]
    public string? Method { get; set; }

    /// <summary>Width of the narrowest slot or groove that the path follows, in millimetre.</summary>
    [Description("Width of the narrowest slot or groove that the path follows, in millimetre; null where it follows none.")]
    public double? NarrowestGrooveMm { get; set; }

    /// <summary>Assumed working voltage across the path, in volt rms.</summary>
    [Description("Assumed working voltage across the path, in volt rms.")]
    public double? WorkingVoltageV { get; set; }

    /// <summary>What the insulation is taken to be there for.</summary>
    [Description("What the insulation is taken to be there for.")]
    public InsulationKind? Insulation { get; set; }

    /// <summary>Assumed overvoltage category, 1 to 4.</summary>
    [Description("Assumed overvoltage category, 1 to 4.")]
    public int? OvervoltageCategory { get; set; }

    /// <summary>Assumed pollution degree, 1 to 3.</summary>
    [Description("Assumed pollution degree, 1 to 3.")]
    public int? PollutionDegree { get; set; }

    /// <summary>Assumed material group by comparative tracking index.</summary>
    [Description("Assumed material group by comparative tracking index: one from 600, two from 400, three_a from 175, three_b from 100.")]
    public MaterialGroup? MaterialGroup { get; set; }

    /// <summary>Assumed highest altitude of use, in metre.</summary>
    [Description("Assumed highest altitude of use, in metre.")]
    public double? AltitudeM { get; set; }

    /// <summary>Assumed highest frequency across the path, in hertz.</summary>
    [Description("Assumed highest frequency across the path, in hertz.")]
    public double? FrequencyHz { get; set; }

    /// <summary>True when coating or potting covers the path.</summary>
    [Description("True when coating or potting covers the path; null where not said.")]
    public bool? IsCoated { get; set; }

    /// <summary>A remark.</summary>
    [Description("A remark.")]
    public string? Remark { get; set; }
}
