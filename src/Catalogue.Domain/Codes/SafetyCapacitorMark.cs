using System.Text.RegularExpressions;
using Catalogue.Domain.Quantities;

namespace Catalogue.Domain.Codes;

/// <summary>The class, ac voltage and capacitance on a capacitor for mains, such as <c>X2 275V~ 0.47uF</c>.</summary>
/// <remarks>
/// X across the line, Y across insulation; Y replaces X of at least the same rating, never the reverse. A part that carries both classes
/// (<c>X1/Y2</c>) has both. Source: IEC 60384-14. A reading of a marking, not a proof that the part is approved.
/// </remarks>
/// <param name="Classes">Each of <c>X1 X2 X3 Y1 Y2 Y3 Y4</c>, once, in written order; at least one.</param>
/// <param name="RatedVoltages">In volt, ac unless marked otherwise; empty where not marked. A part with two classes may carry two.</param>
/// <param name="Capacitance">In farad with its tolerance; null where not marked or not certain.</param>
public sealed partial record SafetyCapacitorMark(IReadOnlyList<string> Classes, IReadOnlyList<Quantity> RatedVoltages, Quantity? Capacitance)
{
    /// <summary>The mark, or null where no class stands in the text.</summary>
    public static SafetyCapacitorMark? Decode(string text)
    {
        ArgumentNullException.ThrowIfNull(text);
        if (text.Length > QuantityParser.MaxLength || ClassesIn(text) is not { Count: > 0 } classes)
            return null;
        var quantities = QuantityParser.Read(text, PartKind.Capacitor) is QuantityReading.Read read ? read.Quantities : [];
        return new SafetyCapacitorMark(
            classes,
            [.. quantities.Where(found => found.Quantity.Unit is Unit.Volt).Select(found => found.Quantity.Current is CurrentKind.NotSaid ? found.Quantity with { Current = CurrentKind.Alternating } : found.Quantity)],
            quantities.Where(found => found.Quantity.Unit is Unit.Farad).Select(found => (Quantity?)found.Quantity).FirstOrDefault());
    }

    /// <summary>The classes that stand in a text as words of their own.</summary>
    internal static IReadOnlyList<string> ClassesIn(string text) => [.. ClassWord().Matches(text).Select(match => match.Value).Distinct()];

    [GeneratedRegex(@"(?<![A-Za-z0-9])(?:X[123]|Y[1234])(?![A-Za-z0-9])|(?<=X[12])Y[1234](?![A-Za-z0-9])|(?<![A-Za-z0-9])X[12](?=Y[1234])", RegexOptions.CultureInvariant)]
    private static partial Regex ClassWord();
}
