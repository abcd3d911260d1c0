namespace Catalogue.Domain.Teardowns;

/// <summary>How the sample came to the bench; disclosed on the page.</summary>
public enum SampleSource
{
    /// <summary>Not recorded.</summary>
    NotStated,

    /// <summary>Bought by the lab.</summary>
    Bought,

    /// <summary>Lent and given back.</summary>
    Lent,

    /// <summary>Given by somebody with an interest in the result.</summary>
    Sponsored,
}
