namespace Catalogue.Site.Caching;

/// <summary>Reads the number that grows whenever anything that readers see changes.</summary>
public delegate Task<long> ReadSiteVersion(CancellationToken cancellationToken);
