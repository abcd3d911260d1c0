using System.Buffers.Binary;
using System.IO.Compression;
using System.Text;
using Catalogue.Media.Photos;

namespace Catalogue.Media.Tests.Photos;

public sealed class ZipBundleTests
{
    private static readonly byte[] Picture = Drawing.Jpeg(40, 30);

    [Fact]
    public void Open_OrdinaryZip_ListsFilesInTheirOrder()
    {
        using var zip = Opened(Zip(null, ("Board A/", []), ("Board A/top.jpg", Picture), ("label.png", Drawing.Png(8, 8))));

        Assert.Equal(["Board A/top.jpg", "label.png"], zip.Entries.Select(entry => entry.Name));
        Assert.All(zip.Entries, entry => Assert.Null(entry.Refusal));
        Assert.Equal(Picture, Bytes(zip, zip.Entries[0]));
        Assert.Null(zip.GuessedEncoding);
    }

    [Theory]
    [InlineData(437, "IBM437", "Rückseite außen.jpg")]
    [InlineData(932, "Shift_JIS", "メイン基板/表面.jpg")]
    [InlineData(65001, null, "Rückseite 主板.jpg")]
    public void Open_NamesInOtherEncodings_AreRead(int codePage, string? guessed, string name)
    {
        using var zip = Opened(Zip(CodePagesEncodingProvider.Instance.GetEncoding(codePage) ?? Encoding.UTF8, (name, Picture)));

        Assert.Equal(name, Assert.Single(zip.Entries).Name);
        // A name that says it is UTF-8 leaves nothing to find out.
        Assert.Equal(guessed, zip.GuessedEncoding);
    }

    [Theory]
    [InlineData("../outside.jpg", "leads out")]
    [InlineData("a/../../outside.jpg", "leads out")]
    [InlineData("..\\outside.jpg", "leads out")]
    [InlineData("/etc/picture.jpg", "leads out")]
    [InlineData("C:\\pictures\\a.jpg", "leads out")]
    [InlineData("__MACOSX/Board A/._top.jpg", "operating system")]
    [InlineData("Board A/Thumbs.db", "operating system")]
    [InlineData("Board A/.DS_Store", "operating system")]
    [InlineData("more.zip", "archive inside")]
    [InlineData("more.tar.gz", "archive inside")]
    public void Open_EntryThatIsNotRead_SaysWhy(string name, string why)
    {
        using var zip = Opened(Zip(null, (name, Picture), ("top.jpg", Picture)));

        Assert.Contains(why, zip.Entries[0].Refusal, StringComparison.Ordinal);
        Assert.Null(zip.Open(zip.Entries[0], out var reason));
        Assert.Equal(zip.Entries[0].Refusal, reason);
        Assert.Null(zip.Entries[1].Refusal);
    }

    [Fact]
    public void Open_EmptyDoubledLinkedOrLockedEntries_SayWhy()
    {
        using var stream = new MemoryStream();
        using (var made = new ZipArchive(stream, ZipArchiveMode.Create, leaveOpen: true))
        {
            made.CreateEntry("empty.jpg");
            Write(made, "top.jpg", Picture);
            Write(made, "top.jpg", Picture);
            var link = Write(made, "link.jpg", "/etc/hostname"u8);
            link.ExternalAttributes = unchecked((int)0xA1FF0000);
            Write(made, "locked.jpg", Picture);
        }

        var bytes = stream.ToArray();
        Lock(bytes, "locked.jpg");
        using var zip = Opened(bytes);

        Assert.Equal([true, false, true, true, true], zip.Entries.Select(entry => entry.Refusal is not null));
        Assert.Contains("empty", zip.Entries[0].Refusal, StringComparison.Ordinal);
        Assert.Contains("same name", zip.Entries[2].Refusal, StringComparison.Ordinal);
        Assert.Contains("links are not followed", zip.Entries[3].Refusal, StringComparison.Ordinal);
        Assert.Contains("encrypted", zip.Entries[4].Refusal, StringComparison.Ordinal);
    }

    [Fact]
    public void Open_EntryPackedFarTooTightly_IsNotUnpacked()
    {
        using var zip = Opened(Zip(null, ("flat.png", new byte[20 * 1024 * 1024])));

        Assert.Contains("tighter", zip.Entries[0].Refusal, StringComparison.Ordinal);
    }

    [Fact]
    public void Open_MoreThanAllTogetherMayBe_StopsAtTheNextEntry()
    {
        var bytes = Zip(null, ("a.jpg", Picture), ("b.jpg", Picture));
        using var zip = Assert.IsType<FileBundle.Opening.Opened>(ZipBundle.Open(new MemoryStream(bytes), maxUnpackedBytes: Picture.Length)).Bundle;

        Assert.Equal(Picture, Bytes(zip, zip.Entries[0]));
        Assert.Null(zip.Open(zip.Entries[1], out var reason));
        Assert.Contains("All entries together", reason, StringComparison.Ordinal);
    }

    [Fact]
    public void Open_MoreEntriesThanAllowed_IsRefusedBeforeTheyAreLoaded()
    {
        var bytes = Zip(null, [.. Enumerable.Range(0, FileBundle.MaxEntries + 1).Select(i => ($"{i}.jpg", new byte[] { 1 }))]);
        // The end states one entry; what is there counts.
        var end = bytes.AsSpan().LastIndexOf("PK\x05\x06"u8);
        BinaryPrimitives.WriteUInt16LittleEndian(bytes.AsSpan(end + 8), 1);
        BinaryPrimitives.WriteUInt16LittleEndian(bytes.AsSpan(end + 10), 1);

        Assert.Contains("more than 5000 entries", Assert.IsType<FileBundle.Opening.Refused>(ZipBundle.Open(new MemoryStream(bytes))).Reason, StringComparison.Ordinal);
    }

    [Fact]
    public void Open_NoZip_IsRefused()
    {
        byte[][] files = [[], [1, 2, 3], Picture, "PK\x03\x04"u8.ToArray(), Zip(null, ("a.jpg", Picture))[..60]];

        Assert.All(files, file => Assert.IsType<FileBundle.Opening.Refused>(ZipBundle.Open(new MemoryStream(file))));
    }

    [Fact]
    public void Open_DamagedFiles_AreReadOrRefused()
    {
        var whole = Zip(CodePagesEncodingProvider.Instance.GetEncoding(437), ("Rückseite.jpg", Picture), ("b/c.png", Drawing.Png(8, 8)), ("d.txt", "text"u8.ToArray()));
        var random = new Random(20_260_311);
        for (var i = 0; i < 3000; i++)
        {
            var bytes = whole[..(random.Next(4) == 0 ? random.Next(whole.Length) : whole.Length)];
            // Damage gathers where it is felt: in the directory at the end.
            for (var flips = random.Next(1, 6); flips > 0 && bytes.Length > 0; flips--)
                bytes[random.Next(2) == 0 ? random.Next(bytes.Length) : Math.Max(0, bytes.Length - 1 - random.Next(250))] = (byte)random.Next(256);
            if (ZipBundle.Open(new MemoryStream(bytes)) is not FileBundle.Opening.Opened { Bundle: var zip })
                continue;
            using (zip)
                Assert.All(zip.Entries, entry => Assert.True(zip.Peek(entry, 64).Length <= 64));
        }
    }

    [Fact]
    public void Open_NamesThatSayHere_AreThoseWithoutIt()
    {
        using var zip = Opened(Zip(null, ("./Board A/top.jpg", Picture)));

        Assert.Equal(("Board A/top.jpg", null), (zip.Entries[0].Name, zip.Entries[0].Refusal));
    }

    [Theory]
    [InlineData("top.jpg", true, null)]
    [InlineData("top.JPEG", true, null)]
    [InlineData("top.png", true, "content is JPEG")]
    [InlineData("top", true, "no ending")]
    public void Contradiction_NameAgainstContent_ContentDecides(string name, bool isTaken, string? remark)
    {
        var said = PictureFiles.Contradiction(name, Picture);

        Assert.Equal(remark is null, said is null);
        if (said is { } contradiction)
        {
            Assert.Equal(isTaken, contradiction.IsTaken);
            Assert.Contains(remark!, contradiction.Remark, StringComparison.Ordinal);
        }
    }

    [Fact]
    public void Contradiction_NoPicture_IsNotTaken()
    {
        Assert.Equal((false, true), (PictureFiles.Contradiction("note.jpg", "text"u8)!.Value.IsTaken, PictureFiles.Contradiction("a.jpg", "GIF89a"u8)!.Value.Remark.Contains("a GIF", StringComparison.Ordinal)));
    }

    private static FileBundle Opened(byte[] bytes) => Assert.IsType<FileBundle.Opening.Opened>(ZipBundle.Open(new MemoryStream(bytes))).Bundle;

    private static byte[] Bytes(FileBundle zip, FileBundle.Entry entry)
    {
        using var stream = zip.Open(entry, out var reason);
        Assert.Null(reason);
        using var copy = new MemoryStream();
        stream!.CopyTo(copy);
        return copy.ToArray();
    }

    private static byte[] Zip(Encoding? names, params (string Name, byte[] Content)[] entries)
    {
        using var stream = new MemoryStream();
        using (var zip = new ZipArchive(stream, ZipArchiveMode.Create, leaveOpen: true, names))
        {
            foreach (var (name, content) in entries)
                Write(zip, name, content);
        }

        return stream.ToArray();
    }

    private static ZipArchiveEntry Write(ZipArchive zip, string name, ReadOnlySpan<byte> content)
    {
        var entry = zip.CreateEntry(name);
        if (content.IsEmpty)
            return entry;
        using var stream = entry.Open();
        stream.Write(content);
        return entry;
    }

    // Sets the bit for encryption in the directory's entry of that name.
    private static void Lock(byte[] zip, string name)
    {
        var at = zip.AsSpan().LastIndexOf(Encoding.ASCII.GetBytes(name)) - 46;
        Assert.True(zip.AsSpan(at).StartsWith("PK\x01\x02"u8));
        zip[at + 8] |= 1;
    }
}
