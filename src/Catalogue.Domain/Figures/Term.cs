using System.Globalization;
using System.Text;
using Catalogue.Domain.Quantities;

namespace Catalogue.Domain.Figures;

/// <summary>
/// A quantity within a sum. It knows its three cases, how it is written in symbols, and how in the numbers of any case, so that what a
/// reader is shown is what was computed.
/// </summary>
/// <remarks>
/// Interval arithmetic: each operation takes the corner of its operands that gives the lowest and the highest result, so the result contains
/// every combination of its inputs. It is exact when each input stands in the sum once; where one stands twice it is never too narrow.
/// </remarks>
public sealed class Term
{
    private readonly Operation _operation;
    private readonly Term? _left;
    private readonly Term? _right;
    private readonly string _symbol;
    private readonly Unit _unit;

    // Which case of each operand gives the lowest and the highest result.
    private readonly (End Left, End Right) _lowFrom;
    private readonly (End Left, End Right) _highFrom;

    private Term(string symbol, Unit unit, Interval value)
    {
        (_operation, _symbol, _unit, Low, Nominal, High) = (Operation.Leaf, symbol, unit, value.Low, value.Nominal, value.High);
        (_lowFrom, _highFrom) = ((End.Low, End.Low), (End.High, End.High));
    }

    private Term(Operation operation, Term left, Term? right, string symbol = "", Func<double, double>? function = null)
    {
        (_operation, _left, _right, _symbol) = (operation, left, right, symbol);
        Nominal = Of(End.Nominal, End.Nominal);
        (Low, High) = (Nominal, Nominal);
        (_lowFrom, _highFrom) = ((End.Nominal, End.Nominal), (End.Nominal, End.Nominal));
        ReadOnlySpan<End> ends = [End.Low, End.High];
        foreach (var one in ends)
        {
            foreach (var other in right is null ? ends[..1] : ends)
            {
                var corner = Of(one, other);
                if (!(corner >= Low))
                    (Low, _lowFrom) = (corner, (one, other));
                if (!(corner <= High))
                    (High, _highFrom) = (corner, (one, other));
            }
        }

        // A divisor that may be zero, or a root of what may be negative, leaves no finite case to stand on.
        if ((operation is Operation.Quotient && right is { Low: <= 0, High: >= 0 }) || !double.IsFinite(Low) || !double.IsFinite(High) || !double.IsFinite(Nominal))
            (Low, Nominal, High) = (double.NaN, double.NaN, double.NaN);

        double Of(End one, End other) => function is null ? Apply(operation, left.Value(one), right?.Value(other) ?? 0) : function(left.Value(one));
    }

    private enum Operation
    {
        Leaf,
        Sum,
        Difference,
        Product,
        Quotient,
        Square,
        SquareRoot,
        Logarithm,
        AtLeastZero,
        PowerOfTwo,
        Function,
    }

    /// <summary>The lowest case, or NaN where there is none.</summary>
    public double Low { get; }

    /// <summary>The value, or NaN where there is none.</summary>
    public double Nominal { get; }

    /// <summary>The highest case, or NaN where there is none.</summary>
    public double High { get; }

    /// <summary>The three cases, or null when the sum has no finite result: a divisor that may be zero, a number too large.</summary>
    public Interval? Interval => Quantities.Interval.TryCreate(Low, Nominal, High);

    /// <summary>A quantity with a symbol.</summary>
    public static Term Of(string symbol, Unit unit, Interval value)
    {
        ArgumentException.ThrowIfNullOrEmpty(symbol);
        return new Term(symbol, unit, value);
    }

    /// <summary>A plain number of the formula itself.</summary>
    public static Term Number(double value) => new("", Unit.Ratio, Quantities.Interval.Exactly(value));

    /// <summary>A fixed quantity of the formula itself, such as 25 °C; written with its unit in symbols too.</summary>
    public static Term Fixed(double value, Unit unit) => new("", unit, Quantities.Interval.Exactly(value));

    /// <summary>The sum.</summary>
    public static Term operator +(Term left, Term right) => new(Operation.Sum, left, right);

    /// <summary>The difference.</summary>
    public static Term operator -(Term left, Term right) => new(Operation.Difference, left, right);

    /// <summary>The product.</summary>
    public static Term operator *(Term left, Term right) => new(Operation.Product, left, right);

    /// <summary>The quotient; without a finite case when the divisor may be zero.</summary>
    public static Term operator /(Term left, Term right) => new(Operation.Quotient, left, right);

    /// <summary>The square of a quantity that is not negative.</summary>
    public static Term Square(Term of) => new(Operation.Square, of, null);

    /// <summary>The square root.</summary>
    public static Term SquareRoot(Term of) => new(Operation.SquareRoot, of, null);

    /// <summary>The natural logarithm.</summary>
    public static Term Logarithm(Term of) => new(Operation.Logarithm, of, null);

    /// <summary>The quantity, or zero where it is below.</summary>
    public static Term AtLeastZero(Term of) => new(Operation.AtLeastZero, of, null);

    /// <summary>Two to the power of the quantity.</summary>
    public static Term PowerOfTwo(Term of) => new(Operation.PowerOfTwo, of, null);

    /// <summary>A function that has no formula, written by its name; it must rise or fall all the way. A note says what it is.</summary>
    public static Term Function(string name, Func<double, double> function, Term of)
    {
        ArgumentException.ThrowIfNullOrEmpty(name);
        ArgumentNullException.ThrowIfNull(function);
        return new Term(Operation.Function, of, null, name, function);
    }

    /// <summary>One case.</summary>
    public double Value(End end) => end switch
    {
        End.Low => Low,
        End.High => High,
        _ => Nominal,
    };

    /// <summary>The sum in symbols, such as <c>P / (η · V_min)</c>.</summary>
    public string InSymbols()
    {
        var text = new StringBuilder();
        Write(text, null);
        return text.ToString();
    }

    /// <summary>The sum in the numbers that give one of its cases, such as <c>600 W / (0.88 × 22 V)</c>.</summary>
    public string InNumbers(End end)
    {
        var text = new StringBuilder();
        Write(text, end);
        return text.ToString();
    }

    /// <summary>Says of each named quantity in the sum which of its cases one case of the sum rests on.</summary>
    internal void Trace(End end, Action<Term, End> found)
    {
        if (_left is null)
        {
            found(this, end);
            return;
        }

        var (left, right) = From(end);
        _left.Trace(left, found);
        _right?.Trace(right, found);
    }

    private static double Apply(Operation operation, double left, double right) => operation switch
    {
        Operation.Sum => left + right,
        Operation.Difference => left - right,
        Operation.Product => left * right,
        Operation.Quotient => left / right,
        Operation.Square => left >= 0 ? left * left : double.NaN,
        Operation.SquareRoot => Math.Sqrt(left),
        Operation.Logarithm => Math.Log(left),
        Operation.AtLeastZero => Math.Max(0, left),
        Operation.PowerOfTwo => Math.Pow(2, left),
        _ => left,
    };

    private (End Left, End Right) From(End end) => end switch
    {
        End.Low => _lowFrom,
        End.High => _highFrom,
        _ => (End.Nominal, End.Nominal),
    };

    // How tightly it holds together when it stands within another sum.
    private int Binding => _operation switch
    {
        Operation.Sum or Operation.Difference => 1,
        Operation.Product => 2,
        Operation.Quotient => 2,
        _ => 3,
    };

    private void Write(StringBuilder text, End? end)
    {
        var (left, right) = end is { } given ? From(given) : default;
        switch (_operation)
        {
            case Operation.Leaf:
                text.Append(end is { } at ? Written(Value(at)) : _symbol.Length > 0 ? _symbol : Written(Nominal));
                break;
            case Operation.Sum:
                Pair(" + ", 1, 1);
                break;
            case Operation.Difference:
                Pair(" \u2212 ", 1, 2);
                break;
            case Operation.Product:
                Pair(end is null ? " · " : " × ", 2, 2);
                break;
            case Operation.Quotient:
                Pair(" / ", 2, 3);
                break;
            case Operation.Square:
                Inside(_left!, text, 3, end is null ? null : left);
                text.Append('²');
                break;
            case Operation.SquareRoot:
                Called("√");
                break;
            case Operation.Logarithm:
                Called("ln ");
                break;
            case Operation.PowerOfTwo:
                Called("2^");
                break;
            case Operation.Function:
                Called(_symbol);
                break;
            default:
                text.Append("max(0, ");
                _left!.Write(text, end is null ? null : left);
                text.Append(')');
                break;
        }

        void Pair(string sign, int leftBinding, int rightBinding)
        {
            Inside(_left!, text, leftBinding, end is null ? null : left);
            text.Append(sign);
            Inside(_right!, text, rightBinding, end is null ? null : right);
        }

        void Called(string name)
        {
            text.Append(name).Append('(');
            _left!.Write(text, end is null ? null : left);
            text.Append(')');
        }
    }

    private static void Inside(Term term, StringBuilder text, int binding, End? end)
    {
        var apart = term.Binding < binding;
        if (apart)
            text.Append('(');
        term.Write(text, end);
        if (apart)
            text.Append(')');
    }

    private string Written(double value) =>
        !double.IsFinite(value) ? value.ToString(CultureInfo.InvariantCulture) : _unit is Unit.Ratio ? QuantityText.Number(value) : QuantityText.Of(value, _unit);
}
