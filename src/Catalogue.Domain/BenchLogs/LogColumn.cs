namespace Catalogue.Domain.BenchLogs;

/// <summary>A column while roles are dealt out.</summary>
/// <param name="index">Its place, from 0.</param>
/// <param name="name">Its header; empty where it has none.</param>
internal sealed class LogColumn(int index, string name)
{
    public int Index => index;

    public string Name => name;

    /// <summary>How a message names it.</summary>
    public string Title => name.Length > 0 ? name : $"column {index + 1}";

    public LogName Meaning { get; } = LogName.Read(name);

    public BenchLogRole Role { get; set; } = BenchLogRole.Other;

    public bool IsGiven { get; set; }

    public LogUnit? Unit { get; set; }

    public BenchLogUnitSource Source { get; set; }

    /// <summary>What the column would measure if it were taken.</summary>
    public LogQuantity Quantity { get; set; }

    /// <summary>How well name and unit fit the quantity.</summary>
    public int Fit { get; set; }

    /// <summary>What its cells hold, counted over the first lines.</summary>
    public int Numbers { get; set; }

    public int Words { get; set; }

    public int Missing { get; set; }

    public int UnitWords { get; set; }

    public int Dates { get; set; }

    public int Clocks { get; set; }

    public int Digitals { get; set; }

    public int DigitalLength { get; set; }

    public int Filled => Numbers + Words;
}
