namespace Catalogue.Media.Photos;

/// <summary>Names what people upload by mistake, so that the refusal can say it. It guards nothing.</summary>
internal static class ForeignFormat
{
    /// <summary>What the file looks like, with its article ("a GIF"); null when nothing comes to mind.</summary>
    public static string? NameOf(ReadOnlySpan<byte> start)
    {
        if (start.StartsWith("GIF8"u8))
        {
            return "a GIF";
        }

        if (start.StartsWith("BM"u8) && start.Length >= 26 && start[6..10].SequenceEqual<byte>([0, 0, 0, 0]))
        {
            return "a BMP";
        }

        if (start.StartsWith("II*\0"u8) || start.StartsWith("MM\0*"u8) || start.StartsWith("II+\0"u8) || start.StartsWith("MM\0+"u8))
        {
            return "a TIFF or a camera's raw file";
        }

        if (start.Length >= 12 && start[4..8].SequenceEqual("ftyp"u8))
        {
            var brand = start[8..12];
            return brand.SequenceEqual("avif"u8) || brand.SequenceEqual("avis"u8) ? "an AVIF"
                : brand.StartsWith("he"u8) || brand.SequenceEqual("mif1"u8) || brand.SequenceEqual("msf1"u8) ? "a HEIC (phones can be set to take JPEG)"
                : "a film";
        }

        if (start.StartsWith<byte>([0xFF, 0x0A]) || start.StartsWith("\0\0\0\x0CJXL "u8))
        {
            return "a JPEG XL";
        }

        if (start.StartsWith("\0\0\0\x0CjP  "u8))
        {
            return "a JPEG 2000";
        }

        if (start.StartsWith("%PDF-"u8))
        {
            return "a PDF";
        }

        return start[..Math.Min(start.Length, 4096)].IndexOf("<svg"u8) >= 0 ? "an SVG drawing" : null;
    }
}
