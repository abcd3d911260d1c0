using Catalogue.Data.Components;
using Catalogue.Data.Makers;
using Catalogue.Data.Teardowns;
using Catalogue.Domain.Families;
using Catalogue.Domain.Makers;
using Catalogue.Domain.Packages;
using Catalogue.Domain.Text;
using Microsoft.EntityFrameworkCore;

namespace Catalogue.Data.Families;

/// <summary>What is known of part families: facts, names, makers, typical ratings, and how they stand to each other.</summary>
/// <param name="editing">The door to families.</param>
public sealed class FamilyChanges(FamilyEditing editing)
{
    /// <summary>The most names, makers, ratings or relations of one family.</summary>
    public const int MaxEach = 200;

    /// <summary>Changes the facts of a family.</summary>
    /// <param name="slug">Its address.</param>
    /// <param name="expectedVersion">The version the editor saw, or null.</param>
    /// <param name="amend">Makes the new form of the present one, or refuses.</param>
    /// <param name="who">Who makes the change.</param>
    /// <param name="cancellationToken">Cancels the change.</param>
    public Task<ChangeOutcome<FamilyId>> AmendAsync(
        string slug, uint? expectedVersion, Func<FamilyForm, ChangeOutcome<FamilyForm>> amend, Editor who, CancellationToken cancellationToken = default) =>
        editing.EditAsync<FamilyId>(
            slug,
            who,
            "amend family",
            (edit, family, _) =>
            {
                if (expectedVersion is { } expected && expected != family.Version)
                    return Task.FromResult<ChangeOutcome<FamilyId>>(new ChangeOutcome<FamilyId>.Stale("Somebody else saved this family first. Read it again, compare, and save once more."));
                var amended = amend(FamilyForm.Of(family));
                if (amended is not ChangeOutcome<FamilyForm>.Done { Value: var form })
                    return Task.FromResult(amended.As<FamilyId>());
                return Task.FromResult<ChangeOutcome<FamilyId>>(
                    Write(family, form) is { } refusal ? new ChangeOutcome<FamilyId>.Refused(refusal.Field, refusal.Reason) : new ChangeOutcome<FamilyId>.Done(family.Id));
            },
            cancellationToken);

    /// <summary>Adds another number that joins: a part number with its match key belongs to the family.</summary>
    public Task<ChangeOutcome<string>> AddAliasAsync(string slug, string? name, FamilyNameKind kind, Editor who, CancellationToken cancellationToken = default) =>
        editing.EditAsync<string>(
            slug,
            who,
            "add family alias",
            async (edit, family, cancel) =>
            {
                if (kind is not (FamilyNameKind.OrderingVariant or FamilyNameKind.OtherNumber))
                    return new ChangeOutcome<string>.Refused("kind", "kind is ordering_variant or other_number; a code that parts share is a top mark.");
                var check = new FormCheck();
                var written = check.Need(name, "name", PartFamily.MaxNameLength);
                if (check.Refusal is { } refusal)
                    return new ChangeOutcome<string>.Refused(refusal.Field, refusal.Reason);
                if (PartNumber.From(written) is not { } number || !LinkFamilies.IsIdentifying(number))
                    return new ChangeOutcome<string>.Refused("name", $"“{written}” is no part number: it needs a digit, and at most two blanks.");
                if (number.MatchKey == family.MatchKey)
                    return new ChangeOutcome<string>.Refused("name", $"“{written}” joins this family already: packing and finish are left out.");
                if (await edit.Context.Families.SingleOrDefaultAsync(row => row.MatchKey == number.MatchKey, cancel) is { } other)
                    return new ChangeOutcome<string>.Refused("name", other.MergedIntoId == family.Id
                        ? $"“{written}” joins this family already: “{other.Slug}” was merged into it."
                        : $"“{written}” is a family of its own, “{other.Slug}”. Merge it into this one if the two are one.");
                if (await edit.Context.FamilyAliases.SingleOrDefaultAsync(row => row.MatchKey == number.MatchKey, cancel) is { } taken)
                {
                    var owner = await edit.Context.Families.Where(row => row.Id == taken.FamilyId).Select(row => row.Slug).SingleAsync(cancel);
                    return new ChangeOutcome<string>.Refused("name", $"“{written}” is a name of “{owner}” already.");
                }

                if (await edit.Context.FamilyAliases.CountAsync(row => row.FamilyId == family.Id, cancel) >= MaxEach)
                    return TooMany<string>("names");
                edit.Context.FamilyAliases.Add(new FamilyAlias { FamilyId = family.Id, Name = written, MatchKey = number.MatchKey, Kind = kind });
                return new ChangeOutcome<string>.Done(number.MatchKey);
            },
            cancellationToken);

    /// <summary>Takes such a number away again; components that it led here stay.</summary>
    public Task<ChangeOutcome<string>> RemoveAliasAsync(string slug, string name, Editor who, CancellationToken cancellationToken = default) =>
        editing.EditAsync<string>(
            slug,
            who,
            "remove family alias",
            async (edit, family, cancel) =>
            {
                var key = PartNumber.From(name)?.MatchKey;
                if (await edit.Context.FamilyAliases.SingleOrDefaultAsync(row => edit.Members(family).Contains(row.FamilyId) && row.MatchKey == key, cancel) is not { } alias)
                    return new ChangeOutcome<string>.NotFound($"“{slug}” has no such name as “{name}”.");
                edit.Context.Remove(alias);
                return new ChangeOutcome<string>.Done(alias.MatchKey);
            },
            cancellationToken);

    /// <summary>Adds a short code that stands on the part; other families may share it.</summary>
    public Task<ChangeOutcome<TopMarkId>> AddTopMarkAsync(string slug, TopMarkForm form, Editor who, CancellationToken cancellationToken = default) =>
        editing.EditAsync<TopMarkId>(
            slug,
            who,
            "add top mark",
            async (edit, family, cancel) =>
            {
                ArgumentNullException.ThrowIfNull(form);
                var check = new FormCheck();
                var code = check.Need(form.Code, "code", TopMark.MaxCodeLength);
                var maker = check.May(form.Maker, "maker", Maker.MaxNameLength);
                var package = check.May(form.Package, "package", 200);
                var source = check.May(form.Source, "source", 500);
                if (check.Refusal is { } refusal)
                    return new ChangeOutcome<TopMarkId>.Refused(refusal.Field, refusal.Reason);
                if (!code.Any(char.IsAsciiLetterOrDigit))
                    return new ChangeOutcome<TopMarkId>.Refused("code", "code holds no letter A to Z and no digit, so that it could never be found.");
                if (await edit.Context.TopMarks.CountAsync(row => row.FamilyId == family.Id, cancel) >= MaxEach)
                    return TooMany<TopMarkId>("top marks");
                var owner = MakerName.Key(maker).Length > 0 ? await FindOrAddMaker.RunAsync(edit.Context, maker!, cancel) : null;
                if (await edit.Context.TopMarks.AnyAsync(row => row.FamilyId == family.Id && row.Code == code && row.MakerId == (owner == null ? null : owner.Id), cancel))
                    return new ChangeOutcome<TopMarkId>.Refused("code", $"“{slug}” has the top mark “{code}” of this maker already.");
                var mark = new TopMark { Id = TopMarkId.New(), FamilyId = family.Id, Code = code, MakerId = owner?.Id, Package = package, Source = source };
                edit.Context.TopMarks.Add(mark);
                return new ChangeOutcome<TopMarkId>.Done(mark.Id);
            },
            cancellationToken);

    /// <summary>Takes a top mark away.</summary>
    public Task<ChangeOutcome<TopMarkId>> RemoveTopMarkAsync(string slug, TopMarkId id, Editor who, CancellationToken cancellationToken = default) =>
        RemoveAsync(slug, "remove top mark", (edit, family, cancel) => edit.Context.TopMarks.Where(row => row.Id == id && edit.Members(family).Contains(row.FamilyId)).ToListAsync(cancel), id, who, cancellationToken);

    /// <summary>Adds a typical rating.</summary>
    public Task<ChangeOutcome<FamilyRatingId>> AddRatingAsync(string slug, RatingForm form, Editor who, CancellationToken cancellationToken = default) =>
        editing.EditAsync<FamilyRatingId>(
            slug,
            who,
            "add family rating",
            async (edit, family, cancel) =>
            {
                ArgumentNullException.ThrowIfNull(form);
                if (RatingReading.Of(form, out var read) is { } refusal)
                    return new ChangeOutcome<FamilyRatingId>.Refused(refusal.Field, refusal.Reason);
                if (await edit.Context.FamilyRatings.CountAsync(row => row.FamilyId == family.Id, cancel) >= MaxEach)
                    return TooMany<FamilyRatingId>("ratings");
                var rating = new FamilyRating
                {
                    Id = FamilyRatingId.New(),
                    FamilyId = family.Id,
                    Kind = read.Kind,
                    Low = read.Value.Low,
                    Nominal = read.Value.Nominal,
                    High = read.Value.High,
                    Condition = read.Condition,
                    Evidence = read.Evidence,
                    Source = read.Source,
                };
                edit.Context.FamilyRatings.Add(rating);
                return new ChangeOutcome<FamilyRatingId>.Done(rating.Id);
            },
            cancellationToken);

    /// <summary>Takes a typical rating away.</summary>
    public Task<ChangeOutcome<FamilyRatingId>> RemoveRatingAsync(string slug, FamilyRatingId id, Editor who, CancellationToken cancellationToken = default) =>
        RemoveAsync(slug, "remove family rating", (edit, family, cancel) => edit.Context.FamilyRatings.Where(row => row.Id == id && edit.Members(family).Contains(row.FamilyId)).ToListAsync(cancel), id, who, cancellationToken);

    /// <summary>Adds a maker, by its name or an alias of it; a new one is opened.</summary>
    public Task<ChangeOutcome<MakerId>> AddMakerAsync(string slug, string? name, Editor who, CancellationToken cancellationToken = default) =>
        editing.EditAsync<MakerId>(
            slug,
            who,
            "add maker of family",
            async (edit, family, cancel) =>
            {
                var check = new FormCheck();
                var written = check.Need(name, "maker", Maker.MaxNameLength);
                if (check.Refusal is { } refusal)
                    return new ChangeOutcome<MakerId>.Refused(refusal.Field, refusal.Reason);
                if (MakerName.Key(written).Length == 0 || PlaceholderText.IsPlaceholder(written))
                    return new ChangeOutcome<MakerId>.Refused("maker", $"“{written}” is no name of a maker.");
                var maker = await FindOrAddMaker.RunAsync(edit.Context, written, cancel);
                if (!await edit.Context.FamilyMakers.AnyAsync(row => row.FamilyId == family.Id && row.MakerId == maker.Id, cancel))
                    edit.Context.FamilyMakers.Add(new FamilyMaker { FamilyId = family.Id, MakerId = maker.Id });
                return new ChangeOutcome<MakerId>.Done(maker.Id);
            },
            cancellationToken);

    /// <summary>Takes a maker away from the family.</summary>
    public Task<ChangeOutcome<MakerId>> RemoveMakerAsync(string slug, MakerId id, Editor who, CancellationToken cancellationToken = default) =>
        RemoveAsync(slug, "remove maker of family", (edit, family, cancel) => edit.Context.FamilyMakers.Where(row => row.MakerId == id && edit.Members(family).Contains(row.FamilyId)).ToListAsync(cancel), id, who, cancellationToken);

    /// <summary>Takes a maker away from the family, by its address, its name or an alias of it.</summary>
    public Task<ChangeOutcome<string>> RemoveMakerAsync(string slug, string maker, Editor who, CancellationToken cancellationToken = default)
    {
        var key = MakerName.Key(maker);
        return RemoveAsync(
            slug,
            "remove maker of family",
            (edit, family, cancel) => edit.Context.FamilyMakers
                .Where(row => edit.Members(family).Contains(row.FamilyId)
                    && (edit.Context.Makers.Any(named => named.Id == row.MakerId && (named.Slug == maker || named.NameKey == key))
                        || edit.Context.MakerAliases.Any(alias => alias.MakerId == row.MakerId && alias.NameKey == key)))
                .ToListAsync(cancel),
            maker,
            who,
            cancellationToken);
    }

    /// <summary>Says how two families stand to each other; the last word counts.</summary>
    public Task<ChangeOutcome<FamilyId>> RelateAsync(string slug, string? other, FamilyRelationKind? kind, string? note, Editor who, CancellationToken cancellationToken = default) =>
        editing.EditAsync<FamilyId>(
            slug,
            who,
            "relate families",
            async (edit, family, cancel) =>
            {
                ArgumentNullException.ThrowIfNull(who);
                var check = new FormCheck();
                var why = check.May(note, "note", FamilyRelation.MaxNoteLength);
                if (check.Refusal is { } refusal)
                    return new ChangeOutcome<FamilyId>.Refused(refusal.Field, refusal.Reason);
                if (kind is not { } said)
                    return new ChangeOutcome<FamilyId>.Refused("kind", $"kind is one of {string.Join(", ", SnakeCase.All<FamilyRelationKind>())}.");
                if (await edit.FindAsync(other, cancel) is not { } second)
                    return new ChangeOutcome<FamilyId>.Refused("family", FamilyEditing.Missing(other));
                if (second.Id == family.Id)
                    return new ChangeOutcome<FamilyId>.Refused("family", "A family is not related to itself.");
                var (one, two) = InOrder(family.Id, second.Id);
                if (await edit.Context.FamilyRelations.SingleOrDefaultAsync(row => row.OneId == one && row.OtherId == two, cancel) is { } known)
                    (known.Kind, known.Note, known.At, known.Who) = (said, why, edit.Now, who.Name);
                else
                    edit.Context.FamilyRelations.Add(new FamilyRelation { OneId = one, OtherId = two, Kind = said, Note = why, At = edit.Now, Who = who.Name });
                return new ChangeOutcome<FamilyId>.Done(second.Id);
            },
            cancellationToken);

    /// <summary>Takes back what was said of two families.</summary>
    public Task<ChangeOutcome<FamilyId>> UnrelateAsync(string slug, string other, Editor who, CancellationToken cancellationToken = default) =>
        editing.EditAsync<FamilyId>(
            slug,
            who,
            "unrelate families",
            async (edit, family, cancel) =>
            {
                var second = await edit.FindAsync(other, cancel);
                var (one, two) = InOrder(family.Id, second?.Id ?? family.Id);
                if (await edit.Context.FamilyRelations.SingleOrDefaultAsync(row => row.OneId == one && row.OtherId == two, cancel) is not { } known)
                    return new ChangeOutcome<FamilyId>.NotFound($"Nothing was said of “{slug}” and “{other}”.");
                edit.Context.Remove(known);
                return new ChangeOutcome<FamilyId>.Done(second!.Id);
            },
            cancellationToken);

    private static (FamilyId One, FamilyId Other) InOrder(FamilyId one, FamilyId other) => one.Value.CompareTo(other.Value) < 0 ? (one, other) : (other, one);

    private static Refusal? Write(PartFamily family, FamilyForm form)
    {
        var check = new FormCheck();
        var name = check.Need(form.Name, "name", PartFamily.MaxNameLength);
        var datasheet = check.May(form.DatasheetUrl, "datasheet_url", 500);
        var packages = check.List(form.Packages, "packages", 20, 200);
        var note = check.May(form.Note, "note", PartFamily.MaxNoteLength);
        if (check.Refusal is { } refusal)
            return refusal;
        if (PartNumber.From(name)?.MatchKey != family.MatchKey)
            return new Refusal("name", $"“{name}” is another number than “{family.MatchKey}”. Add it as a name, or split the family.");
        if (datasheet is not null && !(Uri.TryCreate(datasheet, UriKind.Absolute, out var address) && address.Scheme is "http" or "https"))
            return new Refusal("datasheet_url", "datasheet_url is an address that begins with http:// or https://.");
        family.Name = name;
        family.FunctionClass = form.FunctionClass;
        family.DatasheetUrl = datasheet;
        family.Packages = [.. packages.Select(package => PackageText.Read(package).Canonical ?? package).Distinct(StringComparer.OrdinalIgnoreCase)];
        family.Note = note;
        return null;
    }

    private static ChangeOutcome<T>.Refused TooMany<T>(string what) => new(null, FormattableString.Invariant($"A family holds at most {MaxEach} {what}."));

    private Task<ChangeOutcome<T>> RemoveAsync<T, TRow>(
        string slug, string action, Func<FamilyEditing.Change, PartFamily, CancellationToken, Task<List<TRow>>> find, T id, Editor who, CancellationToken cancellationToken)
        where TRow : class =>
        editing.EditAsync<T>(
            slug,
            who,
            action,
            async (edit, family, cancel) =>
            {
                if (await find(edit, family, cancel) is not { Count: > 0 } rows)
                    return new ChangeOutcome<T>.NotFound($"“{slug}” has no such entry as {id}.");
                edit.Context.RemoveRange(rows);
                return new ChangeOutcome<T>.Done(id);
            },
            cancellationToken);
}
