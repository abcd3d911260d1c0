using BenchmarkDotNet.Attributes;
using Catalogue.Domain.UsbPd;

namespace Catalogue.Benchmarks.UsbPd;

/// <summary>What a decoded list costs beside the bare masks of its numbers, and what reading it out of a log costs beside that.</summary>
public class CapabilityWordBenchmark
{
    private static readonly uint[] Words = [0x0801912C, 0x0002D12C, 0x0003C12C, 0x0004B12C, 0x00064145, 0xC8DC2137, 0xC1A42141];

    private static readonly string Log = "118: attached on cc2\n" + string.Concat(Words.Select((word, i) => $"{120 + i}:   obj{i}=0x{word:X8}\n"));

    /// <summary>Voltage and current of each word, nothing else.</summary>
    [Benchmark(Baseline = true)]
    public uint BareMasks()
    {
        var sum = 0u;
        foreach (var word in Words)
            sum += (word >> 30) == 0 ? ((word >> 10 & 0x3FF) * 50) + ((word & 0x3FF) * 10) : ((word >> 17 & 0xFF) * 100) + ((word >> 8 & 0xFF) * 100) + ((word & 0x7F) * 50);
        return sum;
    }

    /// <summary>Each word as a record.</summary>
    [Benchmark]
    public int Decode()
    {
        var sum = 0;
        for (var i = 0; i < Words.Length; i++)
            sum += CapabilityWord.Decode(Words[i], i + 1).HighestCurrentMa ?? 0;
        return sum;
    }

    /// <summary>The list with all that is noticed of it.</summary>
    [Benchmark]
    public CapabilityList List() => CapabilityList.Of(Words);

    /// <summary>The list out of a log of eight lines.</summary>
    [Benchmark]
    public CapabilityReading ReadLog() => CapabilityText.Read(Log);
}
