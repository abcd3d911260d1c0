using Catalogue.Domain.Quantities;

namespace Catalogue.Domain.Components.Lists;

/// <summary>What a part line says of the part's value and ratings, read as quantities.</summary>
/// <remarks>
/// The first designator decides what kind of part it is, else the class that the line suggests; of a part whose kind is not said nothing is read. What may be read in
/// two ways, what has no place among the ratings (a dielectric, the voltage of a zener or varistor, a coil's resistance) and what cannot be (a negative rating)
/// is read for show and never becomes a rating. House rule.
/// </remarks>
/// <param name="Kind">What kind of part it was taken for.</param>
/// <param name="Reading">The value and what stood beside it.</param>
/// <param name="Ratings">What becomes ratings, the value first; each kind and condition once.</param>
public sealed record RowValue(PartKind Kind, ComponentValue Reading, IReadOnlyList<ListedRating> Ratings)
{
    private const string CurrentNotSaid = "saturation or rms, the list does not say which";

    private static readonly ComponentValue Nothing = new(null, [], [], [], IsFromDescription: false);

    /// <summary>Reads a line.</summary>
    public static RowValue Of(ListRow row)
    {
        ArgumentNullException.ThrowIfNull(row);
        var kind = PartKindOf.Designator(row.Designators.Count > 0 ? row.Designators[0] : null);
        if (kind is PartKind.NotSaid && DesignatorClass.Suggest(row.Designators, row.Description) is { } suggested)
            kind = PartKindOf.Class(suggested);
        if (kind is PartKind.NotSaid)
            return new RowValue(kind, Nothing, []);
        var reading = ComponentValue.Read(row.Value, kind, row.Description);
        var ratings = new List<ListedRating>();
        if (MainKind(kind) is { } main && reading.Value is { } value)
            Add(ratings, main, value, null, reading.IsFromDescription);
        foreach (var extra in reading.Extras)
        {
            if (extra.Quantity is { } quantity && KindOf(kind, extra.Name, quantity.Current) is { } rating)
                Add(ratings, rating, quantity, extra.Condition ?? (extra.Name == "isat_or_irms" ? CurrentNotSaid : null), extra.IsFromDescription);
        }

        return new RowValue(kind, reading, ratings);
    }

    private static void Add(List<ListedRating> ratings, RatingKind kind, Quantity quantity, string? condition, bool isFromDescription)
    {
        if (quantity.Unit != kind.Unit() || quantity.ToInterval() is not { } value || kind.Refuse(value) is not null)
            return;
        var rating = new ListedRating(kind, value, condition, isFromDescription);
        if (!ratings.Exists(rating.IsOfSame))
            ratings.Add(rating);
    }

    private static RatingKind? MainKind(PartKind kind) => kind switch
    {
        PartKind.Resistor or PartKind.Thermistor => RatingKind.Resistance,
        PartKind.Capacitor => RatingKind.Capacitance,
        PartKind.Inductor => RatingKind.Inductance,
        _ => null,
    };

    private static RatingKind? KindOf(PartKind kind, string name, CurrentKind current) => (kind, name) switch
    {
        (PartKind.Capacitor or PartKind.Fuse or PartKind.Resistor, "voltage") => current is CurrentKind.Alternating ? RatingKind.RatedVoltageAc : RatingKind.RatedVoltage,
        (PartKind.Fuse or PartKind.Inductor, "current") or (PartKind.Inductor, "isat_or_irms") => RatingKind.RatedCurrent,
        (PartKind.Resistor or PartKind.Transistor or PartKind.Diode, "power") => RatingKind.RatedPower,
        (PartKind.Transistor, "vds") or (PartKind.Diode, "vr") => RatingKind.RatedVoltage,
        (PartKind.Transistor, "id") or (PartKind.Diode, "if") => RatingKind.RatedCurrent,
        (PartKind.Transistor, "rds_on") => RatingKind.OnResistance,
        (PartKind.Capacitor, "degC") => RatingKind.MaxTemperature,
        _ => null,
    };
}
