using System.Text.Json;
using System.Text.Json.Nodes;
using Catalogue.Data.Archives;
using Catalogue.Data.Figures;
using Catalogue.Data.Photos;
using Catalogue.Domain.Components;
using Catalogue.Domain.Families;
using Catalogue.Domain.Figures;
using Catalogue.Domain.Makers;
using Catalogue.Domain.Publishing;
using Catalogue.Domain.Quantities;
using Catalogue.Domain.Rails;
using Catalogue.Domain.Teardowns;
using Catalogue.Testing;
using Microsoft.EntityFrameworkCore;

namespace Catalogue.Data.Tests.Archives;

/// <summary>
/// A catalogue filled by chance: every kind of record, each field null, ordinary or extreme, texts from all over Unicode. It is written past the forms, so that
/// whatever a database may hold is tried.
/// </summary>
internal sealed class RandomCatalogue(CatalogueDatabaseFixture database, HandPhotos photos, int seed)
{
    private static readonly string[] Texts =
    [
        "Q1", "across C1 – C2", "4k7 ±1 %", "Ω µ 𝛀 🔋🧯", "e\u0301 = é", "\u202Eright to left\u202C عربى", "line\nline\ttab", "\"quoted\" \\ {json} </script>", "\uFFFD\uFEFF\u2028", "  blanks  ", "名前", new string('長', 120),
    ];

    private readonly Random _chance = new(seed);
    private readonly List<FamilyId> _families = [];
    private readonly List<string> _shas = [];

    /// <summary>Fills it.</summary>
    public async Task FillAsync(int teardowns)
    {
        await using var context = await database.ContextAsync();
        var makers = await AddMakersAsync(context);
        await AddFamiliesAsync(context, makers);
        for (byte i = 0; i < 4; i++)
        {
            _shas.Add(photos.Put([1, 2, 3, i, (byte)seed]));
            context.MediaFiles.Add(new MediaFile { Sha256 = _shas[^1], Kind = "png", Bytes = 5, WidthPixels = HandPhotos.Width, HeightPixels = HandPhotos.Height, ReceivedAt = Moment() });
        }

        await context.SaveChangesAsync();
        for (var i = 0; i < teardowns; i++)
            await AddTeardownAsync(i);
    }

    private async Task<List<Maker>> AddMakersAsync(CatalogueContext context)
    {
        List<Maker> makers = [.. new[] { "Ferrowick", "Órdoñez & Søn", "名前 Power", "k" }.Select((name, i) => new Maker { Id = MakerId.New(), Name = name, NameKey = MakerName.Key(name), Slug = $"maker-{i}" })];
        context.Makers.AddRange(makers);
        context.MakerAliases.AddRange(makers.Select(maker => new MakerAlias { MakerId = maker.Id, Name = maker.Name + " (old)", NameKey = MakerName.Key(maker.Name + " (old)") }));
        await context.SaveChangesAsync();
        return makers;
    }

    private async Task AddFamiliesAsync(CatalogueContext context, List<Maker> makers)
    {
        for (var i = 0; i < 8; i++)
        {
            var number = PartNumber.From($"FX{seed}Ж{i}00")!;
            var family = new PartFamily
            {
                Id = FamilyId.New(),
                Name = i == 0 ? "written otherwise" : number.MatchKey,
                MatchKey = number.MatchKey,
                SearchKey = number.SearchKey,
                Slug = $"fx-{i}",
                FunctionClass = Maybe() ? Any<FunctionClass>() : null,
                DatasheetUrl = Maybe() ? "https://maker.example/fx.pdf" : null,
                Packages = Maybe() ? ["SOT-23", Text()] : [],
                Note = Maybe() ? Text() : null,
                MergedIntoId = i == 7 ? _families[1] : null,
            };
            _families.Add(family.Id);
            context.Families.Add(family);
            var other = PartNumber.From($"ALT{seed}-{i}")!;
            context.FamilyAliases.Add(new FamilyAlias { FamilyId = family.Id, Name = other.MatchKey.ToLowerInvariant(), MatchKey = other.MatchKey, Kind = Maybe() ? FamilyNameKind.OrderingVariant : FamilyNameKind.OtherNumber });
            context.FamilyMakers.AddRange(makers.Where(_ => Maybe()).Select(maker => new FamilyMaker { FamilyId = family.Id, MakerId = maker.Id }));
            context.TopMarks.AddRange(
                new TopMark { Id = TopMarkId.New(), FamilyId = family.Id, Code = "A1K", MakerId = Maybe() ? makers[0].Id : null, Package = Maybe() ? "SOT-23" : null, Source = Maybe() ? Text() : null },
                new TopMark { Id = TopMarkId.New(), FamilyId = family.Id, Code = "A1K" });
            for (var rating = 0; rating < 3; rating++)
            {
                var kind = Any<RatingKind>();
                var (low, nominal, high) = Cases(value => kind.Refuse(value));
                context.FamilyRatings.Add(new FamilyRating { Id = FamilyRatingId.New(), FamilyId = family.Id, Kind = kind, Low = low, Nominal = nominal, High = high, Condition = Maybe() ? Text() : null, Evidence = Any<Evidence>(), Source = Maybe() ? Text() : null });
            }

            await context.SaveChangesAsync();
        }

        for (var i = 0; i < 3; i++)
        {
            var (one, other) = (_families[2 * i], _families[(2 * i) + 1]);
            context.FamilyRelations.Add(new FamilyRelation { OneId = one, OtherId = other, Kind = Any<FamilyRelationKind>(), Note = Maybe() ? Text() : null, At = Moment(), Who = "I. Sorrel" });
        }

        await context.SaveChangesAsync();
    }

    private async Task AddTeardownAsync(int index)
    {
        var made = await new Bench(database).TeardownAsync("Órdoñez & Søn", $"Lath {index} ⚡");
        await using var context = await database.ContextAsync();
        // The draft that was opened with it is filled; later revisions stand beside it as if they had been copied and edited.
        var opened = await context.Revisions.SingleAsync(row => row.TeardownId == made.Id);
        if (Maybe())
            await context.Teardowns.Where(row => row.Id == made.Id).ExecuteUpdateAsync(set => set.SetProperty(row => row.SerialNumber, "SN 4711 ⚡"));
        context.Remove(opened);
        await context.SaveChangesAsync();
        var states = index switch
        {
            0 => new[] { RevisionState.Superseded, RevisionState.Withdrawn, RevisionState.Published, RevisionState.Draft },
            1 => [RevisionState.Published],
            2 => [RevisionState.Withdrawn],
            3 => [RevisionState.InReview],
            _ => [RevisionState.Superseded, RevisionState.Published],
        };
        for (var i = 0; i < states.Length; i++)
            await AddRevisionAsync(made.Id, (2 * i) + 1, states[i]);
    }

    private async Task AddRevisionAsync(TeardownId teardown, int number, RevisionState state)
    {
        await using var context = await database.ContextAsync();
        var isDraft = state is RevisionState.Draft or RevisionState.InReview;
        var pools = new Dictionary<Type, List<Guid>>();
        var revision = (Revision)Record(context, ArchiveKind.Revision, pools, 0);
        var row = context.Entry(revision);
        row.Property(entity => entity.TeardownId).CurrentValue = teardown;
        row.Property(entity => entity.Number).CurrentValue = number;
        row.Property(entity => entity.State).CurrentValue = RevisionState.Draft;
        row.Property(entity => entity.PublishedAt).CurrentValue = null;
        row.State = EntityState.Added;
        await context.SaveChangesAsync();
        foreach (var kind in ArchiveKind.Content)
        {
            for (var i = 0; i < 4; i++)
            {
                if (isDraft && kind.Type == typeof(Figure))
                    continue;
                var record = (IRevisionContent)Record(context, kind, pools, i);
                record.RevisionId = revision.Id;
                if (record is BoardComponent part && Maybe())
                    (part.FamilyId, part.FamilyEvidence) = (_families[_chance.Next(_families.Count)], Any<Evidence>());
                context.Add(record);
            }

            await context.SaveChangesAsync();
            context.ChangeTracker.Clear();
        }

        if (!isDraft && Maybe())
        {
            var moved = await context.Components.FirstAsync(part => part.RevisionId == revision.Id);
            context.FamilyMoves.Add(new FamilyMove { RevisionId = revision.Id, ComponentId = moved.Id, FamilyId = _families[2] });
        }

        if (isDraft)
        {
            await using var transaction = await context.Database.BeginTransactionAsync();
            await RecomputeFigures.RunAsync(context, revision.Id, default);
            await transaction.CommitAsync();
        }
        else
        {
            context.Publications.Add(new Publication { Id = PublicationId.New(), TeardownId = teardown, RevisionId = revision.Id, Note = number == 1 ? "" : Text(), PublishedAt = Moment(), PublishedBy = "M. Adair" });
            await context.SaveChangesAsync();
        }

        DateTimeOffset? publishedAt = isDraft ? null : Moment();
        await context.Revisions.Where(entity => entity.Id == revision.Id).ExecuteUpdateAsync(set => set.SetProperty(entity => entity.State, state).SetProperty(entity => entity.PublishedAt, publishedAt));
    }

    // Made as somebody's line would be read, so that the fields are those of the form.
    private object Record(CatalogueContext context, ArchiveKind kind, Dictionary<Type, List<Guid>> pools, int index)
    {
        var entity = context.Model.FindEntityType(kind.Type)!;
        var line = new JsonObject();
        var rating = Any<RatingKind>();
        Func<Interval, string?>? refuse = kind.Name switch
        {
            "rating" => value => rating.Refuse(value),
            "rail_quantity" => value => RailQuantityKind.MinVoltage.Refuse(value),
            "discharge_reading" => value => value.High > DischargeReading.HighestVolts ? "too high" : null,
            _ => null,
        };
        var cases = Cases(refuse);
        var areKnown = Maybe();
        foreach (var property in ArchiveJson.Options.GetTypeInfo(kind.Type).Properties)
        {
            var type = Nullable.GetUnderlyingType(property.PropertyType) ?? property.PropertyType;
            var limit = entity.GetProperties().FirstOrDefault(column => JsonNamingPolicy.SnakeCaseLower.ConvertName(column.Name) == property.Name)?.GetMaxLength() ?? 300;
            line[property.Name] = property.Name switch
            {
                "record" => kind.Name,
                "family" => null,
                "name" when kind.Name == "rail" => $"rail {index} Ω 🔋",
                "rule" => $"rule_{index}",
                "component_id" when kind.Name == "figure" => Id(pools, typeof(ComponentId), index % 2 == 0),
                "rail_id" when kind.Name is "figure" => Id(pools, typeof(RailId), index % 2 == 1),
                "kind" when kind.Name == "rail_quantity" => "min_voltage",
                "kind" when kind.Name == "rating" => JsonNamingPolicy.SnakeCaseLower.ConvertName(rating.ToString()),
                "x" or "y" or "width" or "height" => new[] { 0, 1, 1e-300, 0.1 + 0.2 }[_chance.Next(4)],
                "board_id" or "port_id" when kind.Name == "callout" => null,
                "rail_id" when kind.Name == "rail_quantity" => pools[typeof(RailId)][index],
                "parent_id" => null,
                "sha256" => _shas[_chance.Next(_shas.Count)],
                "width_pixels" => HandPhotos.Width,
                "height_pixels" => HandPhotos.Height,
                "low" or "low_v" or "low_mm" => property.IsRequired || areKnown ? cases.Low : null,
                "nominal" or "nominal_v" or "nominal_mm" => property.IsRequired || areKnown ? cases.Nominal : null,
                "value" when type == typeof(double) && kind.Name == "test" => areKnown ? cases.Nominal : null,
                "high" or "high_v" or "high_mm" => property.IsRequired || areKnown ? cases.High : null,
                "missing" => new JsonArray(new JsonObject { ["code"] = "rated_current", ["words"] = Text() }),
                "working" => JsonSerializer.SerializeToNode(SomeWorking(), ArchiveJson.Options),
                "imported_row" => Maybe() ? new JsonArray(new JsonObject { ["header"] = Text(), ["text"] = "" }, new JsonObject { ["header"] = Text(), ["text"] = Text() }) : new JsonArray(),
                "id" => Own(pools, type),
                "corners" => Maybe() ? new JsonArray(0.25, 1e-300, -0.0, 1) : new JsonArray(),
                _ when !property.IsRequired && Maybe() => null,
                _ when pools.ContainsKey(type) => Id(pools, type, property.IsRequired || Maybe()),
                _ => Value(type, limit),
            };
        }

        return ArchiveJson.ReadLine(JsonSerializer.SerializeToUtf8Bytes(line)).Record;
    }

    private JsonNode? Value(Type type, int limit)
    {
        if (type.IsEnum)
            return type == typeof(Unit) ? "V" : JsonNamingPolicy.SnakeCaseLower.ConvertName(Enum.GetNames(type)[_chance.Next(Enum.GetNames(type).Length)]);
        if (type == typeof(string))
            return Text(limit);
        if (type == typeof(int))
            return _chance.Next(1, 4) == 1 ? int.MaxValue : _chance.Next(1, 100);
        if (type == typeof(double))
            return Cases().Nominal;
        if (type == typeof(bool))
            return Maybe();
        if (type == typeof(DateOnly))
            return Maybe() ? "0001-01-01" : "2031-02-28";
        if (type == typeof(DateTimeOffset))
            return JsonSerializer.SerializeToNode(Moment(), ArchiveJson.Options);
        if (type == typeof(string[]))
            return new JsonArray(Text(limit), "");
        if (type == typeof(Guid[]))
            return Maybe() ? new JsonArray(Guid.NewGuid()) : new JsonArray();
        throw new NotSupportedException($"The chance does not know {type}.");
    }

    private static Guid Own(Dictionary<Type, List<Guid>> pools, Type type)
    {
        if (!pools.TryGetValue(type, out var pool))
            pools[type] = pool = [];
        pool.Add(Guid.CreateVersion7());
        return pool[^1];
    }

    private JsonNode? Id(Dictionary<Type, List<Guid>> pools, Type type, bool isThere) => isThere ? JsonValue.Create(pools[type][_chance.Next(pools[type].Count)]) : null;

    private Working SomeWorking() => new(
        [new WorkingStep("I", Text(), "I = P / U", "10 / 5", "worst", 1, 2, 3, Unit.Ampere)],
        [new WorkingInput("P", Text(), 0, 1e-300, 1e300, Unit.Watt, Maybe() ? Any<Evidence>() : null, Maybe() ? Text() : null)],
        [Text()],
        []);

    // Drawn again until the kind takes them.
    private (double Low, double Nominal, double High) Cases(Func<Interval, string?>? refuse = null)
    {
        while (true)
        {
            var cases = AnyCases();
            if (refuse?.Invoke(Interval.Create(cases.Low, cases.Nominal, cases.High)) is null)
                return cases;
        }
    }

    private (double Low, double Nominal, double High) AnyCases() => _chance.Next(8) switch
    {
        0 => (0, 0, 0),
        1 => (1e-300, 1, 1e300),
        2 => (0.1, 0.2, 0.1 + 0.2),
        3 => (5e-324, 5e-324, double.MaxValue),
        4 => (1e-300, 0.05, 0.1),
        5 => (1, 1, 10),
        6 => (5e-324, 1, 1),
        _ => (12, 12.6, 13),
    };

    private string Text(int limit = 300)
    {
        var text = Texts[_chance.Next(Texts.Length)];
        return text.Length <= limit ? text : "short";
    }

    private T Any<T>()
        where T : struct, Enum => Enum.GetValues<T>()[_chance.Next(Enum.GetValues<T>().Length)];

    private bool Maybe() => _chance.Next(2) == 0;

    private DateTimeOffset Moment() => new DateTimeOffset(2031, 1, 1, 0, 0, 0, TimeSpan.Zero).AddTicks(_chance.NextInt64(TimeSpan.TicksPerDay * 365) / 10 * 10);
}
