using System.Text;
using Catalogue.Domain.BenchLogs;

namespace Catalogue.Domain.Tests.BenchLogs;

/// <summary>Logs of an invented bench, and how tests read them.</summary>
internal static class Logs
{
    public const string Sweep = """
        Time[s],USET[V],ISET[A],UOUT[V],IOUT[A],POUT[W],UIN[V],PROT,cmt,Lux
        4.000,1.00,0.500,1.00,0.100,00.10,19.90, 0,   ,30
        8.000,2.00,0.500,1.98,0.200,00.40,19.90, 0,   ,31
        14.000,3.00,0.500,2.50,0.500,01.25,19.80, 1,   ,32
        """;

    public const string AutoRange = """
        No,Mode,Value,Unit,Time
        1,DC,-0.45,mV,23:59:50
        2,DC,1.2,V,23:59:52
        3,DC,OL,V,23:59:54
        4,DC,-7.5,µA,23:59:56
        5,Ohm,3.3,kΩ,23:59:58
        6,DC,4.75,V,00:00:02
        """;

    public const string ClockTrouble = """
        time,volts,amps
        2025-10-26 02:59:57,9.02,1.000
        2025-10-26 02:59:59,9.02,1.000
        2025-10-26 02:00:01,9.00,1.000
        2025-10-26 02:00:01,9.00,1.000
        2025-10-26 02:00:03,NaN,1.000
        2025-10-26 02:00:05,OVLD,1.000
        time,volts,amps
        2025-10-26 02:00:07,9.00,
        2025-10-26 02:00:09,9.00,-0.000
        2025-10-26 02:00:11,8.9
        """;

    public static BenchLog Read(string text, BenchLogOptions? options = null) => Read(Encoding.UTF8.GetBytes(text), options);

    public static BenchLog Read(byte[] bytes, BenchLogOptions? options = null) => Assert.IsType<BenchLogReading.Read>(BenchLogReader.Read(bytes, options)).Log;

    public static string Refusal(byte[] bytes) => Assert.IsType<BenchLogReading.Refused>(BenchLogReader.Read(bytes)).Reason;

    public static BenchLogRole Role(this BenchLog log, string column) => log.Columns.Single(candidate => candidate.Name == column).Role;

    public static BenchLogWarning[] Of(this BenchLog log, BenchLogWarningKind kind) => [.. log.Warnings.Where(warning => warning.Kind == kind)];
}
