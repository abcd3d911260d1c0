namespace Catalogue.Domain.BenchLogs;

/// <summary>A few neighbouring samples, drawn as one: nothing that stood out between them is lost.</summary>
/// <param name="FromS">The first sample's time in seconds after the log's first; its number from 0 where times are not known.</param>
/// <param name="ToS">The last sample's, likewise.</param>
/// <param name="MinVoltageV">Lowest voltage, or null.</param>
/// <param name="MaxVoltageV">Highest voltage, or null.</param>
/// <param name="MinCurrentA">Lowest current, or null.</param>
/// <param name="MaxCurrentA">Highest current, or null.</param>
/// <param name="MinPowerW">Lowest power, or null.</param>
/// <param name="MaxPowerW">Highest power, or null.</param>
public sealed record BenchLogTracePoint(
    double FromS,
    double ToS,
    double? MinVoltageV,
    double? MaxVoltageV,
    double? MinCurrentA,
    double? MaxCurrentA,
    double? MinPowerW,
    double? MaxPowerW);
