using Catalogue.Domain.Text;
using Microsoft.EntityFrameworkCore.Storage.ValueConversion;

namespace Catalogue.Data.Conversions;

/// <summary>Stores an enumeration as its code, so that rows read well and the order of values may change.</summary>
/// <typeparam name="T">The enumeration.</typeparam>
internal sealed class CodeConverter<T>() : ValueConverter<T, string>(value => SnakeCase.Code(value), code => Parse(code))
    where T : struct, Enum
{
    private static T Parse(string code) =>
        SnakeCase.TryParse<T>(code) ?? throw new InvalidOperationException($"“{code}” is no {typeof(T).Name} that this version knows.");
}
