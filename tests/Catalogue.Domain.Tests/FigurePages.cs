namespace Catalogue.Domain.Tests;

/// <summary>The pages in docs/figures, whose worked examples are tests.</summary>
internal static class FigurePages
{
    /// <summary>The path of a page.</summary>
    public static string Find(string page)
    {
        for (var folder = new DirectoryInfo(AppContext.BaseDirectory); folder is not null; folder = folder.Parent)
            if (Path.Combine(folder.FullName, "docs", "figures", page) is var path && File.Exists(path))
                return path;
        throw new FileNotFoundException($"No docs/figures/{page} above {AppContext.BaseDirectory}.");
    }
}
