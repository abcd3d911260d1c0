using Catalogue.Domain.Quantities;

namespace Catalogue.Domain.Figures;

/// <summary>The energy that the capacitors across a rail hold at its highest voltage.</summary>
/// <remarks><c>E = C · V² / 2</c>, in joule; C as in <see cref="RailCapacitance"/>, V the rail's highest voltage. Source: physics.</remarks>
public static class StoredEnergy
{
    /// <summary>The rule's code.</summary>
    public const string Rule = "stored_energy";

    /// <summary>Raised whenever the same inputs could give another result.</summary>
    public const int Version = 1;

    /// <summary>True for a rail other than mains that has capacitors across it.</summary>
    public static bool AppliesTo(RailFacts rail)
    {
        ArgumentNullException.ThrowIfNull(rail);
        return !rail.IsMains && RailCapacitance.Of(rail).Any();
    }

    /// <summary>Computes the energy, in joule.</summary>
    public static FigureResult Compute(RailFacts rail)
    {
        ArgumentNullException.ThrowIfNull(rail);
        var sheet = new Sheet();
        var capacitance = RailCapacitance.On(sheet, rail);
        var voltage = sheet.Need(rail.Highest, "V", "highest voltage of the rail", Unit.Volt, "max_voltage", "the rail's highest voltage");
        var energy = sheet.Step("E", "stored energy", Unit.Joule, capacitance * Term.Square(voltage) / Term.Number(2));
        sheet.Line(() => "Held against no line; the cautions say from where on it can hurt.");
        return sheet.Finish(energy, Unit.Joule, FigureLines.None(moreIsBetter: false));
    }
}
