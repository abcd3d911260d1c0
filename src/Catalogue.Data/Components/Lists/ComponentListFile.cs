using Catalogue.Domain.Components.Lists;

namespace Catalogue.Data.Components.Lists;

/// <summary>Reads a component list from a file of any kind that labs have them in: text with separators, Markdown, or a workbook.</summary>
/// <remarks>Never throws on content, fetches nothing, evaluates nothing; what is read is bounded by the limits of <see cref="ComponentList"/> and <see cref="Workbook"/>.</remarks>
public static class ComponentListFile
{
    /// <summary>Reads the list; the content decides of what kind it is.</summary>
    /// <param name="content">The file's bytes.</param>
    /// <param name="fileName">Its name, only to say where it contradicts the content; null where unknown.</param>
    /// <param name="options">What a person decided; null to find everything out.</param>
    public static ComponentListReading Read(ReadOnlyMemory<byte> content, string? fileName, ComponentListOptions? options = null)
    {
        if (!Workbook.IsArchive(content.Span) || content.Length > ComponentList.MaxFileBytes)
            return ComponentList.Read(content, fileName, options);
        var (sheets, refusal) = Workbook.Read(content);
        return sheets is null ? new ComponentListReading.Refused(refusal!) : ComponentList.Read(sheets, options);
    }
}
