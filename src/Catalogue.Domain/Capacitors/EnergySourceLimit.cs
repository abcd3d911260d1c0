using Catalogue.Domain.Quantities;

namespace Catalogue.Domain.Capacitors;

/// <summary>The peak voltage up to which a charged capacitor counts as an energy source of class 1 or 2.</summary>
/// <remarks>
/// Source: IEC 62368-1, the limits for a charged capacitor. Between two rows: linear in capacitance. Above 300 nF the last row holds; below 4 nF the
/// first, so that nothing is extrapolated.
/// </remarks>
/// <param name="Class1">ES1, in volt peak.</param>
/// <param name="Class2">ES2, in volt peak.</param>
public sealed record EnergySourceLimit(double Class1, double Class2)
{
    /// <summary>How well the rows are founded.</summary>
    public const Confidence Mark = Confidence.Medium;

    // Capacitance in farad, rising; ES1 in volt peak. ES2 is twice ES1 in every row.
    private static readonly (double Farad, double Class1)[] Rows =
    [
        (4e-9, 1000), (8e-9, 500), (12e-9, 350), (18e-9, 250), (28e-9, 200), (41e-9, 150), (61e-9, 125), (91e-9, 100), (170e-9, 75), (300e-9, 60),
    ];

    /// <summary>The limits for a capacitance, those of its highest case.</summary>
    /// <param name="capacitance">In farad.</param>
    public static Reckoning<EnergySourceLimit> For(Interval? capacitance) => new InputCheck()
        .Positive("capacitance", capacitance, Unit.Farad)
        .Reckon(() => At(capacitance!.Value.High));

    private static EnergySourceLimit At(double farad)
    {
        var above = Array.FindIndex(Rows, row => row.Farad >= farad);
        var volts = above switch
        {
            -1 => Rows[^1].Class1,
            0 => Rows[0].Class1,
            _ => Between(Rows[above - 1], Rows[above]),
        };
        return new EnergySourceLimit(volts, 2 * volts);

        double Between((double Farad, double Class1) left, (double Farad, double Class1) right) =>
            left.Class1 + ((right.Class1 - left.Class1) * (farad - left.Farad) / (right.Farad - left.Farad));
    }
}
