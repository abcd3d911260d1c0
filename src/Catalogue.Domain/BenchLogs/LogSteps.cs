namespace Catalogue.Domain.BenchLogs;

/// <summary>Finds the stretches in which voltage and current are settled, such as the steps of a load sweep.</summary>
/// <remarks>
/// A sample that leaves the smoothed course by more than 2 % and 20 mV, or 2 % and 2 mA, begins a new stretch; a slow change, such as that of a
/// cell under load, does not. Stretches of fewer than five samples are transitions and left out. House rule.
/// </remarks>
internal sealed class LogSteps
{
    /// <summary>Fewer samples are a transition.</summary>
    public const int FewestSamples = 5;

    /// <summary>No more stretches are kept.</summary>
    public const int MaxSteps = 256;

    private const double Relative = 0.02;
    private const double VoltFloor = 0.02;
    private const double AmpereFloor = 0.002;
    private const double Smoothing = 0.25;

    private readonly List<BenchLogStep> _steps = [];
    private long _samples;
    private double _start, _end, _volts, _amperes, _watts, _smoothVolt, _smoothAmpere;

    /// <summary>How many stretches were found beyond those kept.</summary>
    public long NotKept { get; private set; }

    public void Add(double time, double volt, double ampere)
    {
        if (_samples > 0 && (IsJump(volt, _smoothVolt, VoltFloor) || IsJump(ampere, _smoothAmpere, AmpereFloor)))
            End();
        if (_samples == 0)
            (_start, _smoothVolt, _smoothAmpere, _volts, _amperes, _watts) = (time, volt, ampere, 0, 0, 0);
        _samples++;
        _end = time;
        _volts += volt;
        _amperes += ampere;
        _watts += volt * ampere;
        _smoothVolt += Smoothing * (volt - _smoothVolt);
        _smoothAmpere += Smoothing * (ampere - _smoothAmpere);
    }

    public IReadOnlyList<BenchLogStep> Complete()
    {
        End();
        return _steps;
    }

    private static bool IsJump(double value, double smooth, double floor) => Math.Abs(value - smooth) > (Relative * Math.Abs(smooth)) + floor;

    private void End()
    {
        if (_samples >= FewestSamples && _steps.Count < MaxSteps)
            _steps.Add(new BenchLogStep(_start, _end - _start, _samples, _volts / _samples, _amperes / _samples, _watts / _samples));
        else if (_samples >= FewestSamples)
            NotKept++;
        _samples = 0;
    }
}
