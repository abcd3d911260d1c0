namespace Catalogue.Domain.Quantities;

/// <summary>A value with its unit, its spread and what was said beside it.</summary>
/// <remarks>
/// Value null: a range, where low and high are the ends, or a bound, where only one of them is known. Otherwise low ≤ value ≤ high, and all
/// three are equal where no spread was said. Every number is finite and in the unit itself, never in a multiple of it.
/// </remarks>
public readonly record struct Quantity
{
    private Quantity(double? low, double? value, double? high, Unit unit) => (Low, Value, High, Unit) = (low, value, high, unit);

    /// <summary>The lowest case; null only for an upper bound (<c>≤ 0.1 W</c>): what is not said is not zero.</summary>
    public double? Low { get; }

    /// <summary>The value; null for a range or a bound.</summary>
    public double? Value { get; }

    /// <summary>The highest case; null only for a lower bound.</summary>
    public double? High { get; }

    /// <summary>The unit.</summary>
    public Unit Unit { get; }

    /// <summary>Ac or dc, where it was said.</summary>
    public CurrentKind Current { get; init; }

    /// <summary>How many such things, from 1: <c>2x15A</c> is 15 A, twice.</summary>
    public int Count { get => field + 1; init => field = value - 1; }

    /// <summary>True where low and high lie apart from the value.</summary>
    public bool HasSpread => Low != High;

    /// <summary>A value without spread.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value is not finite.</exception>
    public static Quantity Exactly(double value, Unit unit) => Between(value, value, value, unit);

    /// <summary>A value with its lowest and highest case.</summary>
    /// <exception cref="ArgumentOutOfRangeException">A number is not finite, or they are out of order.</exception>
    public static Quantity Between(double low, double value, double high, Unit unit) =>
        Interval.TryCreate(low, value, high) is null
            ? throw new ArgumentOutOfRangeException(nameof(value), "Finite numbers, low ≤ value ≤ high.")
            : new Quantity(low, value, high, unit);

    /// <summary>All values from low to high.</summary>
    /// <exception cref="ArgumentOutOfRangeException">A number is not finite, or they are out of order.</exception>
    public static Quantity Range(double low, double high, Unit unit) => new(Between(low, low, high, unit).Low, null, high, unit);

    /// <summary>An upper bound, nothing said of the lower one.</summary>
    public static Quantity AtMost(double high, Unit unit) => new(null, null, Exactly(high, unit).High, unit);

    /// <summary>A lower bound, nothing said of the upper one.</summary>
    public static Quantity AtLeast(double low, Unit unit) => new(Exactly(low, unit).Low, null, null, unit);

    /// <summary>The three cases as an interval, or null for a range or a bound.</summary>
    public Interval? ToInterval() => Value is { } value ? Interval.Create(Low!.Value, value, High!.Value) : null;

    /// <summary>The exact print, see <see cref="QuantityText.Exact(Quantity)"/>.</summary>
    public override string ToString() => QuantityText.Exact(this);
}
