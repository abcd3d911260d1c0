using System.Reflection;
using Catalogue.Data;
using Catalogue.Media.Photos;
using Catalogue.Web.Hosting;

namespace Catalogue.Web.Tests.Architecture;

/// <summary>How types are named and where they stand.</summary>
public sealed class NameTests
{
    private static readonly Assembly[] Own =
    [
        typeof(Domain.ITypedId<>).Assembly, typeof(CatalogueContext).Assembly, typeof(PhotoIntake).Assembly, typeof(CatalogueHost).Assembly, Assembly.Load("Catalogue.Site"), Assembly.Load("Catalogue.Lab"),
    ];

    private static readonly string[] EmptyWords = ["Service", "Manager", "Helper", "Helpers", "Utils", "Base", "Info", "Dto", "Vm"];

    [Fact]
    public void Types_HaveNoEmptyWordInTheirName()
    {
        var types = Types();

        Assert.True(types.Count > 150, $"Only {types.Count} types were looked at.");
        Assert.Empty(types.Where(type => EmptyWords.Any(word => type.Name.Split('`')[0].EndsWith(word, StringComparison.Ordinal))).Select(type => type.FullName));
    }

    [Fact]
    public void Classes_AreSealedUnlessTheyAreThereToBeDerivedFrom()
    {
        var classes = Types().Where(type => type is { IsClass: true, IsAbstract: false } && !typeof(Microsoft.AspNetCore.Components.IComponent).IsAssignableFrom(type)).ToList();

        Assert.True(classes.Count > 100, $"Only {classes.Count} classes were looked at.");
        Assert.Empty(classes.Where(type => !type.IsSealed).Select(type => type.FullName));
    }

    [Fact]
    public void Queries_HaveTheirNameAndKeepNoState()
    {
        var queries = Types().Where(type => type.Namespace?.StartsWith("Catalogue.Data", StringComparison.Ordinal) == true && type.Name.EndsWith("Query", StringComparison.Ordinal)).ToList();

        Assert.True(queries.Count >= 8, $"Only {queries.Count} queries were found.");
        Assert.Empty(queries.Where(type => type.GetFields(BindingFlags.Instance | BindingFlags.NonPublic).Any(field => !field.IsInitOnly && !field.Name.Contains('<', StringComparison.Ordinal))).Select(type => type.FullName));
    }

    [Fact]
    public void Folders_AreTheNamespaces()
    {
        var root = Root();
        var files = Directory.EnumerateFiles(Path.Combine(root, "src"), "*.cs", SearchOption.AllDirectories)
            .Where(file => !file.Contains("/obj/", StringComparison.Ordinal) && !file.Contains("/bin/", StringComparison.Ordinal) && !file.Contains("/node_modules/", StringComparison.Ordinal) && !file.Contains("/Migrations/", StringComparison.Ordinal))
            .ToList();

        Assert.True(files.Count > 150, $"Only {files.Count} files were looked at.");
        foreach (var file in files)
        {
            var declared = File.ReadLines(file).FirstOrDefault(line => line.StartsWith("namespace ", StringComparison.Ordinal));
            if (declared is null)
                continue;
            var folder = Path.GetRelativePath(Path.Combine(root, "src"), Path.GetDirectoryName(file)!).Replace('/', '.');
            Assert.Equal($"namespace {folder};", declared.Trim());
        }
    }

    [Fact]
    public void Projects_AreTheOnesOfTheTree()
    {
        var projects = Directory.EnumerateDirectories(Path.Combine(Root(), "src")).Select(Path.GetFileName).Order(StringComparer.Ordinal);

        Assert.Equal(["Catalogue.Data", "Catalogue.Domain", "Catalogue.Lab", "Catalogue.Media", "Catalogue.Site", "Catalogue.Web"], projects);
    }

    private static List<Type> Types() =>
        [.. Own.SelectMany(assembly => assembly.GetTypes()).Where(type => type.Namespace?.StartsWith("Catalogue.", StringComparison.Ordinal) == true && !type.Name.Contains('<', StringComparison.Ordinal) && !type.IsNested && type.Name != "_Imports" && !type.Namespace.EndsWith(".Migrations", StringComparison.Ordinal))];

    private static string Root()
    {
        var folder = new DirectoryInfo(AppContext.BaseDirectory);
        while (!File.Exists(Path.Combine(folder.FullName, "Catalogue.sln")))
            folder = folder.Parent ?? throw new InvalidOperationException("The project's root was not found above the tests.");
        return folder.FullName;
    }
}
