using Catalogue.Domain.Components;
using Catalogue.Domain.Figures;
using Catalogue.Domain.Quantities;
using Catalogue.Domain.Rails;
using Catalogue.Domain.Teardowns;

namespace Catalogue.Domain.Tests.Figures;

/// <summary>Small facts for figures: a part on a rail with its ratings.</summary>
public static class Bench
{
    private static readonly RevisionId Revision = RevisionId.New();

    public static (Rail Rail, List<RailQuantity> Known) Rail(double? max = null, double? nominal = null, double? min = null, bool mains = false, RailKind kind = RailKind.DcBus)
    {
        var rail = new Rail { RevisionId = Revision, Id = RailId.New(), Name = "bus", Kind = mains ? RailKind.Mains : kind };
        var known = new List<RailQuantity>();
        Known(RailQuantityKind.MaxVoltage, max);
        Known(RailQuantityKind.NominalVoltage, nominal);
        Known(RailQuantityKind.MinVoltage, min);
        return (rail, known);

        void Known(RailQuantityKind quantity, double? value)
        {
            if (value is { } volts)
                known.Add(Quantity(rail, quantity, volts));
        }
    }

    public static RailQuantity Quantity(Rail rail, RailQuantityKind kind, double value) => Quantity(rail, kind, Interval.Exactly(value));

    public static RailQuantity Quantity(Rail rail, RailQuantityKind kind, Interval value) => new()
    {
        RevisionId = Revision,
        Id = RailQuantityId.New(),
        RailId = rail.Id,
        Kind = kind,
        Low = value.Low,
        Nominal = value.Nominal,
        High = value.High,
        Evidence = Evidence.Measured,
    };

    public static Rating Rating(RatingKind kind, double value, string? condition = null) => Rating(kind, Interval.Exactly(value), condition);

    public static Rating Rating(RatingKind kind, Interval value, string? condition = null) => Rating(kind, Evidence.ReadOnPart, value, condition);

    public static Rating Rating(RatingKind kind, Evidence evidence, Interval value, string? condition = null) => new()
    {
        RevisionId = Revision,
        Id = RatingId.New(),
        ComponentId = default,
        Kind = kind,
        Low = value.Low,
        Nominal = value.Nominal,
        High = value.High,
        Condition = condition,
        Evidence = evidence,
    };

    public static RevisionFacts Part(FunctionClass functionClass, (Rail Rail, List<RailQuantity> Known) rail, IEnumerable<Rating> ratings, CircuitPosition? position = null, int parallel = 1, int series = 1)
    {
        var component = new BoardComponent
        {
            RevisionId = Revision,
            Id = ComponentId.New(),
            BoardId = BoardId.New(),
            Designators = "X1",
            FunctionClass = functionClass,
            RailId = rail.Rail.Id,
            CircuitPosition = position,
            ParallelCount = parallel,
            SeriesCount = series,
        };
        return new RevisionFacts([component], [.. ratings.Select(rating => OfPart(rating, component.Id))], [rail.Rail], rail.Known);
    }

    public static FigureResult.Computed Computed(RevisionFacts facts, string rule)
    {
        var figure = Figure(facts, rule);
        Assert.True(figure.Nominal is not null, $"Not computed: {string.Join("; ", figure.Missing.Select(missing => missing.Words))}");
        return new FigureResult.Computed(Interval.Create(figure.Low!.Value, figure.Nominal.Value, figure.High!.Value), figure.Unit, figure.Verdict, figure.StaticOnly, figure.Working);
    }

    public static FigureResult.Unknown Unknown(RevisionFacts facts, string rule)
    {
        var figure = Figure(facts, rule);
        Assert.Equal((null, Verdict.Unknown), (figure.Nominal, figure.Verdict));
        return new FigureResult.Unknown(figure.Missing, figure.Working);
    }

    public static Figure Figure(RevisionFacts facts, string rule) => RevisionFigures.Compute(Revision, facts, LineTable.Default).Single(figure => figure.Rule == rule);

    private static Rating OfPart(Rating rating, ComponentId component) => new()
    {
        RevisionId = rating.RevisionId,
        Id = rating.Id,
        ComponentId = component,
        Kind = rating.Kind,
        Low = rating.Low,
        Nominal = rating.Nominal,
        High = rating.High,
        Condition = rating.Condition,
        Evidence = rating.Evidence,
        Source = rating.Source,
    };
}
