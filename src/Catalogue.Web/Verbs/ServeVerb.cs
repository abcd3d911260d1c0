using System.CommandLine;
using System.Runtime.InteropServices;
using Catalogue.Web.Hosting;

namespace Catalogue.Web.Verbs;

/// <summary><c>serve</c>: runs the site until it is told to stop.</summary>
internal static class ServeVerb
{
    public static Command Create()
    {
        var data = CatalogueCommand.DataOption();
        var port = new Option<int>("--port") { Description = "TCP port to listen on.", DefaultValueFactory = _ => 8080, HelpName = "N" };
        var listen = new Option<string>("--listen")
        {
            Description = "Where to listen: local (this machine only) or any (all networks; put it behind a proxy with TLS).",
            DefaultValueFactory = _ => "local",
            HelpName = "local|any",
        };
        listen.AcceptOnlyFromAmong("local", "any");
        var demo = new Option<bool>("--demo") { Description = "Plant the demo teardowns; only into an empty catalogue." };
        var noDemo = new Option<bool>("--no-demo") { Description = "Never plant them. Without either they are planted into an empty catalogue." };
        var command = new Command("serve", "Run the site until Ctrl-C or SIGTERM.") { data, port, listen, demo, noDemo };
        command.SetAction((parsed, cancellation) => RunAsync(
            new ServeOptions
            {
                DataFolder = Path.GetFullPath(parsed.GetRequiredValue(data)),
                Port = parsed.GetRequiredValue(port),
                ListensOnAllNetworks = parsed.GetRequiredValue(listen) == "any",
                Demo = parsed.GetValue(noDemo) ? DemoChoice.Never : parsed.GetValue(demo) ? DemoChoice.Asked : DemoChoice.IfEmpty,
            },
            cancellation));
        return command;
    }

    private static async Task<int> RunAsync(ServeOptions options, CancellationToken cancellationToken)
    {
        using var stop = CancellationTokenSource.CreateLinkedTokenSource(cancellationToken);
        // Registered before anything starts, so that a signal in the middle of starting still stops the database server.
        using var terminate = PosixSignalRegistration.Create(PosixSignal.SIGTERM, Stop);
        using var interrupt = PosixSignalRegistration.Create(PosixSignal.SIGINT, Stop);
        return await Serving.RunAsync(options, Console.Out, Console.Error, stop.Token);

        void Stop(PosixSignalContext context)
        {
            context.Cancel = true;
            stop.Cancel();
        }
    }
}
