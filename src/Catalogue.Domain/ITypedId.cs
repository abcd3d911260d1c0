namespace Catalogue.Domain;

/// <summary>An id that says what it identifies, so that a board's id cannot stand where a photo's is meant.</summary>
/// <typeparam name="TSelf">The id type itself.</typeparam>
public interface ITypedId<TSelf>
    where TSelf : struct, ITypedId<TSelf>
{
    /// <summary>The UUID inside.</summary>
    Guid Value { get; }

    /// <summary>Wraps a UUID read from the database or an address.</summary>
    static abstract TSelf From(Guid value);
}
