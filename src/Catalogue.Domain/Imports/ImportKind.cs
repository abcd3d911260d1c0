namespace Catalogue.Domain.Imports;

/// <summary>What an import brings in.</summary>
public enum ImportKind
{
    /// <summary>Whole teardowns with all that they rest on.</summary>
    TeardownArchive,

    /// <summary>Many photos at once.</summary>
    Photos,

    /// <summary>A teardown that was published as an article.</summary>
    Article,
}
