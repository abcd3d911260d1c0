using System.Collections.Frozen;
using Catalogue.Domain;
using Catalogue.Domain.Teardowns;

namespace Catalogue.Data.Archives;

/// <summary>The ids in a record: its own, and those of other records of the same revision.</summary>
internal static class ArchiveReferences
{
    // The record behind each type of id, such as a board behind BoardId.
    private static readonly FrozenDictionary<Type, Type> RecordOf = ArchiveKind.Content.ToFrozenDictionary(kind => kind.Type.GetProperty("Id")!.PropertyType, kind => kind.Type);

    private static readonly FrozenDictionary<Type, IReadOnlyList<Reader>> Readers = ArchiveKind.Content.Append(ArchiveKind.FamilyMove).ToFrozenDictionary(kind => kind.Type, kind => ReadersOf(kind.Type));

    /// <summary>An id.</summary>
    /// <param name="Kind">The record that it is of.</param>
    /// <param name="Id">The id.</param>
    /// <param name="IsOwn">True for the record's own.</param>
    public readonly record struct Reference(Type Kind, Guid Id, bool IsOwn);

    private sealed record Reader(Type Kind, bool IsOwn, Func<object, Guid?> Read);

    /// <summary>The ids of a record; none for records that have no place in a revision.</summary>
    public static IEnumerable<Reference> Of(object record)
    {
        if (!Readers.TryGetValue(record.GetType(), out var readers))
            yield break;
        foreach (var reader in readers)
            if (reader.Read(record) is { } id)
                yield return new Reference(reader.Kind, id, reader.IsOwn);
    }

    private static IReadOnlyList<Reader> ReadersOf(Type type) =>
    [
        .. type.GetProperties()
            .Where(property => RecordOf.ContainsKey(Nullable.GetUnderlyingType(property.PropertyType) ?? property.PropertyType))
            .Select(property =>
            {
                var id = Nullable.GetUnderlyingType(property.PropertyType) ?? property.PropertyType;
                var value = id.GetProperty(nameof(ITypedId<BoardId>.Value))!;
                return new Reader(RecordOf[id], property.Name == "Id", record => property.GetValue(record) is { } held ? (Guid)value.GetValue(held)! : null);
            }),
    ];
}
