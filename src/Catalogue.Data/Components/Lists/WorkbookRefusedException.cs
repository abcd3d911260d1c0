namespace Catalogue.Data.Components.Lists;

/// <summary>A limit was passed while a workbook was streamed; caught where reading began.</summary>
/// <param name="reason">Why, in plain words.</param>
internal sealed class WorkbookRefusedException(string reason) : Exception(reason);
