namespace Catalogue.Web.Tests.Demo;

/// <summary>The tests that read the planted demo: it is planted once for all of them.</summary>
[CollectionDefinition]
public sealed class PlantedDemoCollection : ICollectionFixture<PlantedDemo>;
