using System.Runtime.CompilerServices;

namespace Catalogue.Domain.Tests.Samples;

/// <summary>The sample files beside this source file, byte for byte.</summary>
internal static class SampleFile
{
    public static byte[] Bytes(string folder, string name) => File.ReadAllBytes(Path.Combine(Folder(), folder, name));

    public static string[] Names(string folder) =>
        [.. Directory.GetFiles(Path.Combine(Folder(), folder)).Select(path => Path.GetFileName(path)).Order(StringComparer.Ordinal)];

    public static string[][] TabLines(string folder, string name) =>
        [.. File.ReadAllText(Path.Combine(Folder(), folder, name)).TrimEnd('\n').Split('\n').Skip(1).Select(line => line.Split('\t'))];

    private static string Folder([CallerFilePath] string path = "") => Path.GetDirectoryName(path)!;
}
