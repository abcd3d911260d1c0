using System.CommandLine;
using System.Globalization;
using Catalogue.Data.Figures;
using Catalogue.Web.Hosting;

namespace Catalogue.Web.Verbs;

/// <summary><c>recompute</c>: computes all figures by the rules and lines as they stand now.</summary>
internal static class RecomputeVerb
{
    public static Command Create()
    {
        var data = CatalogueCommand.DataOption();
        var command = new Command("recompute", "Compute all figures by the rules and lines as they stand now; what was published stays as printed.") { data };
        command.SetAction((parsed, cancellation) => AdminSession.RunAsync(
            parsed.GetRequiredValue(data),
            async (services, cancel) =>
            {
                var total = await services.GetRequiredService<RecomputeEverything>().RunAsync(
                    (step, _) => Console.Error.WriteAsync(string.Create(CultureInfo.InvariantCulture, $"\r{step.Done} of {step.Total} teardowns")), cancel);
                await Console.Error.WriteLineAsync();
                await Console.Out.WriteLineAsync($"{total.Teardowns} teardowns, {total.Figures} figures, {total.Changed} changed.");
                return 0;
            },
            cancellation));
        return command;
    }
}
