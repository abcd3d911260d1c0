using System.Globalization;
using Catalogue.Data.Teardowns;
using Catalogue.Domain.Components;
using Catalogue.Domain.Families;
using Catalogue.Domain.Figures;
using Catalogue.Domain.Photos;
using Catalogue.Domain.Products;
using Catalogue.Domain.Quantities;
using Catalogue.Domain.Teardowns;

namespace Catalogue.Lab;

/// <summary>The words of the lab for what has codes elsewhere.</summary>
public static class LabWords
{
    // Stands for a character that could not be made out; the question mark types it.
    private const char Unsure = '□';

    /// <summary>What a number for ordering is called.</summary>
    public const string OrderingVariant = "ordering variant";

    /// <summary>What a former number or another spelling is called.</summary>
    public const string OtherNumber = "former or other number";

    /// <summary>How two families stand to each other, in words.</summary>
    public static string Relation(FamilyRelationKind kind) => kind switch
    {
        FamilyRelationKind.SecondSource => "can take its place",
        FamilyRelationKind.LookAlike => "easily mistaken for it, another part",
        _ => "has nothing to do with it",
    };

    /// <summary>How a revision stands, such as <c>draft of revision 2</c>.</summary>
    public static string Words(this RevisionState state, int number) => state switch
    {
        RevisionState.Draft => FormattableString.Invariant($"draft of revision {number}"),
        RevisionState.InReview => FormattableString.Invariant($"revision {number} in review"),
        RevisionState.Published => FormattableString.Invariant($"revision {number} published"),
        RevisionState.Withdrawn => FormattableString.Invariant($"revision {number} withdrawn"),
        _ => FormattableString.Invariant($"revision {number} superseded"),
    };

    /// <summary>The running number of a teardown, such as <c>T-041</c>.</summary>
    public static string Number(int number) => FormattableString.Invariant($"T-{number:000}");

    /// <summary>How many of a part work together: <c>single</c>, <c>4 in parallel</c>, <c>2 in series of 3 in parallel</c>.</summary>
    public static string Arrangement(int parallel, int series) => (parallel, series) switch
    {
        (1, 1) => "single",
        (_, 1) => FormattableString.Invariant($"{parallel} in parallel"),
        (1, _) => FormattableString.Invariant($"{series} in series"),
        _ => FormattableString.Invariant($"{series} in series of {parallel} in parallel"),
    };

    /// <summary>The code that face.css draws the evidence mark by.</summary>
    public static string MarkCode(this Evidence evidence) => evidence is Evidence.ReadOnPart ? "read" : evidence.Word();

    /// <summary>What a photo shows.</summary>
    public static string Word(this PhotoSubject subject) => subject switch
    {
        PhotoSubject.Product => "the product from outside",
        PhotoSubject.BoardTop => "a board, top",
        PhotoSubject.BoardBottom => "a board, bottom",
        PhotoSubject.Detail => "a detail",
        _ => "a step of taking apart",
    };

    /// <summary>What a photo shows, in a word for under its small picture.</summary>
    public static string Brief(this PhotoSubject subject) => subject switch
    {
        PhotoSubject.Product => "outside",
        PhotoSubject.BoardTop => "top",
        PhotoSubject.BoardBottom => "bottom",
        PhotoSubject.Detail => "detail",
        _ => "step",
    };

    /// <summary>Which way power flows.</summary>
    public static string Word(this PortDirection direction) => direction switch
    {
        PortDirection.Output => "output",
        PortDirection.Input => "input",
        _ => "input and output",
    };

    /// <summary>Where a claim is made.</summary>
    public static string Word(this ClaimPlace place) => place switch
    {
        ClaimPlace.Label => "label",
        ClaimPlace.Box => "box",
        ClaimPlace.Manual => "manual",
        _ => "web page",
    };

    /// <summary>How the sample was obtained.</summary>
    public static string Word(this SampleSource source) => source switch
    {
        SampleSource.NotStated => "not stated",
        SampleSource.Bought => "bought",
        SampleSource.Lent => "lent",
        _ => "sponsored",
    };

    /// <summary>An age in whole units, rounded down: <c>just now</c>, <c>3 min ago</c>, <c>2 h ago</c>, <c>5 days ago</c>.</summary>
    public static string Ago(TimeSpan age) => age switch
    {
        { TotalMinutes: < 1 } => "just now",
        { TotalHours: < 1 } => FormattableString.Invariant($"{(int)age.TotalMinutes}\u00A0min ago"),
        { TotalDays: < 1 } => FormattableString.Invariant($"{(int)age.TotalHours}\u00A0h ago"),
        { TotalDays: < 2 } => "1\u00A0day ago",
        _ => FormattableString.Invariant($"{(int)age.TotalDays}\u00A0days ago"),
    };

    /// <summary>A moment by the clock of a zone, without the day where that is today: <c>13:58</c>, <c>21 Oct 2025, 13:58</c>.</summary>
    public static string Moment(DateTimeOffset moment, DateTimeOffset now, TimeZoneInfo zone)
    {
        var local = TimeZoneInfo.ConvertTime(moment, zone);
        return local.ToString(local.Date == TimeZoneInfo.ConvertTime(now, zone).Date ? "HH:mm" : "d MMM yyyy, HH:mm", CultureInfo.InvariantCulture);
    }

    /// <summary>True where nothing was read that says which part it is, or a character of the marking was not made out, and no family is known.</summary>
    public static bool IsUnread(BoardComponent component) =>
        component.FamilyId is null && (component.MarkingAsRead?.Contains(Unsure) is true || component is { MarkingAsRead: null, PartNumber: null, Value: null });

    /// <summary>A value of a figure: two decimals for a ratio, else with its unit.</summary>
    public static string ValueOf(Figure figure, double value) => figure.Unit is Unit.Ratio ? QuantityText.TwoDecimals(value) : QuantityText.Of(value, figure.Unit, 3);

    /// <summary>Why a change was not made, or null when it was.</summary>
    public static string? Problem<T>(this ChangeOutcome<T> outcome) => outcome switch
    {
        ChangeOutcome<T>.Done => null,
        ChangeOutcome<T>.NotFound x => x.Reason,
        ChangeOutcome<T>.Refused { Field: { } field } x => InWords(x.Reason, field),
        ChangeOutcome<T>.Refused x => x.Reason,
        ChangeOutcome<T>.Stale x => x.Reason,
        _ => throw new ArgumentOutOfRangeException(nameof(outcome)),
    };

    // Reasons name a field by its code, as the interface for scripts does; on a page its label stands beside it.
    private static string InWords(string reason, string field)
    {
        var words = field[(field.LastIndexOf('.') + 1)..].Replace('_', ' ');
        var text = reason.Replace(field, words, StringComparison.Ordinal);
        return char.ToUpperInvariant(text[0]) + text[1..];
    }
}
