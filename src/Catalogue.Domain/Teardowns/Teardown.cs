using Catalogue.Domain.Products;

namespace Catalogue.Domain.Teardowns;

/// <summary>One physical sample taken apart. Its content lives in revisions.</summary>
public sealed class Teardown
{
    /// <summary>Its id.</summary>
    public required TeardownId Id { get; init; }

    /// <summary>The product it is a sample of.</summary>
    public required ProductId ProductId { get; set; }

    /// <summary>Its lasting address; unique.</summary>
    public required string Slug { get; init; }

    /// <summary>Its running number in this lab, from 1; printed as T-041.</summary>
    public int Number { get; init; }

    /// <summary>The sample's serial number. Never public.</summary>
    public string? SerialNumber { get; set; }

    /// <summary>When the record was opened.</summary>
    public required DateTimeOffset CreatedAt { get; init; }

    /// <summary>Changes with every save of the row.</summary>
    public uint Version { get; init; }
}
