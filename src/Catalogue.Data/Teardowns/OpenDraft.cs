using Catalogue.Domain.Teardowns;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata;

namespace Catalogue.Data.Teardowns;

/// <summary>Opens a draft as a copy of the published revision, row by row within the database, each row keeping its id.</summary>
internal static class OpenDraft
{
    public static async Task<Revision> FromAsync(CatalogueContext context, Revision published, int number, DateTimeOffset now, CancellationToken cancellationToken)
    {
        var draft = new Revision
        {
            Id = RevisionId.New(),
            TeardownId = published.TeardownId,
            Number = number,
            State = RevisionState.Draft,
            Title = published.Title,
            Standfirst = published.Standfirst,
            Brand = published.Brand,
            ProductName = published.ProductName,
            Model = published.Model,
            Category = published.Category,
            Year = published.Year,
            MassKg = published.MassKg,
            TakenApartOn = published.TakenApartOn,
            TakenApartBy = published.TakenApartBy,
            Obtained = published.Obtained,
            ObtainedNote = published.ObtainedNote,
            Condition = published.Condition,
            Firmware = published.Firmware,
            CellChemistry = published.CellChemistry,
            MethodMarkdown = published.MethodMarkdown,
            OpenedAt = now,
        };
        context.Revisions.Add(draft);
        await context.SaveChangesAsync(cancellationToken);
        foreach (var type in ContentInOrder(context.Model))
        {
            var table = StoreObjectIdentifier.Table(type.GetTableName()!, type.GetSchema());
            var columns = type.GetProperties()
                .Select(property => property.GetColumnName(table)!)
                .Where(column => column is not ("revision_id" or "xmin"))
                .ToList();
            var list = string.Join(", ", columns);
            // Every name comes from the model; only the two ids are values.
            var sql = $"insert into {table.Name} (revision_id, {list}) select {{0}}, {list} from {table.Name} where revision_id = {{1}}";
            await context.Database.ExecuteSqlRawAsync(sql, [draft.Id.Value, published.Id.Value], cancellationToken);
        }

        // A draft takes up where the catalogue stands now: parts that a split moved come with the family they count to.
        await context.Database.ExecuteSqlAsync(
            $"""
            update components c set family_id = l.linked_family_id from family_links l
                where c.revision_id = {draft.Id.Value} and l.revision_id = {published.Id.Value} and l.component_id = c.id and c.family_id <> l.linked_family_id
            """,
            cancellationToken);
        return draft;
    }

    /// <summary>The content types of a revision, each after those that it refers to.</summary>
    internal static IReadOnlyList<IEntityType> ContentInOrder(IModel model)
    {
        var waiting = model.GetEntityTypes().Where(type => typeof(IRevisionContent).IsAssignableFrom(type.ClrType)).OrderBy(type => type.Name, StringComparer.Ordinal).ToList();
        var ordered = new List<IEntityType>(waiting.Count);
        while (waiting.Count > 0)
        {
            var next = waiting.First(type => type.GetForeignKeys().All(key => key.PrincipalEntityType == type || !waiting.Contains(key.PrincipalEntityType)));
            waiting.Remove(next);
            ordered.Add(next);
        }

        return ordered;
    }
}
