namespace Catalogue.Domain.BenchLogs;

/// <summary>What is made of a clock that goes back.</summary>
public enum BenchLogStepBack
{
    /// <summary>It is asked: duration, charge and energy stay unknown.</summary>
    Ask,

    /// <summary>A time of day that goes back belongs to the next day.</summary>
    NextDay,

    /// <summary>The stretches before and after stand side by side: nothing is integrated over the step, the sums of the stretches are added.</summary>
    Separate,
}
