using Catalogue.Data.Teardowns;
using Catalogue.Domain.Components;
using Catalogue.Domain.Figures;
using Catalogue.Domain.Teardowns;

namespace Catalogue.Lab.Workbench;

/// <summary>Something that a board still lacks.</summary>
/// <param name="Subject">What lacks it.</param>
/// <param name="Words">What is lacking.</param>
/// <param name="Component">The component to open, or null.</param>
/// <param name="Figure">The figure that lacks it, or null.</param>
/// <param name="Input">The code of the input of that figure, or null.</param>
public sealed record Gap(string Subject, string Words, ComponentId? Component, Figure? Figure, string? Input)
{
    /// <summary>The gaps of one board, or of the whole record when none is given: inputs of figures first.</summary>
    public static IReadOnlyList<Gap> Of(TeardownRecord record, BoardId? board)
    {
        ArgumentNullException.ThrowIfNull(record);
        var components = record.Components.Where(row => board is null || row.BoardId == board).ToDictionary(row => row.Id);
        var photos = record.Photos.Where(row => board is null || row.BoardId == board).Select(row => row.Id).ToHashSet();
        var gaps = new List<Gap>();
        foreach (var figure in record.Figures)
            if (figure.ComponentId is { } id && components.TryGetValue(id, out var component))
                gaps.AddRange(figure.Missing.Select(missing => new Gap(component.Name, $"{missing.Words}; blocks a figure", component.Id, figure, missing.Code)));
        foreach (var figure in record.Figures)
            if (board is null && figure.RailId is { } id && record.Rails.FirstOrDefault(rail => rail.Id == id) is { } rail)
                gaps.AddRange(figure.Missing.Select(missing => new Gap(rail.Name, $"{missing.Words}; blocks a figure", null, figure, missing.Code)));
        foreach (var callout in record.Callouts)
            if (photos.Contains(callout.PhotoId) && callout.ComponentId is null && callout.BoardId is null && callout.PortId is null)
                gaps.Add(new Gap(FormattableString.Invariant($"Callout {callout.Number}"), "no component yet", null, null, null));
        return gaps;
    }
}
