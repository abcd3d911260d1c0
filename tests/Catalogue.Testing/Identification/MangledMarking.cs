using System.Text;
using Catalogue.Domain.Identification;

namespace Catalogue.Testing.Identification;

/// <summary>Spoils a printed number the way wear, laser marks and tired eyes do.</summary>
public static class MangledMarking
{
    private static readonly (Slip Slip, int Weight)[] Slips =
        [(Slip.LookAlike, 40), (Slip.Lost, 20), (Slip.WornEnd, 10), (Slip.LineOrder, 10), (Slip.Ending, 15), (Slip.Unreadable, 5)];

    private static readonly string[] Endings = ["TR", "-TR", "-T/R", "PBF", "/NOPB", "-G", "-Q1", "#PBF", "-TUBE", "G-TR", "I", "-E", "HF", "RL", "-7"];

    /// <summary>What can go wrong between the part and the note.</summary>
    public enum Slip
    {
        /// <summary>A character was taken for one that looks like it.</summary>
        LookAlike,

        /// <summary>A character was passed over.</summary>
        Lost,

        /// <summary>The last one or two characters are worn off.</summary>
        WornEnd,

        /// <summary>Lines stand in another order, or a number was broken into two lines.</summary>
        LineOrder,

        /// <summary>An ending says how the part was packed, finished or graded.</summary>
        Ending,

        /// <summary>One character was marked as unreadable.</summary>
        Unreadable,
    }

    /// <summary>The number with so many errors, none of them twice at one place; with a disturbed line order it has several lines.</summary>
    public static (string Text, IReadOnlyList<Slip> Slips) Of(string number, string maker, int errors, Random chance)
    {
        ArgumentNullException.ThrowIfNull(number);
        ArgumentNullException.ThrowIfNull(chance);
        var text = new StringBuilder(number);
        var ending = "";
        var shuffled = false;
        var slips = new List<Slip>();
        while (slips.Count < errors)
        {
            var slip = Pick(chance);
            var done = slip switch
            {
                Slip.LookAlike => Mistake(text, chance),
                Slip.Lost => Lose(text, chance),
                Slip.WornEnd => Wear(text, chance),
                Slip.Unreadable => Blot(text, chance),
                Slip.Ending when ending.Length == 0 => (ending = Endings[chance.Next(Endings.Length)]).Length > 0,
                Slip.LineOrder when !shuffled => shuffled = true,
                _ => false,
            };
            if (done)
                slips.Add(slip);
        }

        text.Append(ending);
        var mangled = text.ToString().ToUpperInvariant();
        return (shuffled ? Shuffle(mangled, maker, chance) : mangled, slips);
    }

    private static Slip Pick(Random chance)
    {
        var at = chance.Next(Slips.Sum(slip => slip.Weight));
        foreach (var (slip, weight) in Slips)
        {
            if ((at -= weight) < 0)
                return slip;
        }

        return Slip.LookAlike;
    }

    private static bool Mistake(StringBuilder text, Random chance)
    {
        var at = chance.Next(text.Length);
        var printed = char.ToUpperInvariant(text[at]);
        // A spoilt letter is lower case until the end, so that it is not spoilt twice.
        if (text[at] != printed)
            return false;
        var partners = LookAlikes.Pairs.Where(pair => pair.Pair.Contains(printed, StringComparison.Ordinal)).Select(pair => (Sign: pair.Pair[0] == printed ? pair.Pair[1] : pair.Pair[0], Weight: 1 - pair.Cost)).ToList();
        if (partners.Count == 0)
            return false;
        var left = chance.NextDouble() * partners.Sum(partner => partner.Weight);
        var seen = partners[^1].Sign;
        foreach (var (sign, weight) in partners)
        {
            if ((left -= weight) < 0)
            {
                seen = sign;
                break;
            }
        }

        text[at] = char.ToLowerInvariant(seen);
        return true;
    }

    private static bool Lose(StringBuilder text, Random chance)
    {
        var at = chance.Next(text.Length);
        if (text.Length < 5 || !char.IsAsciiLetterOrDigit(text[at]))
            return false;
        text.Remove(at, 1);
        return true;
    }

    private static bool Wear(StringBuilder text, Random chance)
    {
        var signs = chance.Next(3) == 0 ? 2 : 1;
        if (text.Length < 5 + signs)
            return false;
        text.Length -= signs;
        return true;
    }

    private static bool Blot(StringBuilder text, Random chance)
    {
        var at = chance.Next(text.Length);
        if (!char.IsAsciiLetterOrDigit(text[at]))
            return false;
        text[at] = MarkingFold.Unreadable;
        return true;
    }

    private static string Shuffle(string number, string maker, Random chance)
    {
        var date = FormattableString.Invariant($"{18 + chance.Next(8)}{1 + chance.Next(52):00}");
        return chance.Next(3) switch
        {
            // The date line on top, the number below, the maker last.
            0 => $"{date}\n{number}\n{maker}",
            1 => $"{maker}\n{date}\n{number}",
            // A number over two lines, read from the lower one up.
            _ when number.Length >= 6 => $"{number[(number.Length / 2)..]}\n{number[..(number.Length / 2)]}",
            _ => $"{date}\n{number}",
        };
    }
}
