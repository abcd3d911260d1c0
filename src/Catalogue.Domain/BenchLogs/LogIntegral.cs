namespace Catalogue.Domain.BenchLogs;

/// <summary>An integral over time that can also be told without its long steps.</summary>
internal sealed class LogIntegral
{
    private readonly LogStepLengths _byStep = new();
    private LogTrapezoid _sum = new();

    /// <summary>Unit times second; null where no step was taken.</summary>
    public double? Total => _sum.HasSteps ? _sum.Total : null;

    public void Add(double time, double value)
    {
        if (_sum.Add(time, value, out var length, out var area))
            _byStep.Add(length, area);
    }

    /// <summary>What comes next does not join on to what was.</summary>
    public void Break() => _sum.Break();

    /// <summary>The sum without steps longer than a limit.</summary>
    public double? WithoutLongerThan(double limit) => _sum.HasSteps ? _sum.Total - _byStep.LongerThan(limit).Area : null;
}
