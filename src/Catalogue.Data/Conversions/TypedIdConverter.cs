using Catalogue.Domain;
using Microsoft.EntityFrameworkCore.Storage.ValueConversion;

namespace Catalogue.Data.Conversions;

/// <summary>Stores a typed id as its UUID.</summary>
/// <typeparam name="TId">The id type.</typeparam>
internal sealed class TypedIdConverter<TId>() : ValueConverter<TId, Guid>(id => id.Value, value => Wrap(value))
    where TId : struct, ITypedId<TId>
{
    // An expression tree may not call a static member of the interface itself.
    private static TId Wrap(Guid value) => TId.From(value);
}
