namespace Catalogue.Journeys.Tests;

/// <summary>Journeys share one site and run one after the other.</summary>
[CollectionDefinition(Name)]
public sealed class JourneyCollection : ICollectionFixture<JourneyFixture>
{
    /// <summary>The name tests give.</summary>
    public const string Name = "journeys";
}
