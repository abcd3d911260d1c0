using System.Globalization;
using System.Text;
using Catalogue.Domain.BenchLogs;

namespace Catalogue.Domain.Tests.BenchLogs;

public sealed class BenchLogReaderTests
{
    private const double Close = 1e-9;

    [Fact]
    public void Read_IsoTimeOverAClockChange_IsTakenAsWritten()
    {
        var log = Logs.Read("""
            timestamp,elapsed_s,pack_voltage_v,charge_current_mA,temperature_c,mode
            2025-03-30T01:59:50,0,7.60,500.0,21.5,charging
            2025-03-30T02:00:00,10,7.62,500.0,21.6,charging
            2025-03-30T02:00:10,20,7.64,-0.5,21.7,idle
            """);

        Assert.Equal((3, 20.0, 10.0), (log.Samples, log.DurationS, log.MedianStepS));
        Assert.Equal(((500 * 10) + (0.5 * 499.5 * 10)) / 3600 / 1000, log.ChargeAh!.Value, Close);
        Assert.Equal((7.60, 7.64, -0.0005, 0.5), (log.Voltage!.Minimum, log.Voltage.Maximum, log.Current!.Minimum, log.Current.Maximum));
        Assert.Equal(new DateTime(2025, 3, 30, 1, 59, 50), log.Start);
        Assert.Equal(("mA", BenchLogUnitSource.Name), (log.Columns[3].Unit, log.Columns[3].Source));
        Assert.Equal((BenchLogRole.Temperature, 21.7), (log.Role("temperature_c"), log.Columns[4].Maximum));
        Assert.Empty(log.Warnings);
        Assert.Contains(log.Assumptions, text => text.Contains("as written", StringComparison.Ordinal));
    }

    [Fact]
    public void Read_SemicolonsAndDecimalCommasInWindows1252_TellsGapAndDirection()
    {
        var text = "Zeit;Spannung [V];Strom [A];Temp. [°C];Bemerkung\r\n"
            + "03.02.2025 09:00:00,000;12,000;2,0000;30,5;\r\n03.02.2025 09:00:01,500;12,000;2,0000;30,5;\r\n03.02.2025 09:00:03,000;12,000;2,0000;30,5;\r\n"
            + "03.02.2025 09:01:03,000;12,000;-0,5000;30,9;Last ab – Rückspeisung\r\n";

        var log = Logs.Read(CodePagesEncodingProvider.Instance.GetEncoding(1252)!.GetBytes(text));

        Assert.Equal(("windows-1252", ';', ',', 63.0), (log.Encoding, log.Delimiter, log.DecimalMark, log.DurationS));
        Assert.Equal("Temp. [°C]", log.Columns[3].Name);
        Assert.Equal((6 + 45) / 3600.0, log.ChargeAh!.Value, Close);
        Assert.Equal((3.0, 6 / 3600.0, 72 / 3600.0), (log.WithoutGaps!.DurationS!.Value, log.WithoutGaps.ChargeAh!.Value, Math.Round(log.WithoutGaps.EnergyWh!.Value, 12)));
        Assert.Contains("60 s", log.Of(BenchLogWarningKind.Gap).Single().Text, StringComparison.Ordinal);
        Assert.Contains("turns negative", log.Of(BenchLogWarningKind.Direction).Single().Text, StringComparison.Ordinal);
    }

    [Fact]
    public void Read_PreambleFormulaTextsAndSegments_AreUnderstood()
    {
        var log = Logs.Read("""
            SUM,4
            TotalTime,="00:00:06.000"
            DateTime,2025-05-06 07:08:09

            Time(D.hh:mm:ss.ms),Voltage(V),Current(A),D+(V),RelativeTime(s),RecordingSegment,
            ="00:00:00.000",5.00,1.00,0.6,0,1,
            ="00:00:02.000",5.00,1.00,0.6,2,1,
            ="00:00:04.000",5.00,2.00,0.6,4,2,
            ="00:00:06.000",5.00,2.00,0.6,6,2,
            """);

        Assert.Equal((4, 6.0, new DateTime(2025, 5, 6, 7, 8, 9)), (log.Samples, log.DurationS, log.Start));
        Assert.Equal(9 / 3600.0, log.ChargeAh!.Value, Close);
        Assert.Equal(BenchLogRole.Other, log.Role("D+(V)"));
        Assert.Collection(
            log.Segments,
            first => Assert.Equal(("1", 2, 2.0, 2 / 3600.0, 10 / 3600.0), (first.Name, first.Samples, first.DurationS, first.ChargeAh, first.EnergyWh)),
            second => Assert.Equal(("2", 2, 2.0, 4 / 3600.0, 20 / 3600.0), (second.Name, second.Samples, second.DurationS, second.ChargeAh, second.EnergyWh)));
        Assert.Equal(3, log.Preamble.Count);
        Assert.Contains(log.Warnings, warning => warning.Text.Contains("nameless", StringComparison.Ordinal));
        Assert.Contains(log.Warnings, warning => warning.Text.Contains("no formula is run", StringComparison.Ordinal));
    }

    [Fact]
    public void Read_FunctionWordsBeforeNumbers_LeaveVoltageAlone()
    {
        var log = Logs.Read("timestamp,voltage_V\r\n2025-06-02T10:00:00.5,VOLT:DC +3.3000E+00\r\n2025-06-02T10:00:01.5,VOLT:DC -3.0000E-03\r\n2025-06-02T10:00:02.5,VOLT:DC +3.3030E+00\r\n");

        Assert.Equal((-0.003, 3.303, 2.2), (log.Voltage!.Minimum, log.Voltage.Maximum, Math.Round(log.MeanVoltageV!.Value, 12)));
        Assert.Equal((null, null, null), (log.ChargeAh, log.EnergyWh, log.PeakW));
        Assert.Contains("No current", log.Of(BenchLogWarningKind.Missing).Single().Text, StringComparison.Ordinal);
    }

    [Fact]
    public void Read_PowerWithoutCurrent_WorksTheCurrentOut()
    {
        var log = Logs.Read("\"Time (s)\",\"Volts (mV)\",\"Power (mW)\",\"Remaining %\"\r\n\"10\",\"4000\",\"8000\",\"83\"\r\n\"15\",\"4000\",\"6000\",\"82\"\r\n\"17\",\"4000\",\"4000\",\"82\"\r\n");

        Assert.Equal((7.0, 8.0, 4.0), (log.DurationS, log.PeakW, log.Power!.Minimum));
        Assert.Equal((35 + 10) / 3600.0, log.EnergyWh!.Value, Close);
        Assert.Equal((2.0, 1.0), (log.Current!.Maximum, log.Current.Minimum));
        Assert.Contains("worked out", log.Of(BenchLogWarningKind.WorkedOut).Single().Text, StringComparison.Ordinal);
    }

    [Fact]
    public void Read_SetValuesAndForeignSensors_AreNoMeasurements()
    {
        var log = Logs.Read(Logs.Sweep);

        Assert.Equal((1.0, 2.5, 0.1, 0.5), (log.Voltage!.Minimum, log.Voltage.Maximum, log.Current!.Minimum, log.Current.Maximum));
        Assert.Equal((0.6 + 2.1) / 3600, log.ChargeAh!.Value, Close);
        Assert.Equal((BenchLogRole.SetValue, BenchLogRole.SetValue, BenchLogRole.InputVoltage, BenchLogRole.Text), (log.Role("USET[V]"), log.Role("ISET[A]"), log.Role("UIN[V]"), log.Role("cmt")));
        Assert.Equal(["Set values are not measurements and are not used: USET[V], ISET[A].", "Columns not used: PROT, Lux."], log.Warnings.Select(warning => warning.Text));
    }

    [Fact]
    public void Read_UnitColumnOverMidnight_AsksAndNeverTakesOverloadAsZero()
    {
        var log = Logs.Read(Logs.AutoRange);

        Assert.Equal((6, 3, 1, -0.00045, 4.75), (log.Samples, log.Voltage!.Samples, log.Voltage.Overloads, log.Voltage.Minimum, log.Voltage.Maximum));
        Assert.Equal((-7.5e-6, 3300.0), (log.Current!.Minimum, log.Resistance!.Maximum));
        Assert.Equal((null, null, null), (log.DurationS, log.ChargeAh, log.EnergyWh));
        Assert.Contains("next day", log.Warnings.Single(warning => warning.IsQuestion).Text, StringComparison.Ordinal);

        var answered = Logs.Read(Logs.AutoRange, new BenchLogOptions { StepBack = BenchLogStepBack.NextDay });
        Assert.Equal(12.0, answered.DurationS);
        Assert.DoesNotContain(answered.Warnings, warning => warning.IsQuestion);
    }

    [Fact]
    public void Read_MicroampereInShortSteps_LeavesEnergyOpen()
    {
        var log = Logs.Read("Timestamp(ms),Current(uA),D0-D3\n0.00,20.0,0000\n0.02,20.0,0001\n0.04,40.0,0011\n");

        Assert.Equal((4e-5, 2e-5, 4e-5, null), (log.DurationS!.Value, log.Current!.Minimum!.Value, log.Current.Maximum!.Value, log.EnergyWh));
        Assert.Equal(1e-9 / 3600, log.ChargeAh!.Value, 1e-20);
        Assert.Equal(BenchLogRole.Digital, log.Role("D0-D3"));
        Assert.Contains("No voltage", log.Of(BenchLogWarningKind.Missing).Single().Text, StringComparison.Ordinal);
    }

    [Fact]
    public void Read_ClockThatGoesBack_IsAskedAndNeverSorted()
    {
        var log = Logs.Read(Logs.ClockTrouble);

        Assert.Equal((9, 8, 5), (log.Samples, log.CompleteSamples, log.UsableSamples));
        Assert.Equal((null, null, null), (log.DurationS, log.ChargeAh, log.EnergyWh));
        Assert.Equal(12.0, log.ForwardOnly!.DurationS);
        Assert.Contains("3598 s in line 4", log.Of(BenchLogWarningKind.Order).Single().Text, StringComparison.Ordinal);
        Assert.True(log.Of(BenchLogWarningKind.Order).Single().IsQuestion);
        Assert.StartsWith("1 doubled sample", log.Of(BenchLogWarningKind.Doubled).Single().Text, StringComparison.Ordinal);
        Assert.StartsWith("3 unusable values: 1 overload", log.Of(BenchLogWarningKind.Unusable).Single().Text, StringComparison.Ordinal);
        Assert.Contains("(11)", log.Of(BenchLogWarningKind.CutOff).Single().Text, StringComparison.Ordinal);
        Assert.Contains(log.Warnings, warning => warning.Text.Contains("repeated once, first in line 8", StringComparison.Ordinal));
        Assert.Equal((0.0, false), (log.Current!.Minimum!.Value, double.IsNegative(log.Current.Minimum.Value)));

        var separate = Logs.Read(Logs.ClockTrouble, new BenchLogOptions { StepBack = BenchLogStepBack.Separate });
        Assert.Equal((12.0, log.ForwardOnly.ChargeAh, log.ForwardOnly.EnergyWh), (separate.DurationS, separate.ChargeAh, separate.EnergyWh));
    }

    [Fact]
    public void Read_SpreadsheetDayNumbers_AreReadWithThe1900SystemAndSaid()
    {
        var log = Logs.Read("Date;U;I;mAh\n45700,25;5,000;0,500;2.000,5\n45700,250231;5,000;0,500;2.003,0\n45700,250463;5,000;0,500;2.006,0\n");

        Assert.Equal(new DateTime(2025, 2, 12, 6, 0, 0), log.Start);
        Assert.Equal(40.0032, log.DurationS!.Value, 1e-4);
        Assert.Equal((2.0005, 2.006), (log.Columns[3].Minimum!.Value, log.Columns[3].Maximum!.Value));
        Assert.Contains("1900", log.Of(BenchLogWarningKind.TimeBase).Single().Text, StringComparison.Ordinal);
        Assert.Equal(BenchLogUnitSource.Assumed, log.Columns[1].Source);
    }

    [Theory]
    [InlineData("time_s,voltage_v,current_a")]
    [InlineData("Zeit [s],Spannung [V],Strom [A]")]
    [InlineData("Temps (s),Tension (V),Intensité (A)")]
    [InlineData("Tiempo (s),Voltaje (V),Corriente (A)")]
    [InlineData("时间(s),电压(V),电流(A)")]
    [InlineData("時間[s],電圧[V],電流[A]")]
    [InlineData("t/s,U/V,I/A")]
    [InlineData("Elapsed seconds,Volts,Amps")]
    [InlineData("t (s),Vout (V),Iout (A)")]
    public void Read_HeadersInManyTongues_GivesTheSame(string header)
    {
        var log = Logs.Read(header + "\n0,6.0,0.5\n10,6.0,0.5\n20,6.0,0.5\n");

        Assert.Equal((20.0, 10 / 3600.0), (log.DurationS, log.ChargeAh!.Value));
        Assert.Equal(60 / 3600.0, log.EnergyWh!.Value, Close);
        Assert.Equal([BenchLogRole.Time, BenchLogRole.Voltage, BenchLogRole.Current], log.Columns.Select(column => column.Role));
        Assert.DoesNotContain(log.Warnings, warning => warning.IsQuestion);
    }

    [Theory]
    [InlineData("Time\tVoltage\tCurrent\ns\tmV\tmA\n0\t5000\t100\n4\t5000\t100\n8\t5000\t100\n", BenchLogUnitSource.UnitRow, '\t')]
    [InlineData("Time (s);Voltage;Current\n0;5.0 V;100 mA\n4;5000 mV;0.1 A\n8;5.0 V;100 mA\n", BenchLogUnitSource.Cell, ';')]
    [InlineData("Time(s)|Voltage(mV)|Current(mA)\n0|5000|100\n4|5000|100\n8|5000|100\n", BenchLogUnitSource.Name, '|')]
    [InlineData("t_s  voltage_mV  current_mA\n0    5000  100\n4    5000  100\n8    5000  100\n", BenchLogUnitSource.Name, ' ')]
    public void Read_UnitsInRowsCellsOrNames_AreFound(string text, BenchLogUnitSource source, char delimiter)
    {
        var log = Logs.Read(text);

        Assert.Equal((8.0, delimiter, source), (log.DurationS, log.Delimiter, log.Columns[1].Source));
        Assert.Equal((0.8 / 3600, 4 / 3600.0), (log.ChargeAh!.Value, log.EnergyWh!.Value));
    }

    [Theory]
    [InlineData("time,V,A\n2025-10-26T02:59:50+02:00,1,1\n2025-10-26T02:00:00+01:00,1,1\n2025-10-26T02:00:10+01:00,1,1", 20.0)]
    [InlineData("Date,Time,V,A\n2025-01-01,23:59:50,1,1\n2025-01-02,00:00:00,1,1\n2025-01-02,00:00:10,1,1", 20.0)]
    [InlineData("elapsed,V,A\n23:59:50,1,1\n24:00:00,1,1\n24:00:10,1,1", 20.0)]
    [InlineData("time,V,A\n01/31/2025 11:59:50 AM,1,1\n01/31/2025 12:00:00 PM,1,1\n01/31/2025 12:00:10 PM,1,1", 20.0)]
    [InlineData("timestamp,V,A\n1735689600000,1,1\n1735689610000,1,1\n1735689620000,1,1", 20.0)]
    [InlineData("time (µs),V,A\n0,1,1\n10,1,1\n20,1,1", 2e-5)]
    public void Read_TimesOfManyForms_GiveTheDuration(string text, double seconds)
    {
        var log = Logs.Read(text);

        Assert.Equal(seconds, log.DurationS!.Value, seconds * 1e-9);
        Assert.Empty(log.Of(BenchLogWarningKind.Order));
    }

    [Fact]
    public void Read_DatesThatCanBeReadTwoWays_AreAsked()
    {
        var log = Logs.Read("time,V,A\n03/04/2025 10:00:00,1,1\n03/04/2025 10:00:10,1,1\n");

        Assert.Contains(log.Warnings, warning => warning.IsQuestion && warning.Text.Contains("day first", StringComparison.Ordinal));
        Assert.Equal(new DateTime(2025, 4, 3, 10, 0, 0), log.Start);
    }

    [Fact]
    public void Read_CounterThatStartsAgain_IsAskedAsAReset()
    {
        var log = Logs.Read("t_s,V,A\n0,1,1\n10,1,1\n20,1,1\n0,1,1\n10,1,1\n");

        Assert.Contains("counter reset", log.Of(BenchLogWarningKind.Order).Single().Text, StringComparison.Ordinal);
        Assert.Equal((null, 30.0), (log.DurationS, log.ForwardOnly!.DurationS));
    }

    [Fact]
    public void Read_InputAndOutput_GivesBothEnergiesAndTheirRatio()
    {
        var log = Logs.Read("time_s,V_in,I_in,V_out,I_out\n0,20,1,5,3.6\n10,20,1,5,3.6\n20,20,0.1,5,0.2\n");

        var input = ((20 * 10) + (0.5 * 22 * 10)) / 3600.0;
        var output = ((18 * 10) + (0.5 * 19 * 10)) / 3600.0;
        Assert.Equal(input, log.Efficiency!.InputWh, Close);
        Assert.Equal(output, log.Efficiency.OutputWh, Close);
        Assert.Equal(output / input, log.Efficiency.Ratio!.Value, Close);
        Assert.Equal(output, log.EnergyWh!.Value, Close);
        Assert.Empty(log.Of(BenchLogWarningKind.Efficiency));
    }

    [Theory]
    [InlineData("time_s,input_v,input_a,output_v,output_a", BenchLogRole.InputVoltage, BenchLogRole.InputCurrent)]
    [InlineData("Zeit [s],Eingangsspannung [V],Eingangsstrom [A],Ausgangsspannung [V],Ausgangsstrom [A]", BenchLogRole.InputVoltage, BenchLogRole.InputCurrent)]
    [InlineData("time_s,USET[V],Sollstrom [A],U[V],I[A]", BenchLogRole.SetValue, BenchLogRole.SetValue)]
    [InlineData("time_s,Vmin,Vmax,Vavg,Iavg", BenchLogRole.Other, BenchLogRole.Other)]
    public void Read_NamesBesideTheMeasurement_AreToldApart(string header, BenchLogRole second, BenchLogRole third)
    {
        var log = Logs.Read(header + "\n0,12,1,5,2\n10,12,1,5,2\n");

        Assert.Equal([BenchLogRole.Time, second, third, BenchLogRole.Voltage, BenchLogRole.Current], log.Columns.Select(column => column.Role));
        Assert.Equal(100 / 3600.0, log.EnergyWh!.Value, Close);
    }

    [Fact]
    public void Read_RmsValues_AreNotMultiplied()
    {
        var bare = Logs.Read("time_s,AC voltage (V),AC current (A)\n0,230,1\n10,230,1\n");
        var withPower = Logs.Read("time_s,AC voltage (V),AC current (A),Active power (W)\n0,230,1,150\n10,230,1,150\n");
        var adapter = Logs.Read("time_s,Vin AC (V),Iin AC (A),Pin (W),Vout (V),Iout (A)\n0,230,1,100,20,4.5\n10,230,1,100,20,4.5\n");

        Assert.Equal((null, null, null), (bare.EnergyWh, bare.ChargeAh, bare.PeakW));
        Assert.Contains(bare.Warnings, warning => warning.Text.Contains("apparent power", StringComparison.Ordinal));
        Assert.Equal((1500 / 3600.0, null, 150.0), (withPower.EnergyWh!.Value, withPower.ChargeAh, withPower.PeakW));
        Assert.Equal(0.9, adapter.Efficiency!.Ratio!.Value, Close);
    }

    [Fact]
    public void Read_ShortSteps_KeepTheirLength()
    {
        var log = Logs.Read("t_ms,I_uA\n" + string.Concat(Enumerable.Range(0, 1000).Select(i => string.Create(CultureInfo.InvariantCulture, $"{i * 0.01m},1\n"))));

        Assert.Equal(0.00999, log.DurationS);
    }

    [Fact]
    public void Read_MoreOutThanIn_IsSaid()
    {
        var log = Logs.Read("time_s,Input W,Output W\n0,10,11\n10,10,11\n");

        Assert.Equal(1.1, log.Efficiency!.Ratio!.Value, Close);
        Assert.Contains("above one", log.Of(BenchLogWarningKind.Efficiency).Single().Text, StringComparison.Ordinal);
    }

    [Fact]
    public void Read_WithAMapping_TakesTheCallersWord()
    {
        const string Text = "t,ch1,ch2\n0,5000,2000\n500,5000,2000\n1000,5000,2000\n";
        var unknown = Logs.Read(Text);
        Assert.Equal((null, null), (unknown.EnergyWh, unknown.ChargeAh));

        var log = Logs.Read(Text, new BenchLogOptions
        {
            Columns = [new("t", BenchLogRole.Time, "ms"), new("ch1", BenchLogRole.Voltage, "mV"), new("3", BenchLogRole.Current, "mA"), new("ch9", BenchLogRole.Power)],
        });

        Assert.Equal(1.0, log.DurationS);
        Assert.Equal(2 / 3600.0, log.ChargeAh!.Value, Close);
        Assert.Equal(10 / 3600.0, log.EnergyWh!.Value, Close);
        Assert.Equal(BenchLogUnitSource.Given, log.Columns[1].Source);
        Assert.Contains(log.Warnings, warning => warning.Text.Contains("ch9", StringComparison.Ordinal));
    }

    [Fact]
    public void Read_TwoColumnsOfOneKind_TakesTheFirstAndAsks()
    {
        var log = Logs.Read("time_s,V1,I1,V2,I2\n0,5,1,9,2\n10,5,1,9,2\n");

        Assert.Equal(50 / 3600.0, log.EnergyWh!.Value, Close);
        Assert.Equal(2, log.Of(BenchLogWarningKind.Columns).Count(warning => warning.IsQuestion));
    }

    [Fact]
    public void Read_UnitWithACapitalM_IsMegaAsWrittenAndAsked()
    {
        var log = Logs.Read("time_s,current (MA),voltage (V)\n0,1,1\n10,1,1\n");

        Assert.Equal(1e6, log.Current!.Maximum);
        Assert.Contains(log.Warnings, warning => warning is { Kind: BenchLogWarningKind.Unit, IsQuestion: true });
    }

    [Fact]
    public void Read_MarkedUtf16_IsReadAsItsMarkSays()
    {
        const string Text = "Zeit (s)\tSpannung (µV)\tStrom (A)\n0\t5000000\t1\n10\t5000000\t1\n";

        foreach (var (encoding, name) in new (Encoding, string)[] { (Encoding.Unicode, "UTF-16LE"), (Encoding.BigEndianUnicode, "UTF-16BE"), (new UTF8Encoding(true), "UTF-8") })
        {
            var log = Logs.Read([.. encoding.GetPreamble(), .. encoding.GetBytes(Text)]);
            Assert.Equal((name, 50 / 3600.0, "Zeit (s)"), (log.Encoding, log.EnergyWh!.Value, log.Columns[0].Name));
        }
    }

    [Fact]
    public void Read_RemarkWithALineBreakInQuotes_CostsNoSample()
    {
        var log = Logs.Read("time_s,remark,V,A\n0,\"first\nsecond\",5,1\n10,\"a stray \" mark,5,1\n20,,5,1\n");

        Assert.Equal((3, 20.0), (log.Samples, log.DurationS));
    }

    [Fact]
    public void Read_MarksThatNothingCloses_JoinNoLines()
    {
        var log = Logs.Read("time_s,V,A,note\n0,5,1,\"6 in\n10,5,1,\"7 in\n20,5,1,\"8 in\n");

        Assert.Equal((3, 20.0), (log.Samples, log.DurationS));
    }

    [Theory]
    [InlineData("", "empty")]
    [InlineData("\r\n \n", "empty")]
    [InlineData("A letter to the bench.\nNothing to read here, sorry.\n", "no line of numbers")]
    [InlineData("PK\u0003\u0004 and so on", "zip")]
    [InlineData("a\u0001\u0002\u0003\u0004\u0005\u0006b", "binary")]
    public void Read_WhatIsNoLog_IsRefusedWithTheReason(string text, string reason) =>
        Assert.Contains(reason, Logs.Refusal(Encoding.UTF8.GetBytes(text)), StringComparison.Ordinal);

    [Fact]
    public void Read_OneSampleOnly_KnowsExtremesAndNoSums()
    {
        var log = Logs.Read("time_s,V,A\n5,12,2\n");

        Assert.Equal((null, null, null, 24.0), (log.DurationS, log.ChargeAh, log.EnergyWh, log.PeakW));
        Assert.NotEmpty(log.Of(BenchLogWarningKind.Missing));
    }

    [Fact]
    public void Read_InfinityOfAnInstrument_IsAnOverload()
    {
        var log = Logs.Read("time_s,V,A\n0,1,1\n1,+9.9E+37,1\n2,9.91E37,1\n3,1,1\n");

        Assert.Equal((1.0, 1, 2), (log.Voltage!.Maximum, log.Voltage.Overloads, log.Voltage.Samples));
        Assert.Contains("1 overload", log.Of(BenchLogWarningKind.Unusable).Single().Text, StringComparison.Ordinal);
    }

    [Fact]
    public void Read_LoadSweep_FindsItsSettledSteps()
    {
        var text = new StringBuilder("time_s,V,A\n");
        for (var i = 0; i < 30; i++)
            text.Append(CultureInfo.InvariantCulture, $"{i},{5 - (0.1 * (i / 10))},{1 + (i / 10)}\n");

        var steps = Logs.Read(text.ToString()).Steps;

        Assert.Equal([(0.0, 9.0, 5.0, 1.0), (10.0, 9.0, 4.9, 2.0), (20.0, 9.0, 4.8, 3.0)],
            steps.Select(step => (step.StartS, step.DurationS, Math.Round(step.MeanVoltageV, 9), Math.Round(step.MeanCurrentA, 9))));
        Assert.Equal(14.4, steps[2].MeanPowerW, Close);
    }

    [Fact]
    public void Read_LongLog_DrawsABoundedTraceThatKeepsItsPeaks()
    {
        var text = new StringBuilder("time_s,V,A\n");
        for (var i = 0; i < 5000; i++)
            text.Append(CultureInfo.InvariantCulture, $"{i},5,{(i == 3333 ? 7 : 1)}\n");

        var trace = Logs.Read(text.ToString()).Trace;

        Assert.InRange(trace.Count, 256, 512);
        Assert.Equal((0.0, 4999.0, 7.0, 1.0), (trace[0].FromS, trace[^1].ToS, trace.Max(point => point.MaxCurrentA), trace.Min(point => point.MinCurrentA)));
        Assert.All(trace.Zip(trace.Skip(1)), pair => Assert.True(pair.First.ToS < pair.Second.FromS));
    }

    [Fact]
    public void Read_GapInALongLog_IsToldExactly()
    {
        var text = new StringBuilder("time_s,V,A\n");
        for (var i = 0; i < 3000; i++)
            text.Append(CultureInfo.InvariantCulture, $"{(i < 2000 ? i : i + 599)},5,1\n");

        var log = Logs.Read(text.ToString());

        Assert.Equal((3598.0, 1.0, 2998.0), (log.DurationS, log.MedianStepS, log.WithoutGaps!.DurationS));
        Assert.Equal(2998 / 3600.0, log.WithoutGaps.ChargeAh!.Value, Close);
    }

    [Fact]
    public void Read_StepOfExactlyFiveMedians_IsNoGap() =>
        Assert.Null(Logs.Read("time_s,V,A\n0,1,1\n0.1,1,1\n0.2,1,1\n0.7,1,1\n0.8,1,1\n").WithoutGaps);

    [Fact]
    public void Read_AnotherTableBelow_IsNotMixedIn()
    {
        var log = Logs.Read("time_s,V,A\n0,5,1\n10,5,1\nCurrent (A),Voltage (V),Time (s)\n1,5,0\n1,5,10\n");

        Assert.Equal((2, 10.0), (log.Samples, log.DurationS));
        Assert.Contains(log.Warnings, warning => warning.IsQuestion && warning.Text.Contains("line 4", StringComparison.Ordinal));
    }

    [Fact]
    public async Task ReadAsync_Stream_ReadsTheSameAsAllAtOnce()
    {
        var bytes = Encoding.UTF8.GetBytes(Logs.ClockTrouble);

        var log = Assert.IsType<BenchLogReading.Read>(await BenchLogReader.ReadAsync(new MemoryStream(bytes))).Log;

        Assert.Equal(Logs.Read(bytes).Warnings, log.Warnings);
    }

    [Fact]
    public void Complete_TwiceOrPushAfterIt_IsTheCallersBug()
    {
        var reader = new BenchLogReader();
        reader.Complete();

        Assert.Throws<ObjectDisposedException>(() => reader.Complete());
        Assert.Throws<ObjectDisposedException>(() => reader.Push("a"u8));
    }

    [Fact]
    public void WorkedExamples_OfTheDocument_AreComputed()
    {
        var rows = File.ReadLines(FigurePages.Find("bench-log.md")).SkipWhile(line => !line.StartsWith("| samples", StringComparison.Ordinal)).Skip(2)
            .TakeWhile(line => line.StartsWith('|')).Select(line => line.Trim('|').Split('|', StringSplitOptions.TrimEntries)).ToList();

        Assert.True(rows.Count >= 5);
        foreach (var row in rows)
        {
            var samples = row[0].Split(';', StringSplitOptions.TrimEntries).Select(sample => sample.Replace(' ', ','));
            var log = Logs.Read("time_s,voltage_v,current_a\n" + string.Join('\n', samples) + "\n");
            double?[] computed = [log.DurationS, log.ChargeAh, log.EnergyWh, log.MeanVoltageV, log.WithoutGaps?.EnergyWh];
            Assert.Equal(row[1..], computed.Select(value => value?.ToString("G6", CultureInfo.InvariantCulture) ?? "none"));
        }
    }
}
