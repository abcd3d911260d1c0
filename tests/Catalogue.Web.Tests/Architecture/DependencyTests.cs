using System.Reflection;
using Catalogue.Data;
using Catalogue.Media.Photos;
using Catalogue.Web.Hosting;

namespace Catalogue.Web.Tests.Architecture;

/// <summary>Dependencies point one way.</summary>
public sealed class DependencyTests
{
    private static readonly Assembly Domain = typeof(Domain.ITypedId<>).Assembly;
    private static readonly Assembly Data = typeof(CatalogueContext).Assembly;
    private static readonly Assembly Media = typeof(PhotoIntake).Assembly;

    [Fact]
    public void Domain_StandsOnTheBaseLibraryAlone()
    {
        var references = References(Domain);

        Assert.Contains("System.Runtime", references);
        Assert.All(references, name => Assert.True(name is "netstandard" or "mscorlib" || name.StartsWith("System.", StringComparison.Ordinal), $"The domain refers to {name}."));
        Assert.DoesNotContain("System.Net.Http", references);
        Assert.DoesNotContain("System.Data.Common", references);
    }

    [Fact]
    public void DataAndMedia_NeverSeeEachOther()
    {
        Assert.Contains("Catalogue.Domain", References(Data));
        Assert.Contains("SixLabors.ImageSharp", References(Media));
        Assert.DoesNotContain("Catalogue.Media", References(Data));
        Assert.DoesNotContain("Catalogue.Data", References(Media));
    }

    [Theory]
    [InlineData("Catalogue.Site", "Catalogue.Lab", "MudBlazor")]
    [InlineData("Catalogue.Lab", "Catalogue.Site", "SixLabors.ImageSharp")]
    public void SiteAndLab_StandApart(string project, params string[] forbidden)
    {
        var references = References(Assembly.Load(project));

        Assert.Contains("Catalogue.Data", references);
        Assert.All(forbidden, name => Assert.DoesNotContain(name, references));
    }

    [Fact]
    public void OnlyMedia_KnowsThePictureLibrary()
    {
        Assert.Contains("SixLabors.ImageSharp", References(Media));
        foreach (var assembly in new[] { Domain, Data, typeof(CatalogueHost).Assembly, Assembly.Load("Catalogue.Site"), Assembly.Load("Catalogue.Lab") })
            Assert.DoesNotContain("SixLabors.ImageSharp", References(assembly));
    }

    private static List<string> References(Assembly assembly) => [.. assembly.GetReferencedAssemblies().Select(reference => reference.Name!)];
}
