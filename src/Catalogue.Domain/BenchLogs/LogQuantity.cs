namespace Catalogue.Domain.BenchLogs;

/// <summary>The quantities that units and words of a log can stand for.</summary>
internal enum LogQuantity
{
    None,
    Time,
    Voltage,
    Current,
    Power,
    Charge,
    Energy,
    Temperature,
    Resistance,
    Other,
}
