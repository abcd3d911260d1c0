using System.CommandLine;

namespace Catalogue.Web.Verbs;

/// <summary>The admin command: one verb for each thing an administrator does at the machine itself.</summary>
public static class CatalogueCommand
{
    /// <summary>Runs a command line; 0 when it was done.</summary>
    public static Task<int> RunAsync(string[] args)
    {
        var root = new RootCommand("A self-hosted catalogue of teardowns of power products.")
        {
            ServeVerb.Create(),
            UserVerb.Create(),
            TokenVerb.Create(),
            RecomputeVerb.Create(),
            ExportVerb.Create(),
            ImportVerb.Create(),
            ImportListVerb.Create(),
            ImportPhotosVerb.Create(),
            ImportArticleVerb.Create(),
        };
        // Signals belong to the verbs: the server drains before it stops.
        return root.Parse(args).InvokeAsync(new InvocationConfiguration { ProcessTerminationTimeout = null });
    }

    /// <summary>The option that every verb takes.</summary>
    internal static Option<string> DataOption() => new("--data")
    {
        Description = "Folder of the database, the photos and the keys.",
        DefaultValueFactory = _ => "data",
        HelpName = "DIR",
    };
}
