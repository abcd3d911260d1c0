using Catalogue.Domain.Quantities;

namespace Catalogue.Domain.Packs;

/// <summary>The typical voltages of one cell of a chemistry. The cell's own sheet always wins.</summary>
/// <remarks>Source: trade knowledge, typical values of cell data sheets; no standard fixes them.</remarks>
/// <param name="Code">A lasting code, such as <c>lfp</c>.</param>
/// <param name="Name">The words a person reads.</param>
/// <param name="Nominal">Nominal voltage of one cell, in volt.</param>
/// <param name="Full">Voltage of one full cell, in volt.</param>
/// <param name="End">Voltage of one cell at the end of discharge, in volt; the nominal case is the one usually taken.</param>
/// <param name="Mark">How well the row is founded.</param>
/// <param name="Note">What to know before using the row, or null.</param>
public sealed record CellChemistry(string Code, string Name, Interval Nominal, Interval Full, Interval End, Confidence Mark, string? Note)
{
    /// <summary>Where the voltages come from, to be shown beside each default.</summary>
    public const string Source = "typical values of the chemistry; the cell's data sheet wins";

    /// <summary>All rows, in the order they are offered.</summary>
    public static IReadOnlyList<CellChemistry> All { get; } =
    [
        new("nmc", "nickel manganese cobalt lithium ion", Volts(3.6, 3.6, 3.7), Volts(4.2), Volts(2.5, 2.5, 3.0), Confidence.Medium, "often printed as 3.7 V"),
        new("nmc37", "nickel manganese cobalt lithium ion, printed 3.7 V", Volts(3.6, 3.7, 3.7), Volts(4.2), Volts(2.5, 3.0, 3.0), Confidence.Medium, null),
        new("nca", "nickel cobalt aluminium lithium ion", Volts(3.6, 3.6, 3.7), Volts(4.2), Volts(2.5, 2.5, 3.0), Confidence.Medium, "often printed as 3.7 V"),
        new("lco", "cobalt lithium ion", Volts(3.7), Volts(4.2), Volts(3.0), Confidence.Medium, "high-voltage grades are rows of their own"),
        new("lco435", "cobalt lithium ion, 4.35 V grade", Volts(3.8, 3.8, 3.85), Volts(4.35), Volts(3.0), Confidence.Medium, null),
        new("lco440", "cobalt lithium ion, 4.40 V grade", Volts(3.8, 3.85, 3.85), Volts(4.4), Volts(3.0), Confidence.Medium, null),
        new("lco445", "cobalt lithium ion, 4.45 V grade", Volts(3.8, 3.85, 3.85), Volts(4.45), Volts(3.0), Confidence.Medium, null),
        new("lmo", "manganese lithium ion", Volts(3.7, 3.7, 3.8), Volts(4.2), Volts(3.0), Confidence.Medium, null),
        new("lfp", "lithium iron phosphate", Volts(3.2), Volts(3.6, 3.65, 3.65), Volts(2.0, 2.5, 2.5), Confidence.Medium, "flat discharge curve: voltage is a poor gauge of charge"),
        new("lto", "lithium titanate", Volts(2.3, 2.3, 2.4), Volts(2.7, 2.8, 2.8), Volts(1.5, 1.5, 1.8), Confidence.Medium, null),
        new("na_ion", "sodium ion", Volts(3.0, 3.05, 3.1), Volts(3.9, 3.95, 4.0), Volts(1.5, 1.75, 2.0), Confidence.Low, "still moving: the cell's sheet is needed"),
        new("nimh", "nickel metal hydride", Volts(1.2), Volts(1.45), Volts(0.9, 1.0, 1.0), Confidence.Medium, "full: about, under charge"),
        new("pb", "lead acid", Volts(2.0), Volts(2.25, 2.4, 2.4), Volts(1.75), Confidence.Medium, "full: absorption, float is 2.25 to 2.30 V; both depend on temperature"),
    ];

    /// <summary>True when the row may fill in voltages that are not recorded; then its source is shown, and each voltage can be changed.</summary>
    public bool MayBeDefault => Mark is not Confidence.Low;

    /// <summary>The row of a code, or null. Case counts.</summary>
    public static CellChemistry? Find(string? code) => All.FirstOrDefault(row => row.Code == code);

    private static Interval Volts(double value) => Interval.Exactly(value);

    private static Interval Volts(double low, double nominal, double high) => Interval.Create(low, nominal, high);
}
