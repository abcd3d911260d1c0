using System.Diagnostics;
using System.Runtime.CompilerServices;
using Catalogue.Data.LocalPostgres;

namespace Catalogue.Data.Tests.LocalPostgres;

/// <summary>
/// This test program started a second time, as a program that holds a data folder and can be killed: a lock and a
/// server that outlive their program cannot be tried from inside one process.
/// </summary>
internal sealed class HeldServer : IDisposable
{
    private const string FolderVariable = "CATALOGUE_TEST_HOLD";
    private readonly Process _process;

    private HeldServer(Process process) => _process = process;

    public int ProcessId => _process.Id;

    public static async Task<HeldServer> StartAsync(string dataFolder)
    {
        var start = new ProcessStartInfo(Environment.ProcessPath!)
        {
            RedirectStandardOutput = true,
            Environment = { [FolderVariable] = dataFolder },
        };
        // Under `dotnet Some.dll` the process is dotnet, and the program its first argument.
        if (Path.GetFileNameWithoutExtension(Environment.ProcessPath) == "dotnet")
            start.ArgumentList.Add(typeof(HeldServer).Assembly.Location);
        var process = Process.Start(start)!;
        Assert.Equal("running", await process.StandardOutput.ReadLineAsync());
        return new HeldServer(process);
    }

    public void Kill()
    {
        _process.Kill();
        _process.WaitForExit();
    }

    public void Dispose()
    {
        Kill();
        _process.Dispose();
    }

    [ModuleInitializer]
    internal static void HoldWhenAsked()
    {
        if (Environment.GetEnvironmentVariable(FolderVariable) is not { Length: > 0 } folder)
            return;
        // There is no test run in this process, and no context to block.
        var start = LocalPostgresServer.StartAsync(new LocalPostgresOptions { DataFolder = folder }).GetAwaiter().GetResult();
        Console.WriteLine(start is LocalPostgresStart.Running ? "running" : start.ToString());
        Thread.Sleep(Timeout.Infinite);
    }
}
