using Catalogue.Domain.Figures;
using Catalogue.Domain.Quantities;
using CsCheck;

namespace Catalogue.Domain.Tests.Figures;

public sealed class TermTests
{
    private static readonly Term P = Term.Of("P", Unit.Watt, Interval.Create(590, 600, 610));
    private static readonly Term Eta = Term.Of("η", Unit.Ratio, Interval.Create(0.88, 0.9, 0.92));
    private static readonly Term V = Term.Of("V", Unit.Volt, Interval.Create(20, 22, 24));

    [Fact]
    public void Quotient_OfAProduct_IsWrittenAsItIsComputed()
    {
        var needed = P / (Eta * V);
        Assert.Equal("P / (η · V)", needed.InSymbols());
        Assert.Equal("600\u00A0W / (0.9 × 22\u00A0V)", needed.InNumbers(End.Nominal));
        Assert.Equal("610\u00A0W / (0.88 × 20\u00A0V)", needed.InNumbers(End.High));
        Assert.Equal("590\u00A0W / (0.92 × 24\u00A0V)", needed.InNumbers(End.Low));
        Assert.Equal((590 / (0.92 * 24), 600 / (0.9 * 22), 610 / (0.88 * 20)), (needed.Low, needed.Nominal, needed.High));
    }

    [Fact]
    public void Difference_TakesTheWorstOfEachSide()
    {
        var margin = Term.Number(1) - (V / Term.Of("V_r", Unit.Volt, Interval.Create(30, 32, 32)));
        Assert.Equal("1 \u2212 V / V_r", margin.InSymbols());
        Assert.Equal("1 \u2212 24\u00A0V / 30\u00A0V", margin.InNumbers(End.Low));
        Assert.Equal(1 - (24.0 / 30), margin.Low);
    }

    [Theory]
    [InlineData("2 · (V + V)", "sum")]
    [InlineData("V \u2212 (V \u2212 V)", "difference")]
    [InlineData("V / (V / V)", "quotient")]
    [InlineData("(V + V)²", "square")]
    [InlineData("√(V)", "root")]
    [InlineData("max(0, V \u2212 25\u00A0°C)", "floor")]
    public void InSymbols_NestedSums_HaveTheBracketsTheyNeed(string text, string which) => Assert.Equal(text, which switch
    {
        "sum" => Term.Number(2) * (V + V),
        "difference" => V - (V - V),
        "quotient" => V / (V / V),
        "square" => Term.Square(V + V),
        "root" => Term.SquareRoot(V),
        _ => Term.AtLeastZero(V - Term.Fixed(25, Unit.DegreeCelsius)),
    } is { } term ? term.InSymbols() : "");

    [Fact]
    public void Quotient_DivisorThatMayBeZero_HasNoInterval()
    {
        Assert.Null((P / Term.Of("x", Unit.Ratio, Interval.Create(-1, 1, 2))).Interval);
        Assert.Null((P / Term.Of("x", Unit.Ratio, Interval.Exactly(0))).Interval);
        Assert.Null((P * Term.Of("x", Unit.Ratio, Interval.Exactly(double.MaxValue))).Interval);
        Assert.Null(Term.Logarithm(Term.Of("x", Unit.Ratio, Interval.Exactly(-1))).Interval);
        Assert.Null(((P / Term.Number(0)) + P).Interval);
    }

    [Fact]
    public void Operations_AnyPointOfTheOperands_LiesWithin() =>
        Gen.Select(Gen.Double[-10, 10].Array[6], Gen.Double[0, 1].Array[2], Gen.Int[0, 3]).Sample((ends, at, which) =>
        {
            var (a, b) = (Sorted(ends[..3]), Sorted(ends[3..]));
            var whole = Combine(Term.Of("a", Unit.Ratio, a), Term.Of("b", Unit.Ratio, b), which);
            if (whole.Interval is not { } interval)
                return;
            var point = Combine(At(a, at[0]), At(b, at[1]), which).Nominal;
            Assert.InRange(point, interval.Low - (1e-9 * Math.Abs(interval.Low)) - 1e-12, interval.High + (1e-9 * Math.Abs(interval.High)) + 1e-12);
        });

    private static Term Combine(Term a, Term b, int which) => which switch
    {
        0 => a + b,
        1 => a - b,
        2 => a * b,
        _ => a / b,
    };

    private static Interval Sorted(double[] ends) => ends.Order().ToArray() is var sorted ? Interval.Create(sorted[0], sorted[1], sorted[2]) : default;

    private static Term At(Interval interval, double at) => Term.Of("x", Unit.Ratio, Interval.Exactly(Math.Clamp(interval.Low + (at * (interval.High - interval.Low)), interval.Low, interval.High)));
}
