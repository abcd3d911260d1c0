using System.Diagnostics;
using System.Globalization;
using System.Text;
using Catalogue.Domain.Tests.Samples;
using Catalogue.Domain.Text;
using Catalogue.Domain.UsbPd;
using CsCheck;

namespace Catalogue.Domain.Tests.UsbPd;

public sealed class CapabilityTextTests
{
    private static readonly string[] Fragments =
    [
        "0x0801912C", "0002D12C", "0x0003C0", "hdr=0x41A1", "A1 71", "2C 91 01 0A", "source", "Sink Capabilities:", "[1]", "(2)", "5V", "3A", "3.3/11V", "PPS", "Fixed", "EPR AVS", "15-28V", "140W", "\n", "\r\n", "\n\n", " ", ", ", "|",
        "obj3=", "request", "a1712c91010a2cd10200fac00300", "b1fd24802c91910a2cd112002cb11400f441160000000000000000000000", "9194008c0000", "0x", "load:", "1.", "99999999999V", "limited=1", "0xF0001234", "00000000",
    ];

    // Supplies and flags, then pieces that the warnings must have, in short.
    public static TheoryData<string, string, string[]> Samples => new()
    {
        { "01-words.txt", "5V 2.4A uncon+usbcomm; 9V 2.77A; 12V 2.08A; 15V 1.66A; 20V 1.25A; pps 3.3-11V 2.75A limited", [] },
        { "02-words-mixed-style.txt", "5V 3A uncon; 9V 3A; 15V 3A; 20V 3.35A", [] },
        { "03-wire-bytes.txt", "5V 3A uncon+drd; 9V 3A; 12V 2.5A; 15V 2A; 20V 1.5A; pps 3.3-16V 2A limited; pps 3.3-21V 1.5A limited", [] },
        { "04-wire-bytes-with-crc.txt", "5V 1.3A drp+susp+usbcomm+drd", ["CRC-32"] },
        { "05-log-cut-by-reboot.txt", "5V 3A uncon+drd; 9V 2.78A; 12V 2.08A; 15V 1.67A; 20V 1.25A", ["3 whole words of 5", "0x3fcd0810"] },
        { "06-boot-log.txt", "5V 5A uncon+drd; 9V 2.9A; 12V 2.2A; 15V 1.7A", ["no objects"] },
        { "07-markdown-table.md", "5V 3A uncon+drd; 9V 3A; 12V 4.5A; 15V 3.85A; 20V 3.25A", [] },
        { "08-sink-and-source.txt", "5V 2.6A uncon; 15V 2.2A", ["3 sink objects are kept apart"] },
        { "09-epr-words.txt", "5V 3A drp+uncon+drd+unchunk+epr; 9V 3A; 12V 3A; 15V 3A; 20V 5A; pps 5-21V 5A limited; padding; 28V 5A; epr_avs 15-28V 140W", ["Position 7 is padding", "goes on at 8"] },
        {
            "10-epr-chunked-bytes.txt",
            "5V 3A uncon+drd+epr peak1; 9V 3A peak1; 15V 3A peak1; 20V 5A peak1; padding; padding; padding; 28V 5A peak1; 36V 5A peak1",
            ["2 chunks", "36 bytes", "request for a chunk"]
        },
        {
            "11-unusual-types.txt",
            "5V 0.9A drp+usbcomm; battery 4.5-5.5V 12.5W; variable 9-12V 1.5A; spr_avs 9-20V 3/2.25A; reserved_apdo; epr_avs 9-20V 65W",
            ["Object 5 (0xF0001234) is of a reserved type", "Object 6 (EPR AVS) stands outside an EPR list"]
        },
        { "12-damaged.txt", "5V 3A uncon; 9V 2A; unreadable; unreadable; padding", ["announces 4 objects; 2 whole words", "too short: 6 digits", "too long: 9 digits", "zero word"] },
        { "13-decoded-text-only.txt", "5V 3A drp+uncon; 9V 2.6A; pps 3.3-11V 2.5A | 5V 3A; 9V 2.6A; 4: pps 3.3-5.9V 3A; pps 3.3-11V 2.5A", ["a claim, not a decode", "position 3"] },
        { "14-byte-swapped-words.txt", "5V 3A uncon; 9V 3A; pps 3.3-11V 3A limited", ["not 5 V as written", "confirm"] },
        { "15-capture-with-prefix.txt", "5V 3A uncon; 9V 3A; 20V 3.25A; pps 3.3-21V 3.25A limited", ["first 6 bytes", "counted once", "no capability message"] },
    };

    public static TheoryData<string, string> Variations => new()
    {
        { "SOURCE CAPABILITIES:\r\n\tPDO[0]\t=\t0X0801912C\r\n\tPDO[1]\t=\t0X0002D12C\r\n", "5V 3A uncon; 9V 3A" },
        { "const uint32_t src_caps[] = { 0x0801912CUL, 0x0002D12CUL };", "5V 3A uncon; 9V 3A" },
        { "{\"source_caps\":[\"0x0801912C\",\"0x0002D12C\"],\"rdo\":\"0x1304B12C\"}", "5V 3A uncon; 9V 3A" },
        { "2031-04-17 12:30:15 pd: PDO1 0x0801912C\n2031-04-17 12:30:15 pd: PDO2 0x0002D12C\n2031-04-17 12:30:16 pd: request RDO 0x1304B12C\n", "5V 3A uncon; 9V 3A" },
        { "GOT source_cap hdr=0x21A1\n obj0=0x0801912C\n obj1=0x0002D12C\nSEND request hdr=0x1082\n obj0=0x2304B12C\n", "5V 3A uncon; 9V 3A" },
        { "21A1 0801912C 0002D12C", "5V 3A uncon; 9V 3A" },
        { "charger: 0x0801912C 0x0002D12C", "5V 3A uncon; 9V 3A" },
        { "0x0801912C\n0x0002D12C\n0x0801912C\n0x0002D12C\n", "5V 3A uncon; 9V 3A" },
        { "obj | word\n0 | 0801912C\n1 | 0002D12C\n3 | 0004B12C\n", "5V 3A uncon; 9V 3A; 4: 15V 3A" },
        { "unit A\n0801912C 0002D12C\n\nunit B\n0801912C 0004B12C\n", "5V 3A uncon; 9V 3A | 5V 3A uncon; 15V 3A" },
        { "role: source\npdo: 0801912C\nrole: sink\npdo: 0001912C\n", "5V 3A uncon" },
        { "Source caps: 0801912C 0002D12C 0004B1", "5V 3A uncon; 9V 3A; unreadable" },
        { "0x0801912C\n0x0O02D12C\n0x00064145", "5V 3A uncon; unreadable; 20V 3.25A" },
        { "0xA1, 0x21, 0x2C, 0x91, 0x01, 0x08, 0x2C, 0xD1, 0x02, 0x00", "5V 3A uncon; 9V 3A" },
        { "[12:01:02.331] RX: A1-21-2C-91-01-08-2C-D1-02-00", "5V 3A uncon; 9V 3A" },
        { "6121 2c910108 2cd10200", "5V 3A uncon; 9V 3A" },
        { "00000000: a171 2c91 010a 2cd1 0200 fac0 0300 c8b0  .q,...,.........\n00000010: 0400 9640 0600 2821 40c9 1e21 a4c9       ...@..(!@..!..\n", "5V 3A uncon+drd; 9V 3A; 12V 2.5A; 15V 2A; 20V 1.5A; pps 3.3-16V 2A limited; pps 3.3-21V 1.5A limited" },
        { "0000  a1 31 2c 91 01 0a 2c d1   |.q,...,.|\n0008  02 00 fa c0 03 00         |......|\n", "5V 3A uncon+drd; 9V 3A; 12V 2.5A" },
        { "2C 91 01 08 2C D1 02 00", "5V 3A uncon; 9V 3A" },
        { "A1 71 2C 91 01 0A 2C D1 02 00 FA C0", "5V 3A uncon+drd; 9V 3A; unreadable" },
        { "b1 8d 08 00 2c91910a2cd11200", "5V 3A uncon+drd+epr peak1; 9V 3A peak1" },
        { "log: PDO 0: type 0, 5000 mV, 3000 mA [E]\nlog: PDO 1: type 3, 3300-11000 mV, 3000 mA\n", "5V 3A; pps 3.3-11V 3A" },
        { "Output: 5V⎓3A, 9V⎓2.77A, 20V⎓3.25A\nPPS: 3.3–11V⎓3A", "5V 3A; 9V 2.77A; 20V 3.25A; pps 3.3-11V 3A" },
        { "5V3A 9V3A", "5V 3A; 9V 3A" },
        { "[ 3.2] source_cap hdr=0x21A1 0x0801912C 0x0002D12C crc=0x12345678", "5V 3A uncon; 9V 3A" },
        { "000123 GOT source_cap\n000124 0801912C\n000125 0002D12C\n", "5V 3A uncon; 9V 3A" },
        { "0x20000000: 0x0801912C 0x0002D12C\n0x20000008: 0x0004B12C 0x00064145\n", "5V 3A uncon; 9V 3A; 15V 3A; 20V 3.25A" },
        { "source-pdos = <0x0801912c 0x0002d12c>;\nsink-pdos = <0x0001912c>;\n", "5V 3A uncon; 9V 3A" },
        { "Sink: 0x0001912C\nSource: 0x0801912C\n", "5V 3A uncon" },
        { "raw a1212c9101082cd10200\n obj0=0x0801912C\n obj1=0x0002D12C\n", "5V 3A uncon; 9V 3A" },
        { "0801 912C 0002 D12C", "5V 3A uncon; 9V 3A" },
        { "INPUT: 100-240V~50/60Hz 1.8A\nUSB-C OUTPUT: 5V=3A, 20V=3.25A (65W MAX)\nPPS: 3.3-11V=5A", "5V 3A; 20V 3.25A; pps 3.3-11V 5A" },
        { "0x0801912C\n0x0002D12C\n0x0006", "5V 3A uncon; 9V 3A; unreadable" },
        { "GOT source_cap hdr=0x51A1\n obj0=0x0801912C\n obj1=0x0002D12C\n obj2=0x0004[boot:sample", "5V 3A uncon; 9V 3A; unreadable" },
        { "attach status\n0x0801912C\n0x0002D12C\n", "5V 3A uncon; 9V 3A" },
        { "1) 5 V @ 3 A\n2) 9 V @ 2 A\n", "5V 3A; 9V 2A" },
        { "3000mA @ 5000mV\n2000mA @ 9000mV\n", "5V 3A; 9V 2A" },
        { "PDO1: 5V/3A\nPDO2: 3.3V-11V/3A\n", "5V 3A; pps 3.3-11V 3A" },
        { "EPR_Source_Capabilities\n2B81912C 0002D12C D2309", "5V 3A drp+uncon+drd+unchunk+epr; 9V 3A; unreadable" },
        { "5,0 V 3,0 A; 9,0 V 2,77 A", "5V 3A; 9V 2.77A" },
        { "[1] Fixed 5V 3A [8] Fixed 28V 5A [9] EPR AVS 15-28V 140W", "5V 3A; 8: 28V 5A; epr_avs 15-28V 140W" },
        { "(1) 5V 3A\n(2) SPR AVS 9-15V 3A, 15-20V 2.25A", "5V 3A; spr_avs 9-20V 3/2.25A" },
    };

    [Theory]
    [MemberData(nameof(Samples))]
    public void Read_Sample_GivesItsSuppliesAndWarnings(string name, string supplies, string[] warnings)
    {
        var reading = Found(Encoding.UTF8.GetString(SampleFile.Bytes("UsbPd", name)));

        Assert.Equal(supplies, Short(reading.Lists));
        if (warnings.Length == 0)
            Assert.Empty(reading.Warnings);
        Assert.All(warnings, piece => Assert.Contains(reading.Warnings, warning => warning.Contains(piece, StringComparison.Ordinal)));
    }

    [Fact]
    public void Samples_OfTheFolder_AreAllRead() => Assert.Equal(SampleFile.Names("UsbPd"), Samples.Select(row => row.Data.Item1));

    [Theory]
    [MemberData(nameof(Samples))]
    public void Read_SampleWithOtherLineEndsAndCase_GivesTheSame(string name, string supplies, string[] warnings)
    {
        var text = Encoding.UTF8.GetString(SampleFile.Bytes("UsbPd", name)).Replace("\r", "", StringComparison.Ordinal);

        Assert.Equal(supplies, Short(Found(text.Replace("\n", "\r\n", StringComparison.Ordinal)).Lists));
        Assert.Equal(supplies, Short(Found("\uFEFF" + text.Replace(' ', '\t')).Lists));
        var lower = Found(text.Replace("0X", "0x", StringComparison.Ordinal));
        Assert.Equal(warnings.Length == 0, lower.Warnings.Count == 0);
    }

    [Theory]
    [MemberData(nameof(Variations))]
    public void Read_Variation_GivesItsSupplies(string text, string supplies) => Assert.Equal(supplies, Short(Found(text).Lists));

    [Theory]
    [InlineData("03-wire-bytes.txt", WordOrigin.Bytes)]
    [InlineData("01-words.txt", WordOrigin.Word)]
    [InlineData("13-decoded-text-only.txt", WordOrigin.Text)]
    public void Read_Origin_SaysWhatTheNumbersWereTakenFrom(string name, WordOrigin origin) =>
        Assert.All(Found(Encoding.UTF8.GetString(SampleFile.Bytes("UsbPd", name))).Lists.SelectMany(list => list.Items), item => Assert.Equal(origin, item.Origin));

    [Fact]
    public void Read_SinksListAlone_ComesWithItsLabel()
    {
        var list = Assert.Single(Found("Sink Capabilities:\n PDO1: 0x3601912c\n PDO2: 0x00064104").Lists);
        Assert.Equal((PortRole.Sink, "sink", 2), (list.Role, list.Label, list.Items.Count));
    }

    [Fact]
    public void Read_SwappedWords_KeepsThemAsWrittenToo() =>
        Assert.Equal([0x2C910108u, 0x2CD10200u], Found("2c910108 2cd10200").AsWritten!.Items.Select(item => item.Word!.Value));

    [Fact]
    public void Read_WrongCheckSum_IsSaid() => Assert.Contains(Found("611182900136f6a10844").Warnings, warning => warning.Contains("do not match", StringComparison.Ordinal));

    [Fact]
    public void Read_TextThatContradictsTheWord_IsSaidAndTheWordCounts()
    {
        var reading = Found("| 1 | `0x0801912C` | 5 V 3 A |\n| 2 | `0x0002D12C` | 12 V 3 A |");

        Assert.Equal("5V 3A uncon; 9V 3A", Short(reading.Lists));
        Assert.Contains(reading.Warnings, warning => warning.Contains("line 2 states other values", StringComparison.Ordinal));
    }

    [Theory]
    [InlineData(null)]
    [InlineData("")]
    [InlineData(" \r\n\t")]
    [InlineData("hello world")]
    [InlineData("\0\0\0")]
    [InlineData("12345678")]
    [InlineData("A1:11:22:33:44:55")]
    [InlineData("load:0x3fcd0810,len:0x438")]
    [InlineData("vbus=5.121V ibus=0.048A")]
    [InlineData("SRC b1bf24880000f4c11800f4411b00")]
    [InlineData("0x")]
    public void Read_NoList_IsRefusedWithWhatWouldBeRight(string? text)
    {
        var reason = Assert.IsType<CapabilityReading.Refused>(CapabilityText.Read(text)).Reason;
        Assert.Contains("words", reason, StringComparison.OrdinalIgnoreCase);
    }

    [Fact]
    public void Read_TooLongText_IsRefused() =>
        Assert.Contains("at most", Assert.IsType<CapabilityReading.Refused>(CapabilityText.Read(new string('a', CapabilityText.LongestText + 1))).Reason, StringComparison.Ordinal);

    [Fact]
    public void Read_PrintedWords_ComeBackInAnyStyle() => Gen.Select(Gen.UInt.List[1, 8], Gen.Int[0, 4]).Sample((others, style) =>
    {
        uint[] words = [0x0801912C, .. others.Where(word => word != 0 && !CapabilityWord.IsFiveVolts(word))];
        var text = style switch
        {
            0 => string.Join('\n', words.Select(CapabilityWord.Text)),
            1 => string.Join(", ", words.Select(word => word.ToString("x8", CultureInfo.InvariantCulture))),
            2 => "Source Capabilities\r\n" + string.Concat(words.Select((word, i) => $"  PDO{i + 1}: 0x{word:x8}\r\n")),
            3 => string.Concat(words.Select((word, i) => $"| {i + 1} | `0x{word:X8}` |\n")),
            _ => string.Join(';', words.Select(word => $"0{word:X8}"[1..] + "h")),
        };
        Assert.Equal(words, Assert.Single(Found(text).Lists).Items.Select(item => item.Word!.Value));
    });

    [Fact]
    public void Read_MessageBytes_ComeBackBehindAnyPrefix() => Gen.Select(Gen.UInt.List[0, 6], Gen.Byte.Array[0, 8], Gen.Bool).Sample((others, prefix, isSpaced) =>
    {
        uint[] words = [0x0801912C, .. others];
        byte[] bytes = [.. prefix.Select(b => (byte)(b & 0x0E)), 0xA1, (byte)(words.Length << 4 | 1), .. words.SelectMany(BitConverter.GetBytes)];
        var hex = Convert.ToHexString(bytes);
        var text = isSpaced ? string.Join(' ', hex.Chunk(2).Select(pair => new string(pair))) : hex;
        Assert.Equal(words, Assert.Single(Found(text).Lists).Items.Select(item => item.Word!.Value));
    });

    [Fact]
    public void Read_AnyText_NeverThrowsAndAlwaysAnswers() =>
        Gen.OneOf(Gen.String, Gen.String[Gen.Char["0123456789abcdefxXhHVAWm.,:;-/[](){}|=# \t\r\n_'$"], 0, 400], Pieces()).Sample(Answers, iter: 20_000);

    [Fact]
    public void Read_DamagedSample_NeverThrowsAndAlwaysAnswers() => Gen.Select(Gen.Int[0, Samples.Count - 1], Gen.Int[0, 2000], Gen.Int[0, 60], Gen.Char).Sample(
        (which, at, length, instead) =>
        {
            var text = Encoding.UTF8.GetString(SampleFile.Bytes("UsbPd", Samples.ElementAt(which).Data.Item1));
            var start = at % text.Length;
            Answers(text[..start] + instead + text[Math.Min(text.Length, start + length)..]);
        },
        iter: 5_000);

    [Theory]
    [InlineData("0x0801912C ")]
    [InlineData("0801912C\n")]
    [InlineData("a1 ")]
    [InlineData("a1")]
    [InlineData("hdr=0x51A1 obj0=0x0801912C\n")]
    [InlineData("[1] 5V 3A ")]
    [InlineData("[1] Fixed 5000 mV 3000 mA\n")]
    [InlineData("source capabilities sink capabilities ")]
    [InlineData(",")]
    [InlineData("5-")]
    [InlineData("1,1 V'")]
    [InlineData("0x1'1'")]
    [InlineData("a1712c91010a2cd1020\n")]
    [InlineData("b1fd24802c91910a2cd112002cb11400f441160000000000000000000000\n")]
    [InlineData("load 0x0801912C\n")]
    [InlineData("_")]
    public void Read_AsMuchAsIsTaken_TakesTimeInProportion(string piece)
    {
        var text = string.Concat(Enumerable.Repeat(piece, CapabilityText.LongestText / piece.Length));
        var began = Stopwatch.GetTimestamp();

        CapabilityText.Read(text);

        // What grows with the square of a million takes hours; this bound is far above what a slow machine needs.
        Assert.True(Stopwatch.GetElapsedTime(began) < TimeSpan.FromSeconds(15), $"{Stopwatch.GetElapsedTime(began)} for {piece}");
    }

    private static Gen<string> Pieces() => Gen.Int[0, Fragments.Length - 1].Select(i => Fragments[i]).List[0, 40].Select(string.Concat);

    private static void Answers(string text)
    {
        switch (CapabilityText.Read(text))
        {
            case CapabilityReading.Read read:
                Assert.NotEmpty(read.Lists);
                Assert.All(read.Lists.Concat(read.KeptApart), list => Assert.NotEmpty(list.Items));
                break;
            case CapabilityReading.Refused refused:
                Assert.True(refused.Reason.Length > 20);
                break;
            default:
                Assert.Fail("Every reading is known.");
                break;
        }
    }

    private static CapabilityReading.Read Found(string text) =>
        CapabilityText.Read(text) switch
        {
            CapabilityReading.Read read => read,
            var other => throw new InvalidOperationException($"{other} for {text}"),
        };

    // "5V 3A uncon; pps 3.3-11V 3A limited | ..." : lists parted by a bar, a position only where one was skipped.
    private static string Short(IEnumerable<CapabilityList> lists) =>
        string.Join(" | ", lists.Select(list => string.Join("; ", list.Items.Select((item, i) => (item.Position == (i == 0 ? 0 : list.Items[i - 1].Position) + 1 ? "" : $"{item.Position}: ") + Short(item.Capability)))));

    private static string Short(Capability capability) => capability switch
    {
        Capability.Fixed x => string.Create(CultureInfo.InvariantCulture, $"{x.VoltageMv / 1000m:0.##}V {x.MaxCurrentMa / 1000m:0.##}A{(x.Flags == 0 ? "" : " " + Short(x.Flags))}{(x.Peak == 0 ? "" : $" peak{(int)x.Peak}")}"),
        Capability.Battery x => string.Create(CultureInfo.InvariantCulture, $"battery {x.MinMv / 1000m:0.##}-{x.MaxMv / 1000m:0.##}V {x.MaxPowerMw / 1000m:0.##}W"),
        Capability.Variable x => string.Create(CultureInfo.InvariantCulture, $"variable {x.MinMv / 1000m:0.##}-{x.MaxMv / 1000m:0.##}V {x.MaxCurrentMa / 1000m:0.##}A"),
        Capability.SprPps x => string.Create(CultureInfo.InvariantCulture, $"pps {x.MinMv / 1000m:0.##}-{x.MaxMv / 1000m:0.##}V {x.MaxCurrentMa / 1000m:0.##}A{(x.IsPowerLimited ? " limited" : "")}"),
        Capability.SprAvs x => string.Create(CultureInfo.InvariantCulture, $"spr_avs 9-{x.Window!.Value.MaxMv / 1000m:0.##}V {x.CurrentTo15VMa / 1000m:0.##}/{x.CurrentTo20VMa / 1000m:0.##}A"),
        Capability.EprAvs x => string.Create(CultureInfo.InvariantCulture, $"epr_avs {x.MinMv / 1000m:0.##}-{x.MaxMv / 1000m:0.##}V {x.PdpW}W"),
        _ => SnakeCase.Code(capability.Kind),
    };

    private static string Short(SourceFlags flags) => string.Join('+', new[]
    {
        (SourceFlags.DualRolePower, "drp"), (SourceFlags.UsbSuspend, "susp"), (SourceFlags.UnconstrainedPower, "uncon"), (SourceFlags.UsbComm, "usbcomm"), (SourceFlags.DualRoleData, "drd"),
        (SourceFlags.UnchunkedExt, "unchunk"), (SourceFlags.EprCapable, "epr"),
    }.Where(flag => flags.HasFlag(flag.Item1)).Select(flag => flag.Item2));
}
