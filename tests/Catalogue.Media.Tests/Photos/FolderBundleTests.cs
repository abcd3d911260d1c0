using Catalogue.Media.Photos;

namespace Catalogue.Media.Tests.Photos;

public sealed class FolderBundleTests : IDisposable
{
    private readonly TemporaryFolder _folder = new();

    public void Dispose() => _folder.Dispose();

    [Fact]
    public void Open_Folder_ListsWhatLiesBelowByName()
    {
        Write("IMG_10.jpg");
        Write("IMG_9.jpg");
        Write("Board A/top.jpg");
        Write("Board A/Thumbs.db");

        using var bundle = Opened();

        Assert.Equal(["Board A/Thumbs.db", "Board A/top.jpg", "IMG_9.jpg", "IMG_10.jpg"], bundle.Entries.Select(entry => entry.Name));
        Assert.Equal([true, false, false, false], bundle.Entries.Select(entry => entry.IsOfSystem));
        Assert.Equal([1, 2, 3], bundle.Peek(bundle.Entries[1], 64));
    }

    [Fact]
    public void Open_Links_AreSaidAndNotFollowed()
    {
        Write("outside/secret.jpg");
        Write("pictures/top.jpg");
        File.CreateSymbolicLink(Path.Combine(_folder.Path, "pictures/link.jpg"), Path.Combine(_folder.Path, "outside/secret.jpg"));
        Directory.CreateSymbolicLink(Path.Combine(_folder.Path, "pictures/all"), Path.Combine(_folder.Path, "outside"));

        using var bundle = Assert.IsType<FileBundle.Opening.Opened>(FolderBundle.Open(Path.Combine(_folder.Path, "pictures"))).Bundle;

        Assert.Equal(["all", "link.jpg", "top.jpg"], bundle.Entries.Select(entry => entry.Name));
        Assert.Equal([true, true, false], bundle.Entries.Select(entry => entry.Refusal is not null));
        Assert.Empty(bundle.Peek(bundle.Entries[1], 64));
    }

    [Fact]
    public void Open_NoFolder_IsRefused() => Assert.IsType<FileBundle.Opening.Refused>(FolderBundle.Open(Path.Combine(_folder.Path, "none")));

    private FileBundle Opened() => Assert.IsType<FileBundle.Opening.Opened>(FolderBundle.Open(_folder.Path)).Bundle;

    private void Write(string name)
    {
        var path = Path.Combine(_folder.Path, name);
        Directory.CreateDirectory(Path.GetDirectoryName(path)!);
        File.WriteAllBytes(path, [1, 2, 3]);
    }
}
