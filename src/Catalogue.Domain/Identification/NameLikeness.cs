using System.Text;
using Catalogue.Domain.Families;

namespace Catalogue.Domain.Identification;

/// <summary>How two different names of parts are alike: as versions of one stem, or because one is easily taken for the other.</summary>
/// <remarks>
/// <para>
/// Versions share a stem of at least <see cref="ShortestStem"/> signs up to a digit, and differ in the letters behind its last digit (at most
/// <see cref="LongestEnding"/>) or in the grade. Look-alikes are read for each other at a cost of at most <see cref="MostCost"/> nats
/// (<see cref="MarkingChannel"/>, the cheaper way round): two look-alike characters, one lost character and a look-alike, a worn end of two.
/// </para>
/// <para>House rule. Symmetric in kind and likeness. It makes nobody's parts one.</para>
/// </remarks>
public sealed record NameLikeness
{
    /// <summary>Fewest signs of a stem that versions share.</summary>
    public const int ShortestStem = 4;

    /// <summary>Most letters of an ending.</summary>
    public const int LongestEnding = 3;

    /// <summary>The cost, in nats, up to which two names are easily taken for each other.</summary>
    public const float MostCost = 11f;

    private const double LeastSimilarity = 0.75;

    private NameLikeness(NameLikenessKind kind, string name, string other, double similarity, IReadOnlyList<MarkingDistance.Step> steps)
    {
        Kind = kind;
        Similarity = similarity;
        NamePieces = Pieces(name, steps, step => step.Observed is not null, other);
        OtherPieces = Pieces(other, steps, step => step.Expected is not null, name);
        Differences = [.. Describe(name, other, steps)];
    }

    /// <summary>In which way they are alike.</summary>
    public NameLikenessKind Kind { get; }

    /// <summary>0 to 1; 1 where they are read the same (<see cref="MarkingDistance.Similarity"/>).</summary>
    public double Similarity { get; }

    /// <summary>The first name, cut where it differs; the pieces together are the name.</summary>
    public IReadOnlyList<NamePiece> NamePieces { get; }

    /// <summary>The other name, likewise.</summary>
    public IReadOnlyList<NamePiece> OtherPieces { get; }

    /// <summary>Each difference in words, the first name's character first; never empty.</summary>
    public IReadOnlyList<string> Differences { get; }

    /// <summary>Holds two names against each other.</summary>
    /// <param name="name">A name as its family writes it, at most <see cref="PartFamily.MaxNameLength"/> characters; a longer one throws.</param>
    /// <param name="other">Another one.</param>
    /// <returns>Null where they are the same, or not alike.</returns>
    public static NameLikeness? Of(string name, string other)
    {
        ArgumentNullException.ThrowIfNull(name);
        ArgumentNullException.ThrowIfNull(other);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(name.Length, PartFamily.MaxNameLength);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(other.Length, PartFamily.MaxNameLength);
        var (letters, otherLetters) = (MarkingKeys.Letters(name), MarkingKeys.Letters(other));
        if (letters.Length == 0 || otherLetters.Length == 0 || name == other)
            return null;
        // Letters of other alphabets are compared by their shape and told apart by themselves.
        var (shape, otherShape) = (ForeignLetters.ToLatinShapes(name), ForeignLetters.ToLatinShapes(other));
        var similarity = MarkingDistance.Similarity(shape, otherShape);
        if (AreVersions(name, other))
            return new(NameLikenessKind.Version, name, other, similarity, MarkingDistance.Steps(shape, otherShape));
        var cost = letters == otherLetters ? 0 : Math.Min(MarkingChannel.Cost(letters, otherLetters), MarkingChannel.Cost(otherLetters, letters));
        return cost <= MostCost && MarkingDistance.Similarity(letters, otherLetters) >= LeastSimilarity
            ? new(NameLikenessKind.LookAlike, name, other, similarity, MarkingDistance.Steps(shape, otherShape))
            : null;
    }

    /// <summary>The stem of a name, by its letters and digits: without the letters behind its last digit, and without grade. Too short or unusual a name is its own stem.</summary>
    public static string Stem(string name) => Split(name).Stem;

    private static bool AreVersions(string name, string other)
    {
        var (one, two) = (Split(name), Split(other));
        return one.Stem == two.Stem && one.Ending != two.Ending && one.Foreign == two.Foreign;
    }

    private static (string Stem, string Ending, string Foreign) Split(string name)
    {
        var number = PartNumber.From(name);
        var letters = MarkingKeys.Letters(number?.Base ?? name);
        var end = letters.Length;
        while (end > 0 && letters.Length - end < LongestEnding && char.IsAsciiLetter(letters[end - 1]))
            end--;
        var foreign = string.Concat(name.Where(letter => ForeignLetters.Shape(letter) is not null));
        // Letters that go on are part of the stem.
        if (end < ShortestStem || !char.IsAsciiDigit(letters[end - 1]))
            end = letters.Length;
        return (letters[..end], $"{letters[end..]}-{number?.Grade}", foreign);
    }

    private static List<NamePiece> Pieces(string name, IReadOnlyList<MarkingDistance.Step> steps, Func<MarkingDistance.Step, bool> isHere, string other)
    {
        var pieces = new List<NamePiece>();
        var run = new StringBuilder();
        var runDiffers = false;
        foreach (var (step, place, otherPlace) in Placed(steps, isHere))
        {
            var differs = !step.IsEqual || name[place] != other[otherPlace];
            if (run.Length > 0 && differs != runDiffers)
            {
                pieces.Add(new NamePiece(run.ToString(), runDiffers));
                run.Clear();
            }

            runDiffers = differs;
            run.Append(name[place]);
        }

        if (run.Length > 0)
            pieces.Add(new NamePiece(run.ToString(), runDiffers));
        return pieces;
    }

    // The steps that have a character here, each with its place here and in the other name.
    private static IEnumerable<(MarkingDistance.Step Step, int Place, int OtherPlace)> Placed(IReadOnlyList<MarkingDistance.Step> steps, Func<MarkingDistance.Step, bool> isHere)
    {
        var (place, otherPlace) = (0, 0);
        foreach (var step in steps)
        {
            var isBoth = step is { Observed: not null, Expected: not null };
            if (isHere(step))
                yield return (step, place++, otherPlace);
            if (isBoth || !isHere(step))
                otherPlace++;
        }
    }

    private static IEnumerable<string> Describe(string name, string other, IReadOnlyList<MarkingDistance.Step> steps)
    {
        var (place, otherPlace) = (0, 0);
        var (lost, added) = (new StringBuilder(), new StringBuilder());
        foreach (var step in steps)
        {
            var (here, there) = (step.Observed is null ? (char?)null : name[place++], step.Expected is null ? (char?)null : other[otherPlace++]);
            if (there is null)
                lost.Append(here);
            else if (here is null)
                added.Append(there);
            if (here is { } one && there is { } two && one != two)
                yield return Exchange(one, two);
        }

        if (lost.Length > 0)
            yield return $"without '{lost}'";
        if (added.Length > 0)
            yield return $"with '{added}'";
    }

    private static string Exchange(char here, char there)
    {
        if (Script(here) is not null || Script(there) is not null)
            return $"{Letter(here)} here, {Letter(there)} there: they look the same";
        return LookAlikes.Cost(here, there) < LookAlikes.Unlike ? $"{here} here, {there} there, which looks like it" : $"{here} here, {there} there";
    }

    private static string Letter(char letter) => Script(letter) is { } script ? $"{script} {letter}" : letter.ToString();

    private static string? Script(char letter) => ForeignLetters.Shape(letter) is null ? null : letter switch
    {
        >= '\u0370' and <= '\u03FF' => "Greek",
        >= '\u0400' and <= '\u052F' => "Cyrillic",
        >= '\u0530' and <= '\u058F' => "Armenian",
        _ => "foreign",
    };
}
