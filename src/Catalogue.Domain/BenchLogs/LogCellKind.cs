namespace Catalogue.Domain.BenchLogs;

/// <summary>What a cell holds where a number is looked for.</summary>
internal enum LogCellKind
{
    Number,
    Empty,
    Overload,
    NotANumber,
    Words,
}
