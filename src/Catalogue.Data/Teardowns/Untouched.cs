using Catalogue.Domain.Teardowns;

namespace Catalogue.Data.Teardowns;

/// <summary>Compares a row of a draft with the published row it was copied from.</summary>
internal static class Untouched
{
    /// <summary>True when every column but the revision and the version is the same.</summary>
    public static bool Is<TRecord>(CatalogueContext context, TRecord record, TRecord published)
        where TRecord : class, IRevisionContent
    {
        var type = context.Model.FindEntityType(typeof(TRecord)) ?? throw new InvalidOperationException($"{typeof(TRecord).Name} is not mapped.");
        return type.GetProperties()
            .Where(property => property.Name is not (nameof(IRevisionContent.RevisionId) or nameof(IEditableRecord.Version)))
            .All(property => property.GetValueComparer().Equals(property.GetGetter().GetClrValue(record), property.GetGetter().GetClrValue(published)));
    }
}
