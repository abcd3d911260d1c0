using System.IO.Compression;
using System.Security;
using System.Text;
using System.Text.RegularExpressions;
using Catalogue.Testing.Components.Lists;

namespace Catalogue.Testing.Mutations;

/// <summary>Damages files, the same way for the same seed.</summary>
/// <param name="random">Where chance comes from.</param>
public sealed partial class Mutator(Random random)
{
    private const int HugeCell = 10 * 1024 * 1024;
    private const int ManyColumns = 100_000;

    // One case in so many is large, so that a run of thousands stays short.
    private const int Large = 200;

    private static readonly string[] Marks = ["\"", "\"\"", "\"\"\",\"", ",\"x\"y\n\"", ";", "\t", "|", "\r", "\n", "\0", "\0\0\0\0", "\uFEFF", "\uFFFE", "=\"1\"", "\\|", "|---|---|", "<br>", "99999999999", "1e300", "R1-R999999", "NaN"];

    private static readonly string[] Values =
        ["", "-1", "0", "1", "99", "1048576", "1048577", "4294967296", "999999999999999999999", "1e308", "-1e-320", "NaN", "A1:XFD1048576", "XFD1048576", "A0", "ZZZZ1", "s", "e", "inlineStr",
        "../../x.xml", "http://127.0.0.1:9/x", "&#0;", "_x0000_", "<", "[h]:mm:ss", "0;0;0;0;0", "???/???", "rId1", "r1", "hidden", "true"];

    /// <summary>A text or any other file: bytes changed, taken out, put in, doubled, turned round, cut; marks nested; at times a huge cell or very many columns.</summary>
    public byte[] Text(byte[] seed)
    {
        var bytes = seed.ToList();
        for (var changes = random.Next(1, 9); changes > 0 && bytes.Count > 1; changes--)
            Change(bytes);
        if (random.Next(Large) == 0)
        {
            var (at, cell) = (random.Next(bytes.Count + 1), random.Next(2) == 0);
            bytes.InsertRange(at, Enumerable.Repeat((byte)(cell ? 'x' : ",;\t|"[random.Next(4)]), cell ? HugeCell : ManyColumns));
        }

        return [.. bytes];
    }

    /// <summary>A zip archive: as any file, or in one or two of its unpacked parts, as text or, mostly, so that its XML stays well formed.</summary>
    public byte[] Archive(byte[] seed)
    {
        if (random.Next(6) == 0)
            return Text(seed);
        var parts = new List<(string Name, byte[] Content)>();
        using (var archive = new ZipArchive(new MemoryStream(seed)))
        {
            foreach (var entry in archive.Entries)
            {
                using var content = new MemoryStream();
                using var open = entry.Open();
                open.CopyTo(content);
                parts.Add((entry.FullName, content.ToArray()));
            }
        }

        for (var changes = random.Next(1, 3); changes > 0; changes--)
        {
            // What names and joins the parts is soon beyond reading; most changes go into what stands in them.
            var at = random.Next(parts.Count);
            for (var tries = 0; tries < 3 && (parts[at].Name.EndsWith(".rels", StringComparison.Ordinal) || parts[at].Name[0] == '['); tries++)
                at = random.Next(parts.Count);
            parts[at] = (parts[at].Name, random.Next(8) == 0 ? Text(parts[at].Content) : Xml(parts[at].Content));
        }

        if (random.Next(20) == 0)
            parts.RemoveAt(random.Next(parts.Count));
        return WorkbookBuilder.Archive(parts);
    }

    private byte[] Xml(byte[] seed)
    {
        var text = Encoding.UTF8.GetString(seed);
        for (var changes = random.Next(1, 5); changes > 0; changes--)
        {
            var places = (random.Next(3) == 0 ? Element() : Value()).Matches(text);
            if (places.Count == 0)
                break;
            var place = places[random.Next(places.Count)];
            var instead = !place.Value.StartsWith('<') ? SecurityElement.Escape(Values[random.Next(Values.Length)])
                : random.Next(3) switch { 0 => "", 1 => place.Value + place.Value, _ => places[random.Next(places.Count)].Value };
            text = $"{text[..place.Index]}{instead}{text[(place.Index + place.Length)..]}";
        }

        return Encoding.UTF8.GetBytes(text);
    }

    private void Change(List<byte> bytes)
    {
        var at = random.Next(bytes.Count);
        switch (random.Next(8))
        {
            case 0:
                bytes[at] = (byte)random.Next(256);
                break;
            case 1:
                bytes[at] ^= (byte)(1 << random.Next(8));
                break;
            case 2:
                bytes.RemoveRange(at, Math.Min(random.Next(1, 40), bytes.Count - at));
                break;
            case 3:
                bytes.InsertRange(at, Encoding.UTF8.GetBytes(Marks[random.Next(Marks.Length)]));
                break;
            case 4:
                bytes.InsertRange(at, bytes.GetRange(0, random.Next(bytes.Count)));
                break;
            case 5:
                bytes.InsertRange(at, bytes.GetRange(at, Math.Min(random.Next(60), bytes.Count - at)));
                break;
            case 6:
                bytes.Reverse(at, Math.Min(random.Next(20), bytes.Count - at));
                break;
            default:
                if (random.Next(4) == 0)
                    bytes.RemoveRange(at, bytes.Count - at);
                break;
        }
    }

    [GeneratedRegex("(?<==\")[^\"]*(?=\")|(?<=>)[^<>]+(?=<)")]
    private static partial Regex Value();

    [GeneratedRegex(@"<(?<name>[a-zA-Z]+)[^<>]*>[^<>]*</\k<name>>|<[a-zA-Z][^<>]*/>|<(?<name>c|row|cols|sheet|is|si)\b[^<>]*(?<!/)>((?!</\k<name>>).)*</\k<name>>")]
    private static partial Regex Element();
}
