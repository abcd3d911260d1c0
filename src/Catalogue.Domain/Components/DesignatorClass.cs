namespace Catalogue.Domain.Components;

/// <summary>What a reference designator says of a part's function, where the letters leave no doubt.</summary>
/// <remarks>Letters after IEEE 315 and IEC 81346 habits; house rule for which of them are taken as certain enough.</remarks>
public static class DesignatorClass
{
    /// <summary>
    /// The class that all designators of a row agree on, or null. A resettable fuse is told from a plain one by its description; the style of a
    /// plain fuse is never guessed.
    /// </summary>
    public static FunctionClass? Suggest(IReadOnlyList<string> designators, string? description)
    {
        ArgumentNullException.ThrowIfNull(designators);
        FunctionClass? common = null;
        foreach (var designator in designators)
        {
            if (Of(Letters(designator)) is not { } own || (common is { } other && other != own))
                return null;
            common = own;
        }

        return common is FunctionClass.Fuse && description is not null && description.Contains("resettable", StringComparison.OrdinalIgnoreCase)
            ? FunctionClass.ResettableFuse
            : common;
    }

    private static FunctionClass? Of(string letters) => letters switch
    {
        "R" => FunctionClass.Resistor,
        "C" => FunctionClass.Capacitor,
        "L" => FunctionClass.Inductor,
        "F" => FunctionClass.Fuse,
        "RV" or "MOV" or "VAR" => FunctionClass.Varistor,
        "RT" or "NTC" or "TH" => FunctionClass.Thermistor,
        "LED" => FunctionClass.Indicator,
        "J" or "CN" or "USB" => FunctionClass.Connector,
        "BT" => FunctionClass.Cell,
        _ => null,
    };

    private static string Letters(string designator)
    {
        var end = 0;
        while (end < designator.Length && char.IsAsciiLetter(designator[end]))
            end++;
        // "F1" names a fuse; "FAN" or "PWR" names no class by its letters.
        return end < designator.Length && char.IsAsciiDigit(designator[end]) ? designator[..end].ToUpperInvariant() : "";
    }
}
