namespace Catalogue.Domain.Tests.Samples;

/// <summary>The sample files of the test project, byte for byte.</summary>
internal static class SampleFile
{
    public static byte[] Bytes(string folder, string name) => File.ReadAllBytes(Path.Combine(Folder(), folder, name));

    public static string[] Names(string folder) =>
        [.. Directory.GetFiles(Path.Combine(Folder(), folder)).Select(path => Path.GetFileName(path)).Order(StringComparer.Ordinal)];

    public static string[][] TabLines(string folder, string name) =>
        [.. File.ReadAllText(Path.Combine(Folder(), folder, name)).TrimEnd('\n').Split('\n').Skip(1).Select(line => line.Split('\t'))];

    private static string Folder()
    {
        for (var folder = new DirectoryInfo(AppContext.BaseDirectory); folder is not null; folder = folder.Parent)
        {
            var samples = Path.Combine(folder.FullName, "Samples");
            if (Directory.Exists(samples))
            {
                return samples;
            }
        }
        throw new DirectoryNotFoundException($"No folder Samples above {AppContext.BaseDirectory}.");
    }
}
