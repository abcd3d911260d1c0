namespace Catalogue.Media.Tests;

/// <summary>A folder of one test's own, gone afterwards.</summary>
public sealed class TemporaryFolder : IDisposable
{
    private readonly DirectoryInfo _folder = Directory.CreateTempSubdirectory("catalogue-media-tests-");

    public string Path => _folder.FullName;

    public string File(string name, ReadOnlySpan<byte> content)
    {
        var path = System.IO.Path.Combine(Path, name);
        System.IO.File.WriteAllBytes(path, content);
        return path;
    }

    public string Folder(string name) => _folder.CreateSubdirectory(name).FullName;

    /// <summary>Full paths of all files below, in order.</summary>
    public string[] Files(string folder = "") =>
        [.. Directory.EnumerateFiles(System.IO.Path.Combine(Path, folder), "*", SearchOption.AllDirectories).Order(StringComparer.Ordinal)];

    public void Dispose() => _folder.Delete(recursive: true);
}
