using Catalogue.Domain.Components;
using Catalogue.Domain.Packs;
using Catalogue.Domain.Quantities;
using Catalogue.Domain.Rails;

namespace Catalogue.Domain.Figures;

/// <summary>What follows for a rail from other facts, where nothing is recorded of it: a pack's from its cells, a port's from what it offers.</summary>
public static class DerivedRails
{
    /// <summary>Typical voltages of one cell.</summary>
    /// <param name="End">At the end of discharge, in volt.</param>
    /// <param name="Nominal">In volt.</param>
    /// <param name="Full">In volt.</param>
    public sealed record CellVoltages(Given End, Given Nominal, Given Full);

    /// <summary>The typical cell of a chemistry as recorded, or null where it is not known or has no typical values to default to.</summary>
    public static CellVoltages? TypicalCell(string? chemistry)
    {
        if (ChemistryWords.Find(chemistry) is not { MayBeDefault: true } row)
            return null;
        var source = $"{row.Name}: {CellChemistry.Source}";
        return new CellVoltages(Typical(row.End), Typical(row.Nominal), Typical(row.Full));

        Given Typical(Interval volts) => new(volts, Evidence.Inferred, source);
    }

    /// <summary>What follows for one rail, each kind at most once, with how it follows as the source.</summary>
    internal static IEnumerable<(RailQuantityKind Kind, Given Given)> For(Rail rail, RevisionFacts facts, ILookup<ComponentId, Rating> ratings)
    {
        if (rail.Kind is RailKind.Pack)
            return OfPack(rail, facts, ratings);
        return rail.PortId is { } id && facts.Ports.FirstOrDefault(port => port.Id == id) is { } found && PortOffer.Of(found) is { } offer ? OfPort(offer) : [];
    }

    private static IEnumerable<(RailQuantityKind Kind, Given Given)> OfPort(PortOffer offer)
    {
        yield return (RailQuantityKind.MinVoltage, Known(offer.MinVolts));
        yield return (RailQuantityKind.MaxVoltage, Known(offer.MaxVolts));
        yield return (RailQuantityKind.MaxCurrent, Known(offer.MaxAmperes));
        yield return (RailQuantityKind.MaxPower, Known(offer.MaxWatts));

        Given Known(double value) => new(Interval.Exactly(value), offer.IsDecoded ? Evidence.Decoded : Evidence.ReadOnPart, offer.How);
    }

    /// <summary>The cells on a pack rail, else the only cells there are; none where they do not agree on how many are in series.</summary>
    internal static IReadOnlyList<BoardComponent> CellsOf(Rail rail, RevisionFacts facts)
    {
        if (rail.Kind is not RailKind.Pack)
            return [];
        var cells = facts.Components.Where(component => component.IsFitted && component.FunctionClass is FunctionClass.Cell).ToList();
        var onRail = cells.Where(component => component.RailId == rail.Id).ToList();
        if (onRail.Count == 0 && cells is [{ RailId: null }] && facts.Rails.Count(other => other.Kind is RailKind.Pack) == 1)
            onRail = cells;
        // Two different strings on one rail would have to agree; which of them rules is the reviewer's to say.
        return onRail.Select(component => component.SeriesCount).Distinct().Count() > 1 ? [] : onRail;
    }

    private static List<(RailQuantityKind Kind, Given Given)> OfPack(Rail rail, RevisionFacts facts, ILookup<ComponentId, Rating> ratings)
    {
        var found = new List<(RailQuantityKind Kind, Given Given)>();
        if (CellsOf(rail, facts) is not [var cell, ..])
            return found;
        var own = new PartFacts(cell, [.. ratings[cell.Id]], null, facts.CellChemistry).Best(RatingKind.CellVoltage);
        if (TypicalCell(facts.CellChemistry) is { } typical)
        {
            Add(RailQuantityKind.MinVoltage, typical.End);
            Add(RailQuantityKind.NominalVoltage, own ?? typical.Nominal);
            Add(RailQuantityKind.MaxVoltage, typical.Full);
        }
        else if (own is not null)
        {
            Add(RailQuantityKind.NominalVoltage, own);
        }

        return found;

        void Add(RailQuantityKind kind, Given one) => found.Add((
            kind,
            new Given(
                one.Interval * Interval.Exactly(cell.SeriesCount),
                Evidence.Inferred,
                $"derived: {cell.SeriesCount} in series × {QuantityText.Of(one.Interval, Unit.Volt)}, {one.Source ?? one.Evidence.Word()}")));
    }
}
