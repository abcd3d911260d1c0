using System.Globalization;
using System.Text;
using BenchmarkDotNet.Attributes;
using Catalogue.Domain.BenchLogs;

namespace Catalogue.Benchmarks.BenchLogs;

/// <summary>What reading a log of a million rows costs beside counting its lines and bytes.</summary>
public class BenchLogBenchmark
{
    private const int Rows = 1_000_000;
    private const int BlockBytes = 64 * 1024;

    private byte[] _log = [];

    /// <summary>How the log is written.</summary>
    [Params("iso", "counter", "comma")]
    public string Form { get; set; } = "iso";

    /// <summary>Writes the log.</summary>
    [GlobalSetup]
    public void Setup()
    {
        var start = new DateTime(2025, 1, 1);
        var text = new StringBuilder(Form == "comma" ? "Zeit;Spannung [V];Strom [mA]\r\n" : Form == "iso" ? "time,voltage_v,current_ma\n" : "time_s,voltage_v,current_ma\n");
        for (var i = 0; i < Rows; i++)
        {
            var (volt, milliampere) = (4.2 - (i % 997 / 1000.0), 1000 + (i % 89 / 10.0));
            text.Append(Form switch
            {
                "iso" => string.Create(CultureInfo.InvariantCulture, $"{start.AddMilliseconds(100L * i):yyyy-MM-ddTHH:mm:ss.fff},{volt:0.0000},{milliampere:0.00}\n"),
                "counter" => string.Create(CultureInfo.InvariantCulture, $"{i * 0.1:0.0},{volt:0.0000},{milliampere:0.00}\n"),
                _ => string.Create(CultureInfo.InvariantCulture, $"{start.AddMilliseconds(100L * i):dd.MM.yyyy HH:mm:ss,fff};{volt:0.0000};{milliampere:0.00}\r\n").Replace('.', ',').Replace(",01,2025", ".01.2025", StringComparison.Ordinal),
            });
        }

        _log = Encoding.UTF8.GetBytes(text.ToString());
    }

    /// <summary>Lines and bytes alone, in the same blocks.</summary>
    [Benchmark(Baseline = true)]
    public long CountLinesAndBytes()
    {
        long lines = 0, bytes = 0;
        for (var at = 0; at < _log.Length; at += BlockBytes)
        {
            var block = _log.AsSpan(at, Math.Min(BlockBytes, _log.Length - at));
            lines += block.Count((byte)'\n');
            foreach (var value in block)
                bytes += value;
        }

        return lines + bytes;
    }

    /// <summary>The log as it is read from an upload.</summary>
    [Benchmark]
    public BenchLogReading Read()
    {
        var reader = new BenchLogReader();
        for (var at = 0; at < _log.Length; at += BlockBytes)
            reader.Push(_log.AsSpan(at, Math.Min(BlockBytes, _log.Length - at)));
        return reader.Complete();
    }
}
