namespace Catalogue.Domain.BenchLogs;

/// <summary>Where the unit of a column was found.</summary>
public enum BenchLogUnitSource
{
    /// <summary>There is none.</summary>
    None,

    /// <summary>In the column's name.</summary>
    Name,

    /// <summary>In a row of units below the header.</summary>
    UnitRow,

    /// <summary>In the cells beside their numbers.</summary>
    Cell,

    /// <summary>In a column of its own, row by row.</summary>
    UnitColumn,

    /// <summary>Nowhere: the base unit of the quantity was taken.</summary>
    Assumed,

    /// <summary>The caller gave it.</summary>
    Given,
}
