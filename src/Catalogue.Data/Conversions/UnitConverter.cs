using Catalogue.Domain.Quantities;
using Microsoft.EntityFrameworkCore.Storage.ValueConversion;

namespace Catalogue.Data.Conversions;

/// <summary>Stores a unit as its code.</summary>
internal sealed class UnitConverter() : ValueConverter<Unit, string>(unit => unit.Code(), code => Parse(code))
{
    private static Unit Parse(string code) => UnitSymbols.Find(code) ?? throw new InvalidOperationException($"“{code}” is no unit that this version knows.");
}
