using Catalogue.Domain.Products;
using Catalogue.Domain.Quantities;
using Catalogue.Domain.Teardowns;

namespace Catalogue.Domain.BenchLogs;

/// <summary>A measurement at the bench with what it takes to repeat it.</summary>
public sealed class BenchTest : IEditableRecord
{
    /// <inheritdoc />
    public required RevisionId RevisionId { get; set; }

    /// <summary>Its id.</summary>
    public required BenchTestId Id { get; init; }

    /// <summary>Its place in the list, from 0; printed from 1.</summary>
    public int Position { get; set; }

    /// <summary>What was measured, such as <c>energy</c>; matched with claims of the same subject.</summary>
    public required string Subject { get; set; }

    /// <summary>The conditions in words, or null.</summary>
    public string? Conditions { get; set; }

    /// <summary>The instrument, or null.</summary>
    public string? Instrument { get; set; }

    /// <summary>When the instrument was last calibrated, or null.</summary>
    public DateOnly? CalibratedOn { get; set; }

    /// <summary>Ambient temperature in °C, or null.</summary>
    public double? AmbientDegC { get; set; }

    /// <summary>The cable used, or null; without it a 100 W charger may look like a 60 W one.</summary>
    public string? Cable { get; set; }

    /// <summary>The lowest case of the result, or null.</summary>
    public double? Low { get; set; }

    /// <summary>The result in the base unit, or null.</summary>
    public double? Value { get; set; }

    /// <summary>The highest case of the result, or null.</summary>
    public double? High { get; set; }

    /// <summary>The unit of the result, or null.</summary>
    public Unit? Unit { get; set; }

    /// <summary>The result in words where a number does not say it, or null.</summary>
    public string? ResultText { get; set; }

    /// <summary>When it was measured, or null.</summary>
    public DateOnly? TakenOn { get; set; }

    /// <summary>The port measured, or null.</summary>
    public PortId? PortId { get; set; }

    /// <inheritdoc />
    public uint Version { get; init; }
}
