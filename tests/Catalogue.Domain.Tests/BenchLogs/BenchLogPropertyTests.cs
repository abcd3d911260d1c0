using System.Globalization;
using System.Text;
using Catalogue.Domain.BenchLogs;
using CsCheck;

namespace Catalogue.Domain.Tests.BenchLogs;

/// <summary>What holds for every log, well formed or not.</summary>
public sealed class BenchLogPropertyTests
{
    private static readonly Gen<(int Step, int Millivolt, int Milliampere)[]> GenSamples =
        Gen.Select(Gen.Int[1, 9000], Gen.Int[1, 60_000], Gen.Int[-9000, 9000]).Array[2, 40];

    private static readonly string[] Bases =
    [
        Logs.Sweep, Logs.AutoRange, Logs.ClockTrouble,
        "SUM,2\nDateTime,2025-05-06 07:08:09\n\nTime(hh:mm:ss),Voltage(V),Current(A),Segment,\n=\"00:00:00\",5,1,1,\n=\"00:00:02\",5,1,2,\n",
        "Zeit;U [mV];I [mA];Bemerkung\r\n01.02.2025 10:00:00,5;1.204,5;3,25;\"a; b\"\r\n01.02.2025 10:00:01,5;1.204,5;OL;\"c\nd\"\r\n",
        "time_s\tV_in\tI_in\tV_out\tI_out\n0\t20\t1\t5\t3\n1\t20\t1\t5\t3\n2\t20\t1\t5\t-\n",
    ];

    [Fact]
    public void Read_InAnotherUnit_GivesTheSame() => GenSamples.Sample(samples =>
    {
        var plain = Logs.Read(Text(samples, "time_s,voltage_V,current_A", 1e-3m, 1e-3m));
        var milli = Logs.Read(Text(samples, "time_s,voltage_mV,current_mA", 1, 1));
        var micro = Logs.Read(Text(samples, "time_s,voltage_uV,current_µA", 1000, 1000));

        foreach (var other in new[] { milli, micro })
        {
            AssertClose(plain.ChargeAh, other.ChargeAh);
            AssertClose(plain.EnergyWh, other.EnergyWh);
            AssertClose(plain.PeakW, other.PeakW);
            Assert.Equal(plain.DurationS, other.DurationS);
        }
    }, iter: 200);

    [Fact]
    public void Read_LogInTwoParts_AddsUp() => Gen.Select(GenSamples, Gen.Int[0, 1000]).Sample((samples, cut) =>
    {
        const string Header = "time_s,voltage_mV,current_mA";
        var all = Text(samples, Header, 1, 1).Split('\n', StringSplitOptions.RemoveEmptyEntries);
        // The sample at the cut belongs to both parts, as the step ends there and begins there.
        var at = 1 + (cut % samples.Length);
        var first = Logs.Read(string.Join('\n', all[..(at + 1)]) + "\n");
        var second = Logs.Read(string.Join('\n', [Header, .. all[at..]]) + "\n");
        var whole = Logs.Read(string.Join('\n', all) + "\n");

        AssertClose(whole.ChargeAh, (first.ChargeAh ?? 0) + (second.ChargeAh ?? 0));
        AssertClose(whole.EnergyWh, (first.EnergyWh ?? 0) + (second.EnergyWh ?? 0));
        AssertClose(whole.DurationS, (first.DurationS ?? 0) + (second.DurationS ?? 0));
    }, iter: 200);

    [Fact]
    public void Read_ConstantPower_IsPowerTimesTime() => GenSamples.Sample(samples =>
    {
        var constant = samples.Select(sample => (sample.Step, samples[0].Millivolt, samples[0].Milliampere)).ToArray();

        var log = Logs.Read(Text(constant, "time_s,voltage_mV,current_mA", 1, 1));

        AssertClose(samples[0].Millivolt * 1e-3 * samples[0].Milliampere * 1e-3 * log.DurationS / 3600, log.EnergyWh);
    }, iter: 200);

    [Fact]
    public void Push_CutAnywhere_ReadsTheSame() => Gen.Select(Gen.Int[0, Bases.Length - 1], Gen.Int[1, 40], Gen.Bool).Sample((index, block, isWide) =>
    {
        var encoding = isWide ? Encoding.Unicode : Encoding.UTF8;
        byte[] bytes = [.. encoding.GetPreamble(), .. encoding.GetBytes(Long(Bases[index]))];
        var reader = new BenchLogReader();
        for (var at = 0; at < bytes.Length; at += block)
            reader.Push(bytes.AsSpan(at, Math.Min(block, bytes.Length - at)));

        var pieces = Assert.IsType<BenchLogReading.Read>(reader.Complete()).Log;
        var whole = Logs.Read(bytes);

        Assert.Equal((whole.Samples, whole.DurationS, whole.ChargeAh, whole.EnergyWh, whole.Encoding), (pieces.Samples, pieces.DurationS, pieces.ChargeAh, pieces.EnergyWh, pieces.Encoding));
        Assert.Equal(whole.Warnings, pieces.Warnings);
    }, iter: 60);

    [Fact]
    public void Read_DamagedLogs_NeverThrowAndNeverGiveWhatIsNoNumber() =>
        Gen.Select(Gen.Int[0, Bases.Length - 1], Gen.Select(Gen.Int[0, 5], Gen.Int[0, 100_000], Gen.Byte).Array[0, 12], Gen.Int[0, 2]).Sample((index, damages, answer) =>
        {
            var bytes = Encoding.UTF8.GetBytes(Bases[index]).ToList();
            foreach (var (kind, place, value) in damages)
                Damage(bytes, kind, place % Math.Max(1, bytes.Count), value);

            AssertSound(BenchLogReader.Read(bytes.ToArray(), new BenchLogOptions { StepBack = (BenchLogStepBack)answer }));
        }, iter: 3000);

    [Theory]
    [InlineData("1e308", "1e308")]
    [InlineData("1e300", "1")]
    [InlineData("-1e15", "999999999999999")]
    [InlineData("1e-320", "1e-320")]
    [InlineData("99999999999999999999999999999999999999999999", "0.00000000000000000000000000000000000000001")]
    [InlineData("1e99999999999", "-1e-99999999999")]
    public void Read_AbsurdNumbers_AreNeverSummedToInfinity(string volt, string ampere) =>
        AssertSound(BenchLogReader.Read(Encoding.UTF8.GetBytes($"time_s,V,A\n0,{volt},{ampere}\n1,{volt},{ampere}\n1e18,{volt},{ampere}\n")));

    [Fact]
    public void Read_MonstrousCellsAndLines_AreBounded()
    {
        var good = Encoding.UTF8.GetBytes("0,5,1\n10,5,1\n");
        byte[] bigCell = [.. "time_s,V,A\n"u8, .. good, .. new byte[10 * 1024 * 1024].Select(_ => (byte)'7'), (byte)'\n', .. "20,5,1\n"u8];
        var log = Logs.Read(bigCell);
        Assert.Equal((3, 20.0), (log.Samples, log.DurationS));
        Assert.Contains(log.Warnings, warning => warning.Text.Contains("longer than", StringComparison.Ordinal));

        var wide = string.Join(',', Enumerable.Range(0, 100_000).Select(i => i.ToString(CultureInfo.InvariantCulture)));
        AssertSound(BenchLogReader.Read(Encoding.UTF8.GetBytes("a," + wide + "\n" + wide + "\n" + wide + "\n")));
        AssertSound(BenchLogReader.Read(Encoding.UTF8.GetBytes("time_s,V,A\n0,5,1\n" + new string('"', 3_000_001) + "\n10,5,1\n")));
        AssertSound(BenchLogReader.Read(Encoding.UTF8.GetBytes("time_s,V,A\n" + string.Concat(Enumerable.Repeat("\"0,\"5,1\n", 20_000)))));
        AssertSound(BenchLogReader.Read(new byte[300_000]));
    }

    [Fact]
    public void Push_LongerLog_NeedsNoMoreMemory()
    {
        Measure(2_000);
        var (shorter, longer) = (Measure(40_000), Measure(240_000));

        Assert.True(longer - shorter < 40_000, $"200,000 more rows took {longer - shorter} bytes more: {shorter} and {longer}.");
    }

    private static long Measure(int rows)
    {
        var reader = new BenchLogReader();
        var before = GC.GetAllocatedBytesForCurrentThread();
        reader.Push("time,voltage_mV,current_mA,remark\n"u8);
        var row = "2025-01-01 00:00:00.000,5000.25,-1234.5,\n"u8.ToArray();
        for (var i = 0; i < rows; i++)
        {
            var second = i / 10;
            TimeSpan.FromSeconds(second).TryFormat(row.AsSpan(11), out _, "hh\\:mm\\:ss", CultureInfo.InvariantCulture);
            row[20] = (byte)('0' + (i % 10));
            reader.Push(row);
        }

        var log = Assert.IsType<BenchLogReading.Read>(reader.Complete()).Log;
        var allocated = GC.GetAllocatedBytesForCurrentThread() - before;
        Assert.Equal((rows, (rows - 1) / 10.0), (log.Samples, Math.Round(log.DurationS!.Value, 6)));
        return allocated;
    }

    private static void Damage(List<byte> bytes, int kind, int place, byte value)
    {
        if (bytes.Count == 0)
            return;
        switch (kind)
        {
            case 0:
                bytes[place] = value;
                break;
            case 1:
                bytes.RemoveRange(place, bytes.Count - place);
                break;
            case 2:
                bytes.InsertRange(place, new byte[value % 40]);
                break;
            case 3:
                bytes.Insert(place, (byte)"\",;\t\n\r.-+eE0=:"[value % 14]);
                break;
            case 4:
                bytes.RemoveRange(place, Math.Min(value, bytes.Count - place));
                break;
            default:
                bytes.InsertRange(place, Encoding.UTF8.GetBytes("9e999,"));
                break;
        }
    }

    private static void AssertSound(BenchLogReading reading)
    {
        if (reading is BenchLogReading.Refused refused)
        {
            Assert.NotEmpty(refused.Reason);
            return;
        }

        var log = Assert.IsType<BenchLogReading.Read>(reading).Log;
        // Every number of the log, wherever it stands, goes through here; a NaN or an infinity cannot be written.
        var json = System.Text.Json.JsonSerializer.Serialize(log);
        Assert.NotEmpty(json);
        Assert.True(log.DurationS is null or > 0);
        if (log.DurationS is null || log.ChargeAh is null || log.EnergyWh is null)
            Assert.Contains(log.Warnings, warning => warning.Kind is BenchLogWarningKind.Missing or BenchLogWarningKind.Order);
    }

    private static void AssertClose(double? expected, double? actual)
    {
        Assert.NotNull(expected);
        Assert.NotNull(actual);
        Assert.Equal(expected.Value, actual.Value, 1e-9 + (Math.Abs(expected.Value) * 1e-9));
    }

    private static string Long(string text) => text.TrimEnd('\n') + "\n";

    private static string Text((int Step, int Millivolt, int Milliampere)[] samples, string header, decimal voltScale, decimal ampereScale)
    {
        var text = new StringBuilder(header).Append('\n');
        var time = 0;
        foreach (var (step, millivolt, milliampere) in samples)
        {
            text.Append(CultureInfo.InvariantCulture, $"{time},{millivolt * voltScale},{milliampere * ampereScale}\n");
            time += step;
        }

        return text.ToString();
    }
}
