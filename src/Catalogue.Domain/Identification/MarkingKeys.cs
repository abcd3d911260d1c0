using System.Text;

namespace Catalogue.Domain.Identification;

/// <summary>
/// The keys under which a number is found although a character was misread or lost. They only make candidates: what joins two numbers is
/// <see cref="Families.PartNumber.MatchKey"/> alone.
/// </summary>
/// <remarks>
/// <para>
/// A number's letters (A to Z, 0 to 9) are folded to a skeleton, in which the commonest look-alikes are one sign. Stored are the skeleton and, from
/// <see cref="ShortestWithDeletions"/> signs on, the skeleton with each one sign left out. A question looks for its own skeleton, for it with
/// signs left out, put in and exchanged; wherever two keys meet, the two numbers differ by at most two such errors.
/// </para>
/// <para>House rule. The database computes the stored keys by functions of its own (<c>marking_letters</c>, <c>marking_skeleton</c>,
/// <c>marking_keys</c>), which must agree with these.</para>
/// </remarks>
public static class MarkingKeys
{
    /// <summary>Signs of a number that count; the rest of a longer one is not looked at.</summary>
    public const int MaxLength = 24;

    /// <summary>A skeleton of fewer signs is stored alone: with one left out it would meet half the catalogue.</summary>
    public const int ShortestWithDeletions = 4;

    /// <summary>As many signs may be missing at a worn end.</summary>
    public const int MostWorn = 4;

    /// <summary>What is folded in the skeleton, sign for sign with <see cref="SkeletonTo"/>.</summary>
    public const string SkeletonFrom = "OQDILZSGCBAV";

    /// <summary>What it is folded to.</summary>
    public const string SkeletonTo = "00011256684U";

    private const int LongestEnding = 6;

    private const string Alphabet = "0123456789EFHJKMNPRTUWXY";

    private static readonly bool[] Confused = ConfusedSigns();

    /// <summary>The letters and digits that count: A to Z and 0 to 9 of an upper-case text, letters that only look Latin put as Latin, at most <see cref="MaxLength"/>.</summary>
    public static string Letters(string text)
    {
        ArgumentNullException.ThrowIfNull(text);
        var letters = new StringBuilder(Math.Min(text.Length, MaxLength));
        foreach (var character in ForeignLetters.ToLatinShapes(text))
        {
            if (letters.Length == MaxLength)
                break;
            if (char.IsAsciiLetterUpper(character) || char.IsAsciiDigit(character))
                letters.Append(character);
        }

        return letters.ToString();
    }

    /// <summary>The letters with the commonest look-alikes made one sign.</summary>
    public static string Skeleton(string letters)
    {
        ArgumentNullException.ThrowIfNull(letters);
        return string.Create(letters.Length, letters, static (signs, letters) =>
        {
            for (var i = 0; i < signs.Length; i++)
            {
                var at = SkeletonFrom.IndexOf(letters[i], StringComparison.Ordinal);
                signs[i] = at < 0 ? letters[i] : SkeletonTo[at];
            }
        });
    }

    /// <summary>The keys a number is stored under, each once; empty without letters.</summary>
    public static IReadOnlyCollection<string> Stored(string letters)
    {
        var skeleton = Skeleton(letters);
        var keys = new HashSet<string>(StringComparer.Ordinal);
        if (skeleton.Length == 0)
            return keys;
        keys.Add(skeleton);
        if (skeleton.Length >= ShortestWithDeletions)
            AddDeletions(keys, skeleton);
        for (var worn = 2; worn <= MostWorn && skeleton.Length - worn > ShortestWithDeletions; worn++)
            keys.Add(skeleton[..^worn]);
        return keys;
    }

    /// <summary>
    /// Adds the keys that a reading is looked for under: near ones (itself, one sign left out, an ending left out), and with
    /// <paramref name="far"/> also those a second error away.
    /// </summary>
    /// <param name="keys">Takes the keys.</param>
    /// <param name="reading">Letters and digits; <see cref="MarkingFold.Unreadable"/> stands for one that could not be read.</param>
    /// <param name="far">True to look two errors away.</param>
    public static void AddProbes(ISet<string> keys, string reading, bool far)
    {
        ArgumentNullException.ThrowIfNull(keys);
        ArgumentNullException.ThrowIfNull(reading);
        var holes = reading.Count(character => character == MarkingFold.Unreadable);
        var skeleton = Skeleton(holes == 0 ? reading : reading.Replace(MarkingFold.Unreadable.ToString(), "", StringComparison.Ordinal));
        if (skeleton.Length == 0)
            return;
        if (holes > 0)
            AddFilled(keys, Skeleton(reading), holes);
        keys.Add(skeleton);
        // What was read beyond the number: a glued suffix or a lot code.
        for (var length = skeleton.Length - 1; length >= Math.Max(ShortestWithDeletions, skeleton.Length - LongestEnding); length--)
        {
            keys.Add(skeleton[..length]);
            if (far && holes == 0 && length > ShortestWithDeletions)
                AddDeletions(keys, skeleton[..length]);
        }

        if (skeleton.Length < ShortestWithDeletions)
        {
            if (holes == 0)
                AddExchanges(keys, skeleton);
            return;
        }

        // An exchanged sign is met by leaving it out on both sides.
        var shorter = new HashSet<string>(StringComparer.Ordinal);
        AddDeletions(shorter, skeleton);
        keys.UnionWith(shorter);
        if (!far || holes > 1)
            return;
        if (skeleton.Length > ShortestWithDeletions + 1)
        {
            foreach (var key in shorter)
                AddDeletions(keys, key);
        }

        // Two lost signs: put one back, the other is left out of the stored key. One exchanged, one lost: likewise.
        AddInsertions(keys, skeleton);
        AddExchanges(keys, skeleton);
        // Two exchanged: one for a look-alike, the other is left out on both sides.
        foreach (var likely in LookAlikesOf(skeleton))
            AddDeletions(keys, likely);
    }

    private static void AddDeletions(ISet<string> keys, string skeleton)
    {
        for (var i = 0; i < skeleton.Length; i++)
        {
            if (i == 0 || skeleton[i] != skeleton[i - 1])
                keys.Add(skeleton.Remove(i, 1));
        }
    }

    private static void AddInsertions(ISet<string> keys, string skeleton)
    {
        Span<char> longer = stackalloc char[skeleton.Length + 1];
        for (var i = 0; i <= skeleton.Length; i++)
        {
            skeleton.AsSpan(0, i).CopyTo(longer);
            skeleton.AsSpan(i).CopyTo(longer[(i + 1)..]);
            foreach (var sign in Alphabet)
            {
                longer[i] = sign;
                keys.Add(new string(longer));
            }
        }
    }

    private static void AddExchanges(ISet<string> keys, string skeleton)
    {
        Span<char> other = stackalloc char[skeleton.Length];
        skeleton.CopyTo(other);
        for (var i = 0; i < skeleton.Length; i++)
        {
            foreach (var sign in Alphabet)
            {
                other[i] = sign;
                keys.Add(new string(other));
            }

            other[i] = skeleton[i];
        }
    }

    private static IEnumerable<string> LookAlikesOf(string skeleton)
    {
        for (var i = 0; i < skeleton.Length; i++)
        {
            foreach (var sign in Alphabet)
            {
                if (sign != skeleton[i] && Confused[LookAlikes.Pair(sign, skeleton[i])])
                    yield return string.Concat(skeleton.AsSpan(0, i), [sign], skeleton.AsSpan(i + 1));
            }
        }
    }

    private static bool[] ConfusedSigns()
    {
        // Signs of the skeleton are confused when any two letters behind them are.
        var confused = new bool[LookAlikes.Pairings];
        foreach (var (pair, _) in LookAlikes.Pairs)
        {
            var signs = Skeleton(pair);
            confused[LookAlikes.Pair(signs[0], signs[1])] = true;
            confused[LookAlikes.Pair(signs[1], signs[0])] = true;
        }

        return confused;
    }

    private static void AddFilled(ISet<string> keys, string withHoles, int holes)
    {
        // One hole may stand for any sign; of two, the stored key leaves one out.
        var at = withHoles.IndexOf(MarkingFold.Unreadable, StringComparison.Ordinal);
        if (holes > 2)
            return;
        foreach (var sign in Alphabet)
        {
            var filled = string.Concat(withHoles.AsSpan(0, at), [sign], withHoles.AsSpan(at + 1));
            keys.Add(filled.Replace(MarkingFold.Unreadable.ToString(), "", StringComparison.Ordinal));
        }

        if (holes == 2)
        {
            var last = withHoles.LastIndexOf(MarkingFold.Unreadable);
            var first = withHoles.Remove(at, 1);
            foreach (var sign in Alphabet)
                keys.Add(string.Concat(first.AsSpan(0, last - 1), [sign], first.AsSpan(last)));
        }
    }
}
