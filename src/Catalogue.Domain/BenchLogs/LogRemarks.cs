namespace Catalogue.Domain.BenchLogs;

/// <summary>What was odd about the lines of a log.</summary>
internal sealed class LogRemarks
{
    public long TooLongLines { get; set; }

    public long ShortLines { get; set; }

    public long OpenQuotes { get; set; }

    public long FormulaTexts { get; set; }

    public long RepeatedHeaders { get; set; }

    /// <summary>Lines count from 1; 0 stands for none, here and below.</summary>
    public long FirstRepeatedHeader { get; set; }

    public long OtherHeaderLine { get; set; }

    public long LinesWithoutSample { get; set; }

    public long FirstLineWithoutSample { get; set; }

    public long CutOffLine { get; set; }
}
