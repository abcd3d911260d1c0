using System.ComponentModel;
using Catalogue.Domain.Photos;

namespace Catalogue.Data.Photos;

/// <summary>What is filled in for a photo.</summary>
public sealed class PhotoForm
{
    /// <summary>What it shows.</summary>
    [Description("What it shows.")]
    public PhotoSubject Subject { get; set; }

    /// <summary>The id of the board it shows.</summary>
    [Description("The id of the board it shows.")]
    public Guid? BoardId { get; set; }

    /// <summary>The caption, at most 400 characters.</summary>
    [Description("The caption, at most 400 characters.")]
    public string? Caption { get; set; }

    /// <summary>Words for readers who do not see it.</summary>
    [Description("Words for readers who do not see it.")]
    public string? AltText { get; set; }

    /// <summary>Who made it.</summary>
    [Description("Who made it.")]
    public string? Credit { get; set; }

    /// <summary>Its licence where it differs from the lab's.</summary>
    [Description("Its licence where it differs from the lab's.")]
    public string? Licence { get; set; }

    /// <summary>True for a drawing; the page then says so.</summary>
    [Description("True for a drawing; the page then says so.")]
    public bool IsDrawing { get; set; }
}
