namespace Catalogue.Domain.BenchLogs;

/// <summary>A stretch of a log in which voltage and current are settled, such as a step of a load sweep.</summary>
/// <param name="StartS">Where it begins, in seconds after the first sample.</param>
/// <param name="DurationS">How long it lasts in seconds.</param>
/// <param name="Samples">How many samples it has, from <see cref="LogSteps.FewestSamples"/>.</param>
/// <param name="MeanVoltageV">Mean voltage of its samples in volt.</param>
/// <param name="MeanCurrentA">Mean current of its samples in ampere.</param>
/// <param name="MeanPowerW">Mean of their powers in watt; not the product of the two means.</param>
public sealed record BenchLogStep(double StartS, double DurationS, long Samples, double MeanVoltageV, double MeanCurrentA, double MeanPowerW);
