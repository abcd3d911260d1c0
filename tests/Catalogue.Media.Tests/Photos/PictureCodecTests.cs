using Catalogue.Media.Photos;

namespace Catalogue.Media.Tests.Photos;

public sealed class PictureCodecTests
{
    [Fact]
    public void SourceFiles_DecoderLibrary_IsCalledInOnePlaceOnly()
    {
        var folder = new DirectoryInfo(AppContext.BaseDirectory);
        while (!File.Exists(Path.Combine(folder.FullName, "Catalogue.sln")))
        {
            folder = folder.Parent ?? throw new InvalidOperationException("The tests run outside the repository.");
        }

        var sources = Directory.EnumerateFiles(Path.Combine(folder.FullName, "src"), "*.cs", SearchOption.AllDirectories)
            .Where(path => !path.Contains("/obj/", StringComparison.Ordinal))
            .Where(path => File.ReadAllText(path).Contains("SixLabors", StringComparison.Ordinal))
            .Select(Path.GetFileName);

        Assert.Equal([nameof(PictureCodec) + ".cs"], sources);
    }
}
