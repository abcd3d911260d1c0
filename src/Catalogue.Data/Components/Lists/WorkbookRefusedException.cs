namespace Catalogue.Data.Components.Lists;

/// <summary>A limit was passed while a workbook was streamed; caught where reading began.</summary>
/// <param name="reason">Why, in plain words.</param>
internal sealed class WorkbookRefusedException(string reason) : Exception(reason)
{
    public static WorkbookRefusedException TooMuchText() =>
        new($"The workbook holds more than {Workbook.MaxCharacters / (1024 * 1024)} million characters. Save only the sheet with the list, or save it as text with separators (CSV).");
}
