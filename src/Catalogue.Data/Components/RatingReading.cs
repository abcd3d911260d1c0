using Catalogue.Data.Teardowns;
using Catalogue.Domain.Components;
using Catalogue.Domain.Quantities;
using Catalogue.Domain.Text;

namespace Catalogue.Data.Components;

/// <summary>A rating as a form gives it, read and checked.</summary>
internal readonly record struct RatingReading(RatingKind Kind, Interval Value, string? Condition, Evidence Evidence, string? Source)
{
    /// <summary>Reads a form; gives the refusal, or null when it was read.</summary>
    public static Refusal? Of(RatingForm form, out RatingReading reading)
    {
        reading = default;
        var check = new FormCheck();
        var condition = check.May(form.Condition, "condition", 400);
        var source = check.May(form.Source, "source", 400);
        if (check.Refusal is { } refusal)
            return refusal;
        if (form.Kind is not { } kind)
            return new Refusal("kind", $"kind is one of {string.Join(", ", SnakeCase.All<RatingKind>())}.");
        if (Read(form, kind, out var value) is { } unread)
            return unread;
        if (kind.Refuse(value) is { } reason)
            return new Refusal("nominal", reason);
        reading = new RatingReading(kind, value, condition, form.Evidence ?? Evidence.Guess, source);
        return null;
    }

    private static Refusal? Read(RatingForm form, RatingKind kind, out Interval value)
    {
        value = default;
        var nominal = form.Nominal;
        // A text that came with a patch is newer than the number that stood before.
        var typed = PlainText.Clean(form.Text);
        if (typed is not null)
        {
            switch (QuantityParser.ReadOne(typed, kind.Unit()))
            {
                case QuantityReading.Refused refused:
                    return new Refusal("text", refused.Reason);
                case QuantityReading.Ambiguous ambiguous:
                    return new Refusal("text", ambiguous.Ask(typed));
                case QuantityReading.Read { Quantities: [{ Quantity: var read }] } when read.Unit != kind.Unit():
                    return new Refusal("text", $"{kind.Word()} is in {kind.Unit().Code()}; “{typed}” is in {read.Unit.Code()}.");
                case QuantityReading.Read { Quantities: [{ Quantity: var read }] } when read.ToInterval() is { } interval:
                    value = interval;
                    return null;
                default:
                    throw new InvalidOperationException("One reading has one quantity with a value.");
            }
        }

        if (nominal is not { } given)
            return new Refusal("nominal", "Give the quantity as text, such as “35 A”, or as nominal in the unit of its kind.");
        if (form.Unit is { Length: > 0 } unit && UnitSymbols.Find(unit) != kind.Unit())
            return new Refusal("unit", $"{kind.Word()} is in {kind.Unit().Code()}; the unit given was “{unit}”.");
        if (Interval.TryCreate(form.Low ?? given, given, form.High ?? given) is not { } cases)
            return new Refusal("nominal", "low, nominal and high are finite numbers in that order.");
        value = cases;
        return null;
    }
}
