using System.CommandLine;
using Catalogue.Data.Figures;
using Catalogue.Web.Hosting;

namespace Catalogue.Web.Verbs;

/// <summary><c>recompute</c>: computes the figures of all published teardowns by the rules as they stand now.</summary>
internal static class RecomputeVerb
{
    public static Command Create()
    {
        var data = CatalogueCommand.DataOption();
        var command = new Command("recompute", "Compute the current figures of all published teardowns anew; what was published stays as printed.") { data };
        command.SetAction((parsed, cancellation) => AdminSession.RunAsync(
            parsed.GetRequiredValue(data),
            async (services, cancel) =>
            {
                var progress = new Progress<RecomputePublished.Step>(step => Console.Error.Write($"\r{step.Done} of {step.Total} teardowns"));
                var total = await services.GetRequiredService<RecomputePublished>().RunAsync(progress, cancel);
                await Console.Error.WriteLineAsync();
                await Console.Out.WriteLineAsync($"{total.Teardowns} teardowns, {total.Figures} figures, {total.Changed} changed.");
                return 0;
            },
            cancellation));
        return command;
    }
}
