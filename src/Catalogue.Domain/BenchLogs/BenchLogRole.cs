namespace Catalogue.Domain.BenchLogs;

/// <summary>What a column of a bench log stands for.</summary>
public enum BenchLogRole
{
    /// <summary>When a sample was taken: date with time, time of day, elapsed time or a counter.</summary>
    Time,

    /// <summary>The day of a sample, where a second column has the time of day.</summary>
    Date,

    /// <summary>The voltage measured; that of the output where input and output are logged.</summary>
    Voltage,

    /// <summary>The current measured; that of the output where input and output are logged.</summary>
    Current,

    /// <summary>The power measured; that of the output where input and output are logged.</summary>
    Power,

    /// <summary>The voltage at the input.</summary>
    InputVoltage,

    /// <summary>The current at the input.</summary>
    InputCurrent,

    /// <summary>The power at the input.</summary>
    InputPower,

    /// <summary>A charge counter of the instrument.</summary>
    Charge,

    /// <summary>An energy counter of the instrument.</summary>
    Energy,

    /// <summary>A temperature.</summary>
    Temperature,

    /// <summary>What an instrument was told to do; never a measurement.</summary>
    SetValue,

    /// <summary>The number or name of a part of the recording.</summary>
    Segment,

    /// <summary>A reading whose unit stands in another column and may change from row to row.</summary>
    Value,

    /// <summary>The unit of the reading in the same row.</summary>
    UnitName,

    /// <summary>Digital inputs, written as zeros and ones.</summary>
    Digital,

    /// <summary>Words.</summary>
    Text,

    /// <summary>Numbers that nothing is computed from.</summary>
    Other,
}
