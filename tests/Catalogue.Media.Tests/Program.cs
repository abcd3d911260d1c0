using Catalogue.Media.Photos;
using Microsoft.Testing.Platform.Builder;
using Xunit.MicrosoftTestingPlatform;
using Xunit.Runner.InProc.SystemConsole;

namespace Catalogue.Media.Tests;

/// <summary>
/// Runs the tests, or acts as the image worker when started with its verb, so that the tests cross a real process border. The
/// rest is what xunit.v3 would generate.
/// </summary>
internal static class Program
{
    public static async Task<int> Main(string[] args)
    {
        if (args is [ImageWorker.Verb, ..])
        {
            return ImageWorker.Run(args, Console.Out);
        }

        return args.Contains("--server") || args.Contains("--internal-msbuild-node")
            ? await TestPlatformTestFramework.RunAsync(args, (ITestApplicationBuilder builder, string[] rest) => builder.AddSelfRegisteredExtensions(rest))
            : await ConsoleRunner.Run(args);
    }
}
