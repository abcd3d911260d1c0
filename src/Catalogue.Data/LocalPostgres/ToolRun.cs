using System.Diagnostics;

namespace Catalogue.Data.LocalPostgres;

/// <summary>One finished run of an operating-system tool.</summary>
/// <param name="ExitCode">Zero for success.</param>
/// <param name="Output">Standard output, trimmed.</param>
/// <param name="Error">Standard error, trimmed; holds the reason when the tool itself is missing.</param>
internal sealed record ToolRun(int ExitCode, string Output, string Error)
{
    private const int NotFound = 127;

    public bool Succeeded => ExitCode == 0;

    /// <summary>Runs to the end; a started tool is never killed, since half an initdb or stop is worse than a late one.</summary>
    public static async Task<ToolRun> RunAsync(string file, IEnumerable<string> arguments, string? input = null)
    {
        var start = new ProcessStartInfo(file, arguments)
        {
            RedirectStandardInput = true,
            RedirectStandardOutput = true,
            RedirectStandardError = true,
            // The server's account may not be allowed into the current folder.
            WorkingDirectory = "/",
        };
        foreach (var name in start.Environment.Keys.Where(name => name.StartsWith("PG", StringComparison.Ordinal)).ToList())
            start.Environment.Remove(name);
        start.Environment["LC_ALL"] = "C.UTF-8";

        try
        {
            using var process = Process.Start(start)!;
            var output = process.StandardOutput.ReadToEndAsync();
            var error = process.StandardError.ReadToEndAsync();
            await WriteInputAsync(process, input);
            await process.WaitForExitAsync();
            return new ToolRun(process.ExitCode, (await output).Trim(), (await error).Trim());
        }
        catch (System.ComponentModel.Win32Exception missing)
        {
            return new ToolRun(NotFound, "", $"{file}: {missing.Message}");
        }
    }

    private static async Task WriteInputAsync(Process process, string? input)
    {
        try
        {
            if (input is not null)
                await process.StandardInput.WriteAsync(input);
            process.StandardInput.Close();
        }
        catch (IOException)
        {
            // The tool ended without reading; its exit code tells the story.
        }
    }
}
