using Catalogue.Data.Figures;
using Catalogue.Domain.BenchLogs;
using Catalogue.Domain.Callouts;
using Catalogue.Domain.Components;
using Catalogue.Domain.Consistency;
using Catalogue.Domain.Families;
using Catalogue.Domain.Figures;
using Catalogue.Domain.Findings;
using Catalogue.Domain.Isolation;
using Catalogue.Domain.Photos;
using Catalogue.Domain.Products;
using Catalogue.Domain.Publishing;
using Catalogue.Domain.Rails;
using Catalogue.Domain.Teardowns;

namespace Catalogue.Data.Teardowns;

/// <summary>One revision of a teardown with all that its page shows. Lists are in the order they are printed in; nothing here is tracked.</summary>
public sealed record TeardownRecord
{
    /// <summary>The teardown's address.</summary>
    public required string Slug { get; init; }

    /// <summary>The teardown's id.</summary>
    public required TeardownId Id { get; init; }

    /// <summary>Its running number in the lab.</summary>
    public required int Number { get; init; }

    /// <summary>The revision.</summary>
    public required Revision Revision { get; init; }

    /// <summary>Boards by position.</summary>
    public required IReadOnlyList<Board> Boards { get; init; }

    /// <summary>Components by board and position.</summary>
    public required IReadOnlyList<BoardComponent> Components { get; init; }

    /// <summary>Ratings in the order they were given.</summary>
    public required IReadOnlyList<Rating> Ratings { get; init; }

    /// <summary>Rails by position.</summary>
    public required IReadOnlyList<Rail> Rails { get; init; }

    /// <summary>What is known of the rails.</summary>
    public required IReadOnlyList<RailQuantity> RailQuantities { get; init; }

    /// <summary>Discharge readings in the order they were recorded.</summary>
    public required IReadOnlyList<DischargeReading> DischargeReadings { get; init; }

    /// <summary>Measured paths across an insulation, by position.</summary>
    public required IReadOnlyList<MeasuredPath> IsolationPaths { get; init; }

    /// <summary>Photos by position.</summary>
    public required IReadOnlyList<Photo> Photos { get; init; }

    /// <summary>Callouts by number.</summary>
    public required IReadOnlyList<Callout> Callouts { get; init; }

    /// <summary>Ports by position.</summary>
    public required IReadOnlyList<Port> Ports { get; init; }

    /// <summary>Claims by position.</summary>
    public required IReadOnlyList<Claim> Claims { get; init; }

    /// <summary>Bench tests by position.</summary>
    public required IReadOnlyList<BenchTest> Tests { get; init; }

    /// <summary>Steps by position.</summary>
    public required IReadOnlyList<Step> Steps { get; init; }

    /// <summary>Findings by position.</summary>
    public required IReadOnlyList<Finding> Findings { get; init; }

    /// <summary>Figures as this revision printed them.</summary>
    public required IReadOnlyList<Figure> Figures { get; init; }

    /// <summary>Figures as the rules stand now; only of a published revision, else empty.</summary>
    public required IReadOnlyList<CurrentFigure> CurrentFigures { get; init; }

    /// <summary>The families that components point to, by the link they were saved with.</summary>
    public required IReadOnlyDictionary<FamilyId, FamilyName> Families { get; init; }

    /// <summary>The families that components of a published revision count to by now, where a split moved them.</summary>
    public IReadOnlyDictionary<ComponentId, FamilyName> MovedFamilies { get; init; } = new Dictionary<ComponentId, FamilyName>();

    /// <summary>The family that each identified component counts to now, after merges and splits.</summary>
    public IReadOnlyDictionary<ComponentId, FamilyId> CurrentFamilies { get; init; } = new Dictionary<ComponentId, FamilyId>();

    /// <summary>What other published teardowns say of the ratings of the families that the components count to now.</summary>
    public required IReadOnlyList<ConsistencyFacts.FamilyRating> FamilyRatings { get; init; }

    /// <summary>All publications of the teardown with the number of their revision, newest first.</summary>
    public required IReadOnlyList<PublishedRevision> Publications { get; init; }

    /// <summary>The facts that figures and cautions are computed from.</summary>
    public RevisionFacts Facts => new(Components, Ratings, Rails, RailQuantities) { Ports = Ports, Tests = Tests, IsolationPaths = IsolationPaths, CellChemistry = Revision.CellChemistry };

    /// <summary>What of it does not go together, worst first.</summary>
    public IReadOnlyList<Contradiction> Contradictions => Domain.Consistency.Contradictions.Find(new ConsistencyFacts(Facts, Claims, Tests, Callouts, Figures, FamilyRatings) { CurrentFamilies = CurrentFamilies });

    /// <summary>The family of a component as it was saved, and the one it counts to now where that is another; null while it is not identified.</summary>
    public FamilyName? FamilyOf(BoardComponent component)
    {
        ArgumentNullException.ThrowIfNull(component);
        return component.FamilyId is { } id && Families.TryGetValue(id, out var family) ? family with { Now = MovedFamilies.GetValueOrDefault(component.Id) ?? family.Now } : null;
    }

    /// <summary>The name and address of a family.</summary>
    /// <param name="Slug">Its address.</param>
    /// <param name="Name">The base number as first written.</param>
    public sealed record FamilyName(string Slug, string Name)
    {
        /// <summary>The family that it counts to now, after merges and splits, where that is another one.</summary>
        public FamilyName? Now { get; init; }

        /// <summary>The family it counts to now.</summary>
        public FamilyName Current => Now ?? this;
    }

    /// <summary>A publication.</summary>
    /// <param name="RevisionNumber">The revision's number.</param>
    /// <param name="State">How the revision stands now.</param>
    /// <param name="Publication">The act.</param>
    public sealed record PublishedRevision(int RevisionNumber, RevisionState State, Publication Publication);
}
