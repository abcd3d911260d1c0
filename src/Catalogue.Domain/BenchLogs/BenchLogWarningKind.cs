namespace Catalogue.Domain.BenchLogs;

/// <summary>The kinds of warnings about a log.</summary>
public enum BenchLogWarningKind
{
    /// <summary>The encoding is a guess or the text is damaged.</summary>
    Encoding,

    /// <summary>Something in the layout of columns, headers or lines.</summary>
    Layout,

    /// <summary>Columns that were not used, or one that was chosen among several.</summary>
    Columns,

    /// <summary>A unit that could mean two things.</summary>
    Unit,

    /// <summary>A quantity that is missing, so that a result is unknown.</summary>
    Missing,

    /// <summary>A quantity that was worked out and not measured.</summary>
    WorkedOut,

    /// <summary>How times were read.</summary>
    TimeBase,

    /// <summary>Pauses longer than five times the median step.</summary>
    Gap,

    /// <summary>The order in time is doubtful; somebody must say what is meant. Nothing is sorted.</summary>
    Order,

    /// <summary>Samples that come twice.</summary>
    Doubled,

    /// <summary>Cells without a usable number: overload, not a number, empty, words.</summary>
    Unusable,

    /// <summary>A last line that was cut off.</summary>
    CutOff,

    /// <summary>Current or power that changes its direction.</summary>
    Direction,

    /// <summary>An efficiency that cannot be or cannot be told.</summary>
    Efficiency,
}
