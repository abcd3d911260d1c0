using System.Buffers.Binary;
using System.Globalization;

namespace Catalogue.Domain.UsbPd;

/// <summary>Reads and writes the 32-bit words of a source's capability list.</summary>
/// <remarks>
/// <para>Source: USB Power Delivery 3.2, tables 6.7 to 6.15. Bit 31 is the most significant; on the wire the least significant byte goes first.</para>
/// <para>
/// Trap: tables 6.11 and 6.12 of that edition print the type codes of variable and battery the wrong way round. Table 6.7 and the text beside
/// them (battery 01, variable 10) are what every source does, and what is used here.
/// </para>
/// </remarks>
public static class CapabilityWord
{
    private const uint FixedType = 0b00, BatteryType = 0b01, VariableType = 0b10, AugmentedType = 0b11;
    private const uint PpsType = 0b00, EprAvsType = 0b01, SprAvsType = 0b10;
    private const uint FlagBits = 0x3F80_0000;
    private const uint FixedFiveVolts = 100u << 10;

    /// <summary>The capability a word stands for. Never <see cref="Capability.Unreadable"/>: every word is of some kind.</summary>
    /// <param name="word">Any word; zero is padding.</param>
    /// <param name="position">Its place in the list, from 1: flags are read from the first object and from a 5 V one, nowhere else.</param>
    public static Capability Decode(uint word, int position)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(position, 1);
        if (word == 0)
            return new Capability.Padding();
        return (word >> 30) switch
        {
            FixedType => new Capability.Fixed(
                Field(word, 10, 10) * 50, Field(word, 0, 10) * 10, (PeakCurrent)Field(word, 20, 2), CarriesFlags(word, position) ? (SourceFlags)(word & FlagBits) : SourceFlags.None),
            BatteryType => new Capability.Battery(Field(word, 10, 10) * 50, Field(word, 20, 10) * 50, Field(word, 0, 10) * 250),
            VariableType => new Capability.Variable(Field(word, 10, 10) * 50, Field(word, 20, 10) * 50, Field(word, 0, 10) * 10),
            _ => (word >> 28 & 0b11) switch
            {
                PpsType => new Capability.SprPps(Field(word, 8, 8) * 100, Field(word, 17, 8) * 100, Field(word, 0, 7) * 50, Field(word, 27, 1) == 1),
                EprAvsType => new Capability.EprAvs(Field(word, 8, 8) * 100, Field(word, 17, 9) * 100, Field(word, 0, 8), (PeakCurrent)Field(word, 26, 2)),
                SprAvsType => new Capability.SprAvs(Field(word, 10, 10) * 10, Field(word, 0, 10) * 10, (PeakCurrent)Field(word, 26, 2)),
                _ => new Capability.ReservedApdo(word),
            },
        };
    }

    /// <summary>The bits of a word that its kind has to leave zero and that are not; 0 for a well-formed word.</summary>
    /// <param name="word">Any word.</param>
    /// <param name="position">Its place in the list, from 1.</param>
    public static uint ReservedBits(uint word, int position) => word & ((word >> 30) switch
    {
        FixedType => CarriesFlags(word, position) ? 0x0040_0000u : 0x0040_0000u | FlagBits,
        BatteryType or VariableType => 0u,
        _ => (word >> 28 & 0b11) switch
        {
            PpsType => 0x0601_0080u,
            EprAvsType => 0x0001_0000u,
            SprAvsType => 0x03F0_0000u,
            _ => 0u,
        },
    });

    /// <summary>The word of a capability. For every well-formed word, encoding what was decoded gives the word.</summary>
    /// <param name="capability">The capability.</param>
    /// <returns>The word, or the first value that does not fit. A damaged word has none.</returns>
    public static WordEncoding Encode(Capability capability)
    {
        ArgumentNullException.ThrowIfNull(capability);
        var writing = new Writing();
        switch (capability)
        {
            case Capability.Fixed x:
                writing.Put("voltage", "mV", x.VoltageMv, 10, 10, 50);
                writing.Put("current", "mA", x.MaxCurrentMa, 0, 10, 10);
                writing.Put(x.Peak, 20);
                writing.Put(x.Flags);
                // A word of nothing but zeros is padding, so this one supply cannot be written.
                writing.Refuse(x is { VoltageMv: 0, MaxCurrentMa: 0, Peak: PeakCurrent.None, Flags: SourceFlags.None }, "A fixed supply of 0 V and 0 A would be read as padding.");
                break;
            case Capability.Battery x:
                writing.Put(BatteryType, 30);
                writing.Put("lowest voltage", "mV", x.MinMv, 10, 10, 50);
                writing.Put("highest voltage", "mV", x.MaxMv, 20, 10, 50);
                writing.Put("power", "mW", x.MaxPowerMw, 0, 10, 250);
                break;
            case Capability.Variable x:
                writing.Put(VariableType, 30);
                writing.Put("lowest voltage", "mV", x.MinMv, 10, 10, 50);
                writing.Put("highest voltage", "mV", x.MaxMv, 20, 10, 50);
                writing.Put("current", "mA", x.MaxCurrentMa, 0, 10, 10);
                break;
            case Capability.SprPps x:
                writing.Put((AugmentedType << 2) | PpsType, 28);
                writing.Put("lowest voltage", "mV", x.MinMv, 8, 8, 100);
                writing.Put("highest voltage", "mV", x.MaxMv, 17, 8, 100);
                writing.Put("current", "mA", x.MaxCurrentMa, 0, 7, 50);
                writing.Put(x.IsPowerLimited ? 1u : 0u, 27);
                break;
            case Capability.SprAvs x:
                writing.Put((AugmentedType << 2) | SprAvsType, 28);
                writing.Put("current to 15 V", "mA", x.CurrentTo15VMa, 10, 10, 10);
                writing.Put("current to 20 V", "mA", x.CurrentTo20VMa, 0, 10, 10);
                writing.Put(x.Peak, 26);
                break;
            case Capability.EprAvs x:
                writing.Put((AugmentedType << 2) | EprAvsType, 28);
                writing.Put("lowest voltage", "mV", x.MinMv, 8, 8, 100);
                writing.Put("highest voltage", "mV", x.MaxMv, 17, 9, 100);
                writing.Put("power", "W", x.PdpW, 0, 8, 1);
                writing.Put(x.Peak, 26);
                break;
            case Capability.ReservedApdo x:
                writing.Put(x.Word, 0);
                writing.Refuse(x.Word >> 28 != 0b1111, $"{Text(x.Word)} is not of the reserved type.");
                break;
            case Capability.Padding:
                break;
            default:
                writing.Refuse(true, "A damaged word has no word to write.");
                break;
        }

        return writing.Outcome;
    }

    /// <summary>True for a fixed supply of 5 V, as which every list begins.</summary>
    public static bool IsFiveVolts(uint word) => (word & 0xC00F_FC00) == FixedFiveVolts;

    /// <summary>The word whose bytes stand in the opposite order.</summary>
    public static uint Swapped(uint word) => BinaryPrimitives.ReverseEndianness(word);

    /// <summary>A word as it is written everywhere here: <c>0x</c> and eight hexadecimal digits.</summary>
    public static string Text(uint word) => string.Create(CultureInfo.InvariantCulture, $"0x{word:X8}");

    // Only the 5 V object carries flags. A list has it first; read in the middle of a list it is still a 5 V object.
    private static bool CarriesFlags(uint word, int position) => position == 1 || IsFiveVolts(word);

    private static int Field(uint word, int lowest, int width) => (int)(word >> lowest & ((1u << width) - 1));

    private struct Writing
    {
        private uint _word;
        private string? _reason;

        public readonly WordEncoding Outcome => _reason is null ? new WordEncoding.Encoded(_word) : new WordEncoding.Refused(_reason);

        public void Put(uint bits, int lowest) => _word |= bits << lowest;

        public void Put(string what, string unit, int value, int lowest, int width, int step)
        {
            var most = ((1 << width) - 1) * step;
            Refuse(value < 0 || value > most || value % step != 0, string.Create(CultureInfo.InvariantCulture, $"The {what} is 0 to {most} {unit} in steps of {step}; it was {value}."));
            _word |= (uint)(value / step & ((1 << width) - 1)) << lowest;
        }

        public void Put(PeakCurrent peak, int lowest)
        {
            Refuse(!Enum.IsDefined(peak), "The peak current code is 0 to 3.");
            _word |= ((uint)peak & 0b11) << lowest;
        }

        public void Put(SourceFlags flags)
        {
            Refuse(((uint)flags & ~FlagBits) != 0, "There are flags that no word has.");
            _word |= (uint)flags & FlagBits;
        }

        public void Refuse(bool when, string reason) => _reason ??= when ? reason : null;
    }
}
