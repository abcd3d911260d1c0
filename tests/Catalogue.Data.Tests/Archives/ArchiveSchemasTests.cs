using System.Text.Json;
using Catalogue.Data.Archives;
using Catalogue.Domain.Teardowns;
using Json.Schema;

namespace Catalogue.Data.Tests.Archives;

public sealed class ArchiveSchemasTests : DatabaseTests
{
    [Fact]
    public async Task Schemas_OfEveryKind_AreWhatTheRecordsSay()
    {
        await using var context = await Database.ContextAsync();
        var made = Directory.CreateDirectory(Path.Combine(AppContext.BaseDirectory, "archive-schemas-made"));
        var stale = new List<string>();
        foreach (var kind in ArchiveKind.All)
        {
            var text = ArchiveSchemas.Of(kind, context.Model);
            await File.WriteAllTextAsync(Path.Combine(made.FullName, kind.Name + ".json"), text);
            if (Shipped(ArchiveForm.SchemaEntry(kind.Name)) != text)
                stale.Add(kind.Name);
        }

        Assert.True(stale.Count == 0, $"Copy {made.FullName}/*.json to docs/archive, and raise the version of the form where a field went or got another meaning: {string.Join(", ", stale)}.");
    }

    [Fact]
    public async Task Kinds_OfContent_AreAllThatRevisionsHold()
    {
        await using var context = await Database.ContextAsync();
        var types = context.Model.GetEntityTypes().Select(type => type.ClrType).Where(typeof(IRevisionContent).IsAssignableFrom).ToHashSet();

        Assert.True(types.Count >= 15);
        Assert.Equal(types, ArchiveKind.Content.Select(kind => kind.Type).ToHashSet());
    }

    [Fact]
    public void Schemas_AgainstTheirMetaSchema_AreValid()
    {
        foreach (var kind in ArchiveKind.All)
        {
            using var schema = JsonDocument.Parse(Shipped(ArchiveForm.SchemaEntry(kind.Name)));

            Assert.True(MetaSchemas.Draft202012.Evaluate(schema.RootElement).IsValid, kind.Name);
        }
    }

    /// <summary>The text of an entry that every archive holds.</summary>
    internal static string Shipped(string entry)
    {
        using var reader = new StreamReader(ArchiveDescription.Files.Single(file => file.Name == entry).Text());
        return reader.ReadToEnd();
    }
}
