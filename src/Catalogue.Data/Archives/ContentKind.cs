using Catalogue.Domain.Teardowns;

namespace Catalogue.Data.Archives;

/// <summary>A kind of line that is a record of a revision.</summary>
/// <param name="Name">What the field <c>record</c> says.</param>
/// <param name="Type">The record.</param>
/// <param name="Rows">The rows of a revision, in order, while they are read.</param>
internal sealed record ContentKind(string Name, Type Type, Func<CatalogueContext, RevisionId, IAsyncEnumerable<IRevisionContent>> Rows) : ArchiveKind(Name, Type);
