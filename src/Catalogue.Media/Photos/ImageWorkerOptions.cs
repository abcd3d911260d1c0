namespace Catalogue.Media.Photos;

/// <summary>How the worker process is started and what it may use. The defaults suit a machine of 2 cores and 4 GiB.</summary>
public sealed record ImageWorkerOptions
{
    private static readonly string[] ToolFolders = ["/usr/bin", "/bin", "/usr/local/bin"];

    /// <summary>Program and leading arguments, the verb included. Default: this very program, with <see cref="ImageWorker.Verb"/>.</summary>
    public IReadOnlyList<string> Command { get; init; } = OwnProgram();

    /// <summary>Wall-clock time for one picture, after which the process is killed.</summary>
    public TimeSpan TimeLimit { get; init; } = TimeSpan.FromSeconds(20);

    /// <summary>Private memory of one process, in bytes. The costliest of the pictures tried at the limit of pixels needed 800 MiB.</summary>
    public long MemoryLimitBytes { get; init; } = 1024L * 1024 * 1024;

    /// <summary>Processes at a time; further jobs wait.</summary>
    public int Concurrency { get; init; } = 2;

    /// <summary>Nice value, 0 (normal) to 19 (last in turn), so that pages stay fast while photos are made.</summary>
    public int Niceness { get; init; } = 10;

    /// <summary>Where each process gets a private working folder, removed afterwards.</summary>
    public string ScratchFolder { get; init; } = Path.GetTempPath();

    /// <summary>Full path of <c>nice</c>; null where there is none, which leaves the priority as it is.</summary>
    internal string? PriorityTool { get; init; } = FindTool("nice");

    /// <summary>Full path of <c>prlimit</c>; null where there is none, and then the memory in use is polled.</summary>
    internal string? LimitTool { get; init; } = FindTool("prlimit");

    /// <summary>When started as <c>dotnet program.dll</c>, the process is dotnet and the program is its first argument.</summary>
    private static List<string> OwnProgram()
    {
        var process = Environment.ProcessPath ?? throw new InvalidOperationException("The path of this program is unknown; set the worker's command.");
        return Path.GetFileNameWithoutExtension(process).Equals("dotnet", StringComparison.OrdinalIgnoreCase)
            ? [process, Path.GetFullPath(Environment.GetCommandLineArgs()[0]), ImageWorker.Verb]
            : [process, ImageWorker.Verb];
    }

    private static string? FindTool(string name) =>
        OperatingSystem.IsLinux() ? ToolFolders.Select(folder => Path.Combine(folder, name)).FirstOrDefault(File.Exists) : null;
}
