namespace Catalogue.Domain.Teardowns;

/// <summary>Content that people edit: it carries the token by which a save notices that somebody else saved first.</summary>
public interface IEditableRecord : IRevisionContent
{
    /// <summary>Changes with every save of the row; sent along with an edit and compared.</summary>
    uint Version { get; }
}
