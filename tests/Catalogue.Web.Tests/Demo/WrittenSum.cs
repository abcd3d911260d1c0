using System.Globalization;

namespace Catalogue.Web.Tests.Demo;

/// <summary>
/// Works out a sum as it is written on a page, without any code of the program: + − × · ÷ * / ^ √ parentheses, π, ln exp min max.
/// Powers bind first and from the right, then products and quotients from the left, then sums.
/// </summary>
internal sealed class WrittenSum
{
    private readonly string _text;
    private int _at;

    private WrittenSum(string text) => _text = text;

    /// <summary>The value of a sum.</summary>
    /// <exception cref="FormatException">It is not a whole sum: an unknown word, an open parenthesis, something left over.</exception>
    public static double Of(string text)
    {
        var sum = new WrittenSum(text);
        var value = sum.Sum();
        sum.SkipSpace();
        return sum._at == text.Length ? value : throw sum.Unreadable();
    }

    private double Sum()
    {
        var value = Product();
        while (true)
        {
            if (Take('+'))
                value += Product();
            else if (Take('-') || Take('−'))
                value -= Product();
            else
                return value;
        }
    }

    private double Product()
    {
        var value = Signed();
        while (true)
        {
            if (Take('×') || Take('·') || Take('*'))
                value *= Signed();
            else if (Take('÷') || Take('/'))
                value /= Signed();
            else
                return value;
        }
    }

    private double Signed() => Take('-') || Take('−') ? -Signed() : Power();

    private double Power()
    {
        var value = Operand();
        return Take('^') ? Math.Pow(value, Signed()) : value;
    }

    private double Operand()
    {
        SkipSpace();
        if (Take('√'))
            return Math.Sqrt(Operand());
        if (Take('π'))
            return Math.PI;
        if (Take('('))
            return Closed(Sum());
        var from = _at;
        while (_at < _text.Length && char.IsAsciiLetterLower(_text[_at]))
            _at++;
        return _at > from ? Called(_text[from.._at]) : Number();
    }

    private double Called(string name)
    {
        if (!Take('('))
            throw Unreadable();
        var first = Sum();
        return name switch
        {
            "ln" => Closed(Math.Log(first)),
            "exp" => Closed(Math.Exp(first)),
            "min" => Math.Min(first, Second()),
            "max" => Math.Max(first, Second()),
            _ => throw Unreadable(),
        };

        double Second() => Take(',') ? Closed(Sum()) : throw Unreadable();
    }

    private double Closed(double value) => Take(')') ? value : throw Unreadable();

    private double Number()
    {
        var from = _at;
        while (_at < _text.Length && (char.IsAsciiDigit(_text[_at]) || _text[_at] == '.'))
            _at++;
        return double.TryParse(_text.AsSpan(from, _at - from), NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out var value) ? value : throw Unreadable();
    }

    private bool Take(char sign)
    {
        SkipSpace();
        if (_at >= _text.Length || _text[_at] != sign)
            return false;
        _at++;
        return true;
    }

    private void SkipSpace()
    {
        while (_at < _text.Length && _text[_at] == ' ')
            _at++;
    }

    private FormatException Unreadable() => new(string.Create(CultureInfo.InvariantCulture, $"“{_text}” cannot be worked out from character {_at + 1} on."));
}
