namespace Catalogue.Domain.BenchLogs;

/// <summary>What a caller says of a column; it outweighs what the name says.</summary>
/// <param name="Column">The header as written, or the column's number, counted from 1, where no header is written so.</param>
/// <param name="Role">What the column stands for.</param>
/// <param name="Unit">The unit of its cells, such as <c>mA</c>; null takes the one that was found, else the base unit.</param>
public sealed record BenchLogMapping(string Column, BenchLogRole Role, string? Unit = null)
{
    /// <summary>True when the unit is none, or one that is known.</summary>
    public bool HasKnownUnit => Unit is null || LogUnit.Find(Unit) is not null;
}
