using System.Globalization;
using Catalogue.Testing.Mutations;

namespace Catalogue.Benchmarks.Mutations;

/// <summary><c>mutate [--NAME N ...] [--seed S] [--first F]</c>: reads N damaged files with each reader named, or 10,000 with every one.</summary>
internal static class MutateCommand
{
    private const int Usual = 10_000;

    public static int Run(IReadOnlyList<string> words)
    {
        var (cases, seed, first) = (new Dictionary<string, int>(), 1, 0);
        for (var i = 0; i < words.Count; i += 2)
        {
            var number = i + 1 < words.Count && int.TryParse(words[i + 1], NumberStyles.None, CultureInfo.InvariantCulture, out var given) ? given : -1;
            if (number < 0 || !(words[i] is "--seed" or "--first" || MutatedReaders.All.Any(reader => words[i] == $"--{reader.Name}")))
            {
                Console.Error.WriteLine($"Usage: mutate {string.Join(' ', MutatedReaders.All.Select(reader => $"[--{reader.Name} N]"))} [--seed S] [--first F]");
                return 2;
            }

            (seed, first) = words[i] switch { "--seed" => (number, first), "--first" => (seed, number), _ => (seed, first) };
            if (words[i] is not ("--seed" or "--first"))
                cases[words[i][2..]] = number;
        }

        var failed = false;
        foreach (var reader in MutatedReaders.All.Where(reader => cases.Count == 0 || cases.ContainsKey(reader.Name)))
        {
            var count = cases.GetValueOrDefault(reader.Name, Usual);
            var run = MutationRun.Of(reader, count, seed, first, done =>
            {
                if (done % Math.Max(count / 10, 1) == 0)
                    Console.WriteLine(string.Create(CultureInfo.InvariantCulture, $"  {reader.Name}: {done} of {count}"));
            });
            foreach (var failure in run.Failures)
                Console.Error.WriteLine(failure);
            Console.WriteLine(string.Create(
                CultureInfo.InvariantCulture,
                $"{run.Reader}: {run.Read} read, {run.Refused} refused, {run.Failures.Count} failed; slowest {run.Slowest.TotalMilliseconds:0} ms, most allocated {run.MostAllocated / 1048576.0:0} MiB"));
            failed |= run.Failures.Count > 0;
        }

        return failed ? 1 : 0;
    }
}
