using System.Diagnostics;
using Catalogue.Data.Families;
using Catalogue.Domain.Identification;
using Catalogue.Testing;
using Catalogue.Testing.Identification;
using Npgsql;

namespace Catalogue.Benchmarks.Identification;

/// <summary>
/// How often the right family stands first and among the first five, how honest the scores are, and how long an answer takes, beside plain trigram
/// ranking of the same marks over the same families.
/// </summary>
internal static class IdentificationMeasurement
{
    private const int Marks = 2000;
    private const int TrigramMarks = 300;
    private const int Warm = 400;

    private enum Given
    {
        MarkAlone,
        PackageAndRole,
        LabsHistory,
    }

    /// <summary>Runs the measurement over so many families, printing tables as it goes.</summary>
    public static async Task RunAsync(int families, bool withTrigram)
    {
        Console.WriteLine(FormattableString.Invariant($"\n### {families:N0} families of {InventedFamilies.SchemeCount} naming schemes\n"));
        var all = InventedFamilies.Make(families, seed: 7);
        await using var database = await CatalogueDatabaseFixture.CreateAsync();
        var loading = Stopwatch.StartNew();
        await InventedCatalogue.LoadAsync(database, all);
        var popularity = new Popularity(all.Count, seed: 5);
        var history = new Random(11);
        var uses = Enumerable.Range(0, Math.Min(families, 120_000)).Select(_ => popularity.Draw(history)).ToList();
        await InventedCatalogue.PublishAsync(database, uses);
        Console.WriteLine(FormattableString.Invariant($"Loaded in {loading.Elapsed.TotalSeconds:F0} s; keys and their index {await SizeAsync(database, "ix_families_marking_keys")}, trigram index {await SizeAsync(database, "ix_families_search_key_trigram")}.\n"));
        Console.WriteLine("| errors | given | @1 | @5 | p50 ms | p95 ms | trigram @1 | @5 | p50 ms |");
        Console.WriteLine("|---|---|---|---|---|---|---|---|---|");
        var slips = new SortedDictionary<string, Share>(StringComparer.Ordinal);
        foreach (var errors in (int[])[0, 1, 2])
        {
            foreach (var given in Enum.GetValues<Given>())
                await RowAsync(database, all, popularity, errors, given, withTrigram && given != Given.PackageAndRole, slips);
        }

        Console.WriteLine("\n| slips | marks | @1 | @5 |\n|---|---|---|---|");
        foreach (var (slip, share) in slips)
            Console.WriteLine(FormattableString.Invariant($"| {slip} | {share.Count} | {share.First:P0} | {share.Five:P0} |"));
        await CalibrationAsync(database, all, popularity);
    }

    private static async Task RowAsync(
        CatalogueDatabaseFixture database, IReadOnlyList<InventedFamily> all, Popularity popularity, int errors, Given given, bool withTrigram, SortedDictionary<string, Share> slips)
    {
        var query = database.Get<MarkingCandidatesQuery>();
        var chance = new Random(100 + (10 * errors) + (int)given);
        var (found, trigram) = (new Share(), new Share());
        var (times, trigramTimes) = (new List<double>(), new List<double>());
        for (var i = 0; i < Marks + Warm; i++)
        {
            var place = HeldBack(all, () => given == Given.LabsHistory ? popularity.Draw(chance) : chance.Next(all.Count));
            var (mark, hit) = MangledMarking.Of(all[place].Number, all[place].Maker, errors, chance);
            var watch = Stopwatch.StartNew();
            var candidates = await query.RunAsync(Question(all[place], mark, given), null, seesDrafts: true);
            var time = watch.Elapsed.TotalMilliseconds;
            if (i < Warm)
                continue;
            times.Add(time);
            var rank = candidates.ToList().FindIndex(one => one.Candidate.Family.Id.Value == InventedCatalogue.Id(place));
            found.Add(rank);
            if (given == Given.MarkAlone && errors > 0)
            {
                var key = string.Join(" + ", hit.Order());
                if (!slips.TryGetValue(key, out var share))
                    slips[key] = share = new Share();
                share.Add(rank);
            }

            if (withTrigram && trigram.Count < TrigramMarks)
            {
                watch.Restart();
                var nearest = await TrigramAsync(database.Source, mark);
                trigramTimes.Add(watch.Elapsed.TotalMilliseconds);
                trigram.Add(nearest.IndexOf(InventedCatalogue.Id(place)));
            }
        }

        var beside = trigram.Count > 0 ? FormattableString.Invariant($"{trigram.First:P1} | {trigram.Five:P1} | {Percentile(trigramTimes, 0.5):F1}") : " | | ";
        Console.WriteLine(FormattableString.Invariant($"| {errors} | {Words(given)} | {found.First:P1} | {found.Five:P1} | {Percentile(times, 0.5):F1} | {Percentile(times, 0.95):F1} | {beside} |"));
    }

    private static async Task CalibrationAsync(CatalogueDatabaseFixture database, IReadOnlyList<InventedFamily> all, Popularity popularity)
    {
        // As marks come: most read right, some with one error, few with two, and one part in five of a family that the catalogue does not know.
        const int UnknownInFive = 5;
        Console.WriteLine("\nScores of the first candidate on held-back naming schemes; 40 % of the marks without error, 40 % with one, 20 % with two, every fifth of a family that is not in the catalogue.\n");
        Console.WriteLine("| score | marks | mean score | right |\n|---|---|---|---|");
        var query = database.Get<MarkingCandidatesQuery>();
        var chance = new Random(4);
        var bins = new (int Count, double Score, int Right)[10];
        for (var i = 0; i < Marks; i++)
        {
            var given = (Given)(i % 3);
            var place = HeldBack(all, () => given == Given.LabsHistory ? popularity.Draw(chance) : chance.Next(all.Count));
            var (mark, _) = MangledMarking.Of(all[place].Number, all[place].Maker, ((int[])[0, 0, 1, 1, 2])[chance.Next(5)], chance);
            var question = Question(all[place], mark, given);
            var candidates = await query.RunAsync(question, null, seesDrafts: true);
            if (i % UnknownInFive == 0)
            {
                // The catalogue does not know it: the same answer without it.
                var rest = candidates.Select(one => one.Candidate.Family).Where(family => family.Id.Value != InventedCatalogue.Id(place));
                var without = MarkingCandidates.Rank(question, MarkingReadings.Of(mark, line => line.Equals(all[place].Maker, StringComparison.OrdinalIgnoreCase)), rest);
                Count(without.Count > 0 ? without[0].Score : 0, isRight: false);
            }
            else if (candidates.Count > 0)
            {
                Count(candidates[0].Candidate.Score, candidates[0].Candidate.Family.Id.Value == InventedCatalogue.Id(place));
            }
        }

        var total = bins.Sum(bin => bin.Count);
        foreach (var (bin, i) in bins.Select((bin, i) => (bin, i)).Where(bin => bin.bin.Count > 0))
            Console.WriteLine(FormattableString.Invariant($"| {i / 10.0:F1} to {(i + 1) / 10.0:F1} | {bin.Count} | {bin.Score / bin.Count:F2} | {(double)bin.Right / bin.Count:F2} |"));
        Console.WriteLine(FormattableString.Invariant($"\nExpected calibration error {bins.Sum(bin => Math.Abs(bin.Score - bin.Right)) / total:F3}."));

        void Count(double score, bool isRight)
        {
            ref var bin = ref bins[Math.Min(9, (int)(score * 10))];
            bin = (bin.Count + 1, bin.Score + score, bin.Right + (isRight ? 1 : 0));
        }
    }

    // The weights were fitted on the naming schemes of even number.
    private static int HeldBack(IReadOnlyList<InventedFamily> all, Func<int> draw)
    {
        while (true)
        {
            var place = draw();
            if (all[place].Scheme % 2 == 1)
                return place;
        }
    }

    private static MarkingQuestion Question(InventedFamily family, string mark, Given given) => new()
    {
        Marking = mark,
        Package = given == Given.PackageAndRole ? family.Package : null,
        FunctionClass = given == Given.PackageAndRole ? family.FunctionClass : null,
    };

    private static async Task<List<Guid>> TrigramAsync(NpgsqlDataSource source, string mark)
    {
        // With the threshold that pg_trgm comes with, marks with two errors find hardly anything: what is compared is the ranking.
        await using var connection = await source.OpenConnectionAsync();
        await using (var threshold = new NpgsqlCommand("set pg_trgm.similarity_threshold = 0.12", connection))
            await threshold.ExecuteNonQueryAsync();
        await using var command = new NpgsqlCommand("select id from families where search_key % $1 order by similarity(search_key, $1) desc, search_key limit 5", connection);
        command.Parameters.Add(new NpgsqlParameter { Value = MarkingKeys.Letters(MarkingFold.Line(mark)) });
        await using var reader = await command.ExecuteReaderAsync();
        var ids = new List<Guid>();
        while (await reader.ReadAsync())
            ids.Add(reader.GetGuid(0));
        return ids;
    }

    private static async Task<string> SizeAsync(CatalogueDatabaseFixture database, string index) =>
        await database.ScalarAsync<string>($"select pg_size_pretty(pg_relation_size('{index}'))");

    private static double Percentile(List<double> times, double share)
    {
        times.Sort();
        return times[Math.Min(times.Count - 1, (int)(times.Count * share))];
    }

    private static string Words(Given given) => given switch
    {
        Given.MarkAlone => "the mark alone, every family as likely",
        Given.PackageAndRole => "package and role too",
        _ => "the mark alone, families as often as the lab sees them",
    };

    private sealed class Share
    {
        private int _first;
        private int _five;

        public int Count { get; private set; }

        public double First => (double)_first / Math.Max(1, Count);

        public double Five => (double)_five / Math.Max(1, Count);

        public void Add(int rank)
        {
            Count++;
            _first += rank == 0 ? 1 : 0;
            _five += rank is >= 0 and < 5 ? 1 : 0;
        }
    }
}
