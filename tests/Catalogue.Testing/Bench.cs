using Catalogue.Data.Components;
using Catalogue.Data.Publishing;
using Catalogue.Data.Rails;
using Catalogue.Data.Teardowns;
using Catalogue.Domain.Components;
using Catalogue.Domain.Products;
using Catalogue.Domain.Quantities;
using Catalogue.Domain.Rails;
using Catalogue.Domain.Teardowns;

namespace Catalogue.Testing;

/// <summary>A reviewer with quick hands: records what a test needs, and fails the test where a change is refused.</summary>
/// <param name="database">The database worked on.</param>
public sealed class Bench(CatalogueDatabaseFixture database)
{
    /// <summary>Who records.</summary>
    public static Editor Reviewer { get; } = new("I. Sorrel");

    /// <summary>Opens a teardown.</summary>
    public async Task<CreateTeardown.Created> TeardownAsync(string brand = "Ferrowick", string name = "Tor 600", ProductCategory category = ProductCategory.PowerStation) =>
        Done(await database.Get<CreateTeardown>().RunAsync(new CreateTeardown.Request(brand, name, name.ToUpperInvariant(), category, $"{brand} {name}"), Reviewer));

    /// <summary>Adds a board.</summary>
    public async Task<BoardId> BoardAsync(TeardownId teardown, string name = "Main power board") =>
        Done(await database.Get<BoardChanges>().AddAsync(teardown, new BoardForm { Name = name }, Reviewer));

    /// <summary>Adds a component.</summary>
    public async Task<ComponentId> ComponentAsync(BoardId board, ComponentForm form) => Done(await database.Get<ComponentChanges>().AddAsync(board, form, Reviewer));

    /// <summary>Adds a rail of a pack: lowest voltage, power and efficiency.</summary>
    public async Task<RailId> PackAsync(TeardownId teardown, double minVolts, double watts, double efficiency) =>
        Done(await database.Get<RailChanges>().AddAsync(
            teardown,
            new RailForm { Name = "Pack", Kind = RailKind.Pack, MinVoltageV = Measured(minVolts), MaxPowerW = Measured(watts), Efficiency = Measured(efficiency) },
            Reviewer));

    /// <summary>Adds a blade fuse of so many ampere in a rail, with its rating; temperature known to be 25 °C.</summary>
    public async Task<ComponentId> FuseAsync(BoardId board, RailId? rail, double ampere, string designator = "F1")
    {
        var fuse = await ComponentAsync(board, new ComponentForm { Role = "pack fuse", Designators = designator, FunctionClass = FunctionClass.BladeFuse, RailId = rail?.Value });
        await RatingAsync(fuse, RatingKind.RatedCurrent, ampere);
        await RatingAsync(fuse, RatingKind.AmbientTemperature, 25);
        return fuse;
    }

    /// <summary>Adds a rating that was read on the part.</summary>
    public async Task<RatingId> RatingAsync(ComponentId component, RatingKind kind, double value) =>
        Done(await database.Get<RatingChanges>().AddAsync(component, new RatingForm { Kind = kind, Nominal = value, Evidence = Evidence.ReadOnPart, Source = "photo 3" }, Reviewer));

    /// <summary>Publishes the draft.</summary>
    public async Task<PublishTeardown.Published> PublishAsync(string slug, string? note = "As measured.") =>
        Done(await database.Get<PublishTeardown>().RunAsync(slug, note, Reviewer));

    /// <summary>A measured quantity.</summary>
    public static GivenQuantity Measured(double value) => new() { Nominal = value, Evidence = Evidence.Measured, Source = "test 2" };

    /// <summary>The value of a change that was done.</summary>
    public static T Done<T>(ChangeOutcome<T> outcome) =>
        outcome is ChangeOutcome<T>.Done done ? done.Value : throw new InvalidOperationException($"The change was not done: {outcome}");
}
