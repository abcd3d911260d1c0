using System.Globalization;
using System.Text.RegularExpressions;

namespace Catalogue.Data.LocalPostgres;

/// <summary>A folder with PostgreSQL's programs on this machine.</summary>
/// <param name="Folder">Absolute path; holds at least <c>postgres</c>, <c>initdb</c> and <c>pg_ctl</c>.</param>
/// <param name="Major">Major version as <c>postgres --version</c> tells it: 15, 16, ...</param>
public sealed partial record PostgresBinaries(string Folder, int Major)
{
    /// <summary>The oldest major version the catalogue's SQL runs on.</summary>
    public const int LeastMajor = 15;

    /// <summary>Environment variable that names the one folder to use.</summary>
    public const string FolderVariable = "CATALOGUE_PG_BIN";

    private static readonly string[] Required = ["postgres", "initdb", "pg_ctl"];

    /// <summary>Full path of one program of this folder; it need not exist (<c>pg_dump</c> may be packaged apart).</summary>
    public string Program(string name) => Path.Combine(Folder, name);

    /// <summary>
    /// All usable folders, newest major first, then in the order looked at: the versioned folders of Debian and Ubuntu
    /// (<c>/usr/lib/postgresql/*/bin</c>) and of PostgreSQL's own packages (<c>/usr/pgsql-*/bin</c>), then <c>PATH</c>.
    /// A folder given by <paramref name="binFolder"/>, else by <see cref="FolderVariable"/>, is the only one looked at.
    /// </summary>
    public static async Task<IReadOnlyList<PostgresBinaries>> FindAllAsync(string? binFolder = null)
    {
        var found = new List<PostgresBinaries>();
        foreach (var folder in Places(binFolder).Distinct(StringComparer.Ordinal))
        {
            if (!Required.All(program => File.Exists(Path.Combine(folder, program))))
                continue;
            var version = await ToolRun.RunAsync(Path.Combine(folder, "postgres"), ["--version"]);
            if (version.Succeeded && MajorOf().Match(version.Output) is { Success: true } match)
                found.Add(new PostgresBinaries(folder, int.Parse(match.Groups[1].ValueSpan, CultureInfo.InvariantCulture)));
        }

        return [.. found.OrderByDescending(binaries => binaries.Major)];
    }

    /// <summary>The one folder a person asked for, or null when any will do.</summary>
    internal static string? Given(string? binFolder) =>
        !string.IsNullOrEmpty(binFolder) ? binFolder
        : Environment.GetEnvironmentVariable(FolderVariable) is { Length: > 0 } given ? given
        : null;

    private static IEnumerable<string> Places(string? binFolder)
    {
        if (Given(binFolder) is { } given)
            return [Path.GetFullPath(given)];

        var path = Environment.GetEnvironmentVariable("PATH") ?? "";
        return Versioned("/usr/lib/postgresql", "*")
            .Concat(Versioned("/usr", "pgsql-*"))
            .Concat(path.Split(':', StringSplitOptions.RemoveEmptyEntries).Where(Path.IsPathRooted));
    }

    private static IEnumerable<string> Versioned(string root, string pattern) =>
        Directory.Exists(root) ? Directory.EnumerateDirectories(root, pattern).Order(StringComparer.Ordinal).Select(folder => Path.Combine(folder, "bin")) : [];

    [GeneratedRegex(@"\(PostgreSQL\) (\d+)")]
    private static partial Regex MajorOf();
}
