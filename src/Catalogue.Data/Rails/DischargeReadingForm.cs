using System.ComponentModel;
using System.Text.Json.Serialization;
using Catalogue.Data.Conversions;

namespace Catalogue.Data.Rails;

/// <summary>What is filled in for a discharge reading.</summary>
public sealed class DischargeReadingForm
{
    /// <summary>Longest words for a place.</summary>
    public const int MaxPlaceLength = 200;

    /// <summary>The id of the rail whose charge was looked for.</summary>
    [Description("The id of the rail whose charge was looked for.")]
    public Guid? RailId { get; set; }

    /// <summary>Where the probes were, in words.</summary>
    [Description("Where the probes were, in words, such as across C1.")]
    public string? Place { get; set; }

    /// <summary>The lowest case in volt.</summary>
    [Description("The lowest case in volt; the reading itself when not given.")]
    public double? LowV { get; set; }

    /// <summary>The reading in volt, without its sign.</summary>
    [Description("The reading in volt, without its sign.")]
    public double? NominalV { get; set; }

    /// <summary>The highest case in volt.</summary>
    [Description("The highest case in volt; the reading itself when not given.")]
    public double? HighV { get; set; }

    /// <summary>When it was taken: date, time and offset from UTC, such as 2026-03-09T14:05:00Z; from then on the reading ages.</summary>
    [Description("When it was taken: date, time and offset from UTC, such as 2026-03-09T14:05:00Z. From then on the reading ages; it is never in the future.")]
    [JsonConverter(typeof(MomentJsonConverter))]
    public DateTimeOffset? TakenAt { get; set; }

    /// <summary>The instrument.</summary>
    [Description("The instrument.")]
    public string? Instrument { get; set; }
}
