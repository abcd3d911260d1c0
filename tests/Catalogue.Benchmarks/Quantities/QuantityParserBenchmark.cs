using System.Globalization;
using BenchmarkDotNet.Attributes;
using Catalogue.Domain.Quantities;

namespace Catalogue.Benchmarks.Quantities;

/// <summary>What a quantity costs to read from typical texts, beside a bare number.</summary>
public class QuantityParserBenchmark
{
    private const int Quantities = 22;

    private static readonly string[] Texts =
    [
        "4k7", "0R005 1%", "47uF/63V", "2.9mΩ", "2x15A", "5V⎓3A", "100-240V~ 50/60Hz 1.5A", "10kΩ±1%", "20 000 mAh", "3.7V 10000mAh 37Wh", "-20…60 °C", "40V 5.6mR",
        "16.000MHz 20pF ±30ppm",
    ];

    private static readonly string[] Numbers =
        ["4700", "0.005", "47e-6", "63", "0.0029", "15", "5", "3", "100", "240", "50", "60", "1.5", "10000", "20", "3.7", "10", "37", "-20", "60", "40", "0.0056"];

    private readonly FoundQuantity[] _found = new FoundQuantity[32];

    /// <summary>Bare numbers, as many as there are quantities.</summary>
    [Benchmark(Baseline = true, OperationsPerInvoke = Quantities)]
    public double BareNumbers()
    {
        var sum = 0.0;
        foreach (var number in Numbers)
            sum += double.Parse(number, CultureInfo.InvariantCulture);
        return sum;
    }

    /// <summary>Texts as they stand on labels and in lists.</summary>
    [Benchmark(OperationsPerInvoke = Quantities)]
    public int TypicalTexts()
    {
        var count = 0;
        foreach (var text in Texts)
        {
            if (!QuantityParser.TryRead(text, _found, out var read))
                throw new InvalidOperationException($"“{text}” leaves something open.");
            count += read;
        }

        return count == Quantities ? count : throw new InvalidOperationException($"{count} quantities.");
    }
}
