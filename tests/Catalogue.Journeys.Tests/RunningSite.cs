using System.Diagnostics;
using System.Net;
using System.Net.Sockets;
using System.Runtime.InteropServices;
using System.Text.RegularExpressions;

namespace Catalogue.Journeys.Tests;

/// <summary>The program itself as a person starts it: its own process, its own PostgreSQL, an empty data folder, the demo.</summary>
public sealed partial class RunningSite : IAsyncDisposable
{
    private static readonly TimeSpan Patience = TimeSpan.FromMinutes(2);

    private readonly string _folder;
    private readonly List<string> _lines = [];
    private Process _process = null!;

    private RunningSite(string folder) => _folder = folder;

    /// <summary>Where it is.</summary>
    public string Address { get; private set; } = "";

    /// <summary>The first administrator's one-time link.</summary>
    public string FirstSignIn { get; private set; } = "";

    /// <summary>Starts one and waits until it serves.</summary>
    public static async Task<RunningSite> StartAsync()
    {
        var site = new RunningSite(Directory.CreateTempSubdirectory("catalogue-journey-").FullName);
        await site.StartProcessAsync(FreePort());
        return site;
    }

    /// <summary>Runs a verb of the admin command on the same data folder, while the site runs; the lines it prints.</summary>
    public async Task<IReadOnlyList<string>> AdminAsync(params string[] words)
    {
        using var process = Process.Start(new ProcessStartInfo("dotnet", [Program(), .. words, "--data", _folder]) { RedirectStandardOutput = true })!;
        var output = await process.StandardOutput.ReadToEndAsync();
        await process.WaitForExitAsync();
        Assert.Equal(0, process.ExitCode);
        return output.Split('\n', StringSplitOptions.RemoveEmptyEntries);
    }

    /// <summary>Kills the program without a word, as a power cut would, and starts it again at the same address.</summary>
    public async Task KillAndRestartAsync()
    {
        _process.Kill();
        await _process.WaitForExitAsync();
        _process.Dispose();
        await StartProcessAsync(new Uri(Address).Port);
    }

    /// <inheritdoc />
    public async ValueTask DisposeAsync()
    {
        // SIGTERM: the way an administrator stops it. It must end by itself and say that all went well.
        Assert.Equal(0, Signal(_process.Id, 15));
        await _process.WaitForExitAsync().WaitAsync(Patience);
        var exit = _process.ExitCode;
        _process.Dispose();
        Directory.Delete(_folder, recursive: true);
        Assert.Equal(0, exit);
    }

    private async Task StartProcessAsync(int port)
    {
        lock (_lines)
            _lines.Clear();
        _process = Process.Start(new ProcessStartInfo("dotnet", [Program(), "serve", "--port", $"{port}", "--data", _folder])
        {
            RedirectStandardOutput = true,
            RedirectStandardError = true,
        })!;
        _process.OutputDataReceived += Keep;
        _process.ErrorDataReceived += Keep;
        _process.BeginOutputReadLine();
        _process.BeginErrorReadLine();
        Address = $"http://localhost:{port}";
        using var client = new HttpClient();
        var until = Stopwatch.StartNew();
        while (!await IsReadyAsync(client))
        {
            Assert.False(_process.HasExited || until.Elapsed > Patience, "The site did not start:\n" + Text());
            await Task.Delay(200);
        }

        for (var tries = 0; FirstSignIn.Length == 0 && tries < 50; tries++)
        {
            FirstSignIn = Link().Match(Text()).Value;
            await Task.Delay(100);
        }
    }

    private async Task<bool> IsReadyAsync(HttpClient client)
    {
        try
        {
            return (await client.GetAsync(Address + "/health/ready")).StatusCode == HttpStatusCode.OK;
        }
        catch (HttpRequestException)
        {
            return false;
        }
    }

    private void Keep(object sender, DataReceivedEventArgs line)
    {
        lock (_lines)
            _lines.Add(line.Data ?? "");
    }

    private string Text()
    {
        lock (_lines)
            return string.Join('\n', _lines);
    }

    // The host as the same build made it, beside the tests in the tree.
    private static string Program()
    {
        var build = new DirectoryInfo(AppContext.BaseDirectory);
        var configuration = build.Parent!.Name;
        var root = build;
        while (!File.Exists(Path.Combine(root.FullName, "Catalogue.sln")))
            root = root.Parent ?? throw new InvalidOperationException("The project's root was not found above the tests.");
        return Path.Combine(root.FullName, "src", "Catalogue.Web", "bin", configuration, "net10.0", "catalogue.dll");
    }

    private static int FreePort()
    {
        using var listener = new TcpListener(IPAddress.Loopback, 0);
        listener.Start();
        return ((IPEndPoint)listener.LocalEndpoint).Port;
    }

    [LibraryImport("libc", EntryPoint = "kill")]
    private static partial int Signal(int process, int signal);

    [GeneratedRegex(@"http://localhost:\d+/sign-in/once\?code=[\w-]+")]
    private static partial Regex Link();
}
