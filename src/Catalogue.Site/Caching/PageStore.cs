using Microsoft.Extensions.Caching.Memory;

namespace Catalogue.Site.Caching;

/// <summary>
/// Rendered pages in memory, up to a size; beyond it those that were not asked for the longest go first. A page stays when a newer version of the
/// site makes it stale: it is what readers get while the database cannot be reached. A restart forgets all, so no page outlives the build that made it.
/// </summary>
public sealed class PageStore : IDisposable
{
    /// <summary>All pages together, in bytes.</summary>
    public const long MaxBytes = 64 * 1024 * 1024;

    /// <summary>A larger page is sent and not kept, in bytes.</summary>
    public const int MaxPageBytes = 8 * 1024 * 1024;

    // What an entry weighs beside its body and its key.
    private const int EntryBytes = 1024;

    private readonly MemoryCache _pages;

    /// <summary>An empty store.</summary>
    /// <param name="maxBytes">All pages together, in bytes.</param>
    public PageStore(long maxBytes = MaxBytes) => _pages = new MemoryCache(new MemoryCacheOptions { SizeLimit = maxBytes });

    /// <summary>The page at a key, whatever its version, or null.</summary>
    public CachedPage? Find(string key) => _pages.Get<CachedPage>(key);

    /// <summary>Keeps a page in place of the one before.</summary>
    /// <param name="key">Its key.</param>
    /// <param name="page">The page.</param>
    /// <param name="isSearched">True for pages with a query: anybody can make up any number of them, so they go before all others.</param>
    public void Keep(string key, CachedPage page, bool isSearched)
    {
        ArgumentNullException.ThrowIfNull(key);
        ArgumentNullException.ThrowIfNull(page);
        if (page.Body.Length <= MaxPageBytes)
            _pages.Set(key, page, new MemoryCacheEntryOptions { Size = page.Body.Length + (2 * key.Length) + EntryBytes, Priority = isSearched ? CacheItemPriority.Low : CacheItemPriority.Normal });
    }

    /// <inheritdoc />
    public void Dispose() => _pages.Dispose();
}
