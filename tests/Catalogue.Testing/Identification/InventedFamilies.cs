using System.Text;
using Catalogue.Domain.Components;
using Catalogue.Domain.Families;

namespace Catalogue.Testing.Identification;

/// <summary>
/// Invents part families the way makers name them: 48 naming schemes, each with long series whose members differ in one or two characters, so that a
/// slip of the eye leads to a neighbour that exists.
/// </summary>
public static class InventedFamilies
{
    // So many members that each has some thirty neighbours in one or two digits: with two varied digits all others of the series, with three the
    // nearest quarter of them.
    private const int MembersOfTwoDigits = 31;
    private const int MembersOfThreeDigits = 110;

    // A: letter of the scheme; a: letter of the series; #: digit of the series; *: digit within the series; @: last letter within the series or none.
    private static readonly string[] Schemes =
    [
        "AA###***", "AAA#**#@", "A##a#**@", "AA##a**@", "AA-##a**", "A###-***", "AAA-a***@", "##AA#a**", "#AA##a**", "A#a##-**@", "AA#a***A", "AAAa#***",
        "AAaa***@", "A##aA#**", "AA##-a**", "###a-***", "Aa##***@", "AA#a-**-A", "AAAa***A", "A#aA***@", "AAa##**A@", "##A#a***", "AAA#a***", "A-a##**-#",
        "AA##a***", "AAAA#a**@", "A##a#***", "AAa#-***", "aA##A***", "A#A#a#**", "AA#a**A#", "###Aa**@", "AAA-#a***", "AAa##***A", "A##Aa***", "Aaa##**@",
        "AAA#**a#", "A*#a**#A", "AA***#aA", "#A#a***A#", "AAa#*#*@", "A***a##A", "AA*#a**@", "##a#A***", "AaA##***", "AA##**a*@", "A#a#**A*", "AAA*#a**",
    ];

    private static readonly (FunctionClass Class, string[] Packages)[] Kinds =
    [
        (FunctionClass.Switch, ["TO-252", "TO-220", "PDFN-8", "SOIC-8", "TO-263"]),
        (FunctionClass.Controller, ["SOIC-8", "MSOP-10", "QFN-20", "TSSOP-16"]),
        (FunctionClass.Regulator, ["SOT-23-5", "SOT-23-6", "SOIC-8", "DFN-8"]),
        (FunctionClass.Rectifier, ["SMA", "SMB", "SMC", "TO-220"]),
        (FunctionClass.CellProtection, ["SOT-23-6", "TSSOP-8", "DFN-6"]),
        (FunctionClass.Microcontroller, ["LQFP-48", "QFN-32", "TSSOP-20"]),
        (FunctionClass.Optocoupler, ["DIP-4", "SOP-4", "SOIC-8"]),
        (FunctionClass.ProtocolChip, ["QFN-16", "SOIC-8", "SOT-23-6"]),
    ];

    private static readonly string[] MakerStems =
        ["Ferrowick", "Quelvane", "Sorvane", "Marnholt", "Teskadine", "Ulbrecken", "Vantrice", "Orrelmoor", "Pellgrath", "Dunmarrow", "Eskelind", "Halvorne"];

    /// <summary>How many naming schemes there are.</summary>
    public static int SchemeCount => Schemes.Length;

    /// <summary>Invents families, no two with the same match key, evenly over the schemes.</summary>
    /// <param name="count">How many, up to two millions.</param>
    /// <param name="seed">Equal seeds give equal families.</param>
    public static IReadOnlyList<InventedFamily> Make(int count, int seed)
    {
        var families = new List<InventedFamily>(count);
        var taken = new HashSet<string>(count, StringComparer.Ordinal);
        var chance = new Random(seed);
        var letters = Schemes.Select(_ => RandomLetters(chance)).ToArray();
        for (var series = 0; families.Count < count; series++)
        {
            var scheme = series % Schemes.Length;
            var stem = Stem(Schemes[scheme], letters[scheme], chance);
            var (functionClass, packages) = Kinds[(scheme + chance.Next(2)) % Kinds.Length];
            var maker = $"{MakerStems[scheme % MakerStems.Length]} {(char)('A' + (scheme / MakerStems.Length))}";
            var members = stem.Count(place => place == '*') == 2 ? MembersOfTwoDigits : MembersOfThreeDigits;
            for (var member = 0; member < members && families.Count < count; member++)
            {
                var number = Member(stem, chance);
                if (PartNumber.From(number) is { } read && taken.Add(read.MatchKey))
                    families.Add(new InventedFamily(number, scheme, maker, packages[chance.Next(packages.Length)], functionClass));
            }
        }

        return families;
    }

    private static string RandomLetters(Random chance) =>
        string.Create(8, chance, static (letters, chance) =>
        {
            for (var i = 0; i < letters.Length; i++)
                letters[i] = Letter(chance);
        });

    private static string Stem(string scheme, string letters, Random chance)
    {
        var stem = new StringBuilder(scheme.Length);
        var used = 0;
        foreach (var place in scheme)
        {
            stem.Append(place switch
            {
                'A' => letters[used++],
                'a' => Letter(chance),
                '#' => Digit(chance),
                _ => place,
            });
        }

        return stem.ToString();
    }

    private static string Member(string stem, Random chance)
    {
        var number = new StringBuilder(stem.Length);
        foreach (var place in stem)
        {
            if (place == '*')
                number.Append(Digit(chance));
            else if (place != '@')
                number.Append(place);
            else if (chance.Next(3) > 0)
                number.Append("ABCDFHKLNPST"[chance.Next(12)]);
        }

        return number.ToString();
    }

    private static char Letter(Random chance) => (char)('A' + chance.Next(26));

    private static char Digit(Random chance) => (char)('0' + chance.Next(10));
}
