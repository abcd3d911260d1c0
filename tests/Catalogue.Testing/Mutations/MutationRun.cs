using System.Diagnostics;
using System.Globalization;

namespace Catalogue.Testing.Mutations;

/// <summary>What came of reading many damaged files.</summary>
/// <param name="Reader">The reader's name.</param>
/// <param name="Cases">How many files were read.</param>
/// <param name="Read">Of how many something was read.</param>
/// <param name="Refused">How many were refused with a reason.</param>
/// <param name="Slowest">The longest that one took.</param>
/// <param name="MostAllocated">The most that one allocated, in bytes.</param>
/// <param name="Failures">Each that threw, took too long or allocated too much: its number, so that it can be run again, and what happened.</param>
public sealed record MutationRun(string Reader, int Cases, int Read, int Refused, TimeSpan Slowest, long MostAllocated, IReadOnlyList<string> Failures)
{
    /// <summary>The longest that one file may take.</summary>
    public static readonly TimeSpan MostTime = TimeSpan.FromSeconds(10);

    /// <summary>The most that reading one file may allocate beside what its size allows.</summary>
    public const long MostBytes = 256L * 1024 * 1024;

    private const int MostBytesEachByte = 100;
    private const int MostFailures = 20;

    /// <summary>Damages the reader's files and reads them.</summary>
    /// <param name="reader">The reader.</param>
    /// <param name="cases">How many files.</param>
    /// <param name="seed">Where chance starts; the same seed gives the same files.</param>
    /// <param name="first">Number of the first file.</param>
    /// <param name="progress">Told after each file how many are done; null for nobody.</param>
    public static MutationRun Of(MutatedReader reader, int cases, int seed, int first = 0, Action<int>? progress = null)
    {
        var (read, refused, slowest, most, failures) = (0, 0, TimeSpan.Zero, 0L, new List<string>());
        for (var number = first; number < first + cases && failures.Count < MostFailures; number++)
        {
            var random = new Random(unchecked((seed * 1_000_003) + number));
            var content = reader.Mutate(new Mutator(random), reader.Seeds[number % reader.Seeds.Count]);
            var (clock, before) = (Stopwatch.StartNew(), GC.GetAllocatedBytesForCurrentThread());
            try
            {
                if (reader.Read(content))
                    read++;
                else
                    refused++;
            }
            catch (Exception exception)
            {
                Fail(exception.ToString());
            }

            var allocated = GC.GetAllocatedBytesForCurrentThread() - before;
            if (clock.Elapsed > MostTime)
                Fail($"took {clock.Elapsed}");
            if (allocated > MostBytes + (content.LongLength * MostBytesEachByte))
                Fail(string.Create(CultureInfo.InvariantCulture, $"allocated {allocated} bytes for {content.Length}"));
            (slowest, most) = (clock.Elapsed > slowest ? clock.Elapsed : slowest, Math.Max(most, allocated));
            progress?.Invoke(number - first + 1);

            void Fail(string what) => failures.Add(string.Create(CultureInfo.InvariantCulture, $"{reader.Name}, seed {seed}, file {number}: {what}"));
        }

        return new MutationRun(reader.Name, cases, read, refused, slowest, most, failures);
    }
}
