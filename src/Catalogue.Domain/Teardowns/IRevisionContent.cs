namespace Catalogue.Domain.Teardowns;

/// <summary>
/// A row that belongs to one revision. While the revision is a draft the row may change; once it is published the database refuses
/// every change. A later draft starts as a copy, in which each row keeps its id.
/// </summary>
public interface IRevisionContent
{
    /// <summary>The revision the row belongs to; with the row's own id it is the key.</summary>
    RevisionId RevisionId { get; set; }
}
