namespace Catalogue.Data.Accounts;

/// <summary>What a token may do.</summary>
public enum TokenScope
{
    /// <summary>Read, drafts included.</summary>
    Read,

    /// <summary>Read and write.</summary>
    Write,
}
