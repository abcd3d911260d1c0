namespace Catalogue.Domain.BenchLogs;

/// <summary>The trapezoid rule over samples as they come.</summary>
internal struct LogTrapezoid()
{
    private double _time = double.NaN;
    private double _value;
    private double _total;
    private double _carry;

    /// <summary>Unit times second.</summary>
    public readonly double Total => _total + _carry;

    /// <summary>True when there is a step to speak of.</summary>
    public bool HasSteps { get; private set; }

    /// <summary>Takes a sample and tells length and area of the step before it; false where there is none. What is not a number is passed over.</summary>
    public bool Add(double time, double value, out double length, out double area)
    {
        (length, area) = (0, 0);
        if (double.IsNaN(value) || double.IsNaN(time))
            return false;
        length = time - _time;
        var isStep = length > 0;
        if (isStep)
        {
            area = 0.5 * (value + _value) * length;
            // Neumaier's sum: what the total is too coarse to take is carried along.
            var total = _total + area;
            _carry += Math.Abs(_total) >= Math.Abs(area) ? _total - total + area : area - total + _total;
            _total = total;
            HasSteps = true;
        }

        (_time, _value) = (time, value);
        return isStep;
    }

    /// <summary>What comes next does not join on to what was.</summary>
    public void Break() => _time = double.NaN;
}
