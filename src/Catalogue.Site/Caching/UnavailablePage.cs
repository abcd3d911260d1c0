namespace Catalogue.Site.Caching;

/// <summary>What readers see when a page is neither in memory nor can be made. It needs no database: the lab's name is not known here.</summary>
internal static class UnavailablePage
{
    public const string Html =
        """
        <!doctype html>
        <html lang="en">
        <head>
        <meta charset="utf-8">
        <meta name="viewport" content="width=device-width, initial-scale=1">
        <meta name="color-scheme" content="light dark">
        <meta name="robots" content="noindex">
        <title>Not available for the moment</title>
        <link rel="stylesheet" href="/_content/Catalogue.Site/tokens.css">
        <link rel="stylesheet" href="/_content/Catalogue.Site/face.css">
        </head>
        <body>
        <header class="site-head"><div class="frame"><a class="house" href="/"><span>Catalogue of teardowns</span></a></div><div class="graduated"></div></header>
        <main id="main" class="frame">
        <h1 class="page-title after">This page is not available for the moment</h1>
        <p class="prose after">The catalogue's database does not answer, and this page was not opened recently enough for a copy to be kept. Pages that were can still be read. Nothing is lost; please try again in a minute.</p>
        </main>
        </body>
        </html>

        """;
}
