using BenchmarkDotNet.Columns;
using BenchmarkDotNet.Configs;
using BenchmarkDotNet.Diagnosers;
using BenchmarkDotNet.Exporters;
using BenchmarkDotNet.Jobs;
using BenchmarkDotNet.Loggers;
using BenchmarkDotNet.Running;
using BenchmarkDotNet.Toolchains.InProcess.Emit;
using Catalogue.Benchmarks.Components;
using Catalogue.Benchmarks.Identification;
using Catalogue.Benchmarks.Mutations;

if (args is ["mutate", .. var words])
    return MutateCommand.Run(words);

// Machines are noisy: each class names a baseline that runs beside what is claimed, and the ratio is what counts.
var config = ManualConfig.CreateEmpty()
    .AddJob(Job.Default.WithToolchain(InProcessEmitToolchain.Instance).WithWarmupCount(3).WithIterationCount(10))
    .AddDiagnoser(MemoryDiagnoser.Default)
    .AddColumnProvider(DefaultColumnProviders.Instance)
    .AddColumn(StatisticColumn.OperationsPerSecond)
    .AddExporter(MarkdownExporter.GitHub)
    .AddLogger(ConsoleLogger.Default)
    .WithOptions(ConfigOptions.JoinSummary | ConfigOptions.DisableLogFile);
// What is found, and how surely, is no matter of nanoseconds: it is measured by its own program.
var filters = args.SkipWhile(argument => argument != "--filter").Skip(1).TakeWhile(argument => !argument.StartsWith("--", StringComparison.Ordinal)).ToList();
if (filters.Count == 0 || filters.Any(filter => filter == "*" || filter.Contains("Identification", StringComparison.OrdinalIgnoreCase)))
{
    await IdentificationMeasurement.RunAsync(100_000, withTrigram: true);
    await IdentificationMeasurement.RunAsync(1_000_000, withTrigram: false);
    if (filters.Count > 0 && filters.All(filter => filter.Contains("Identification", StringComparison.OrdinalIgnoreCase)))
        return 0;
}

if (filters.Count == 0 || filters.Any(filter => filter == "*" || filter.Contains("ListImport", StringComparison.OrdinalIgnoreCase)))
{
    await ListImportMeasurement.RunAsync();
    if (filters.Count > 0 && filters.All(filter => filter.Contains("ListImport", StringComparison.OrdinalIgnoreCase)))
        return 0;
}

BenchmarkSwitcher.FromAssembly(typeof(Program).Assembly).Run(args.Length == 0 ? ["--filter", "*"] : args, config);
return 0;
