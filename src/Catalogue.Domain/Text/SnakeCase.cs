using System.Collections.Frozen;
using System.Text;

namespace Catalogue.Domain.Text;

/// <summary>The codes of enumerations in files, addresses, the API and the database: <c>PowerBank</c> is <c>power_bank</c>.</summary>
public static class SnakeCase
{
    /// <summary>The code of a value.</summary>
    public static string Code<T>(T value)
        where T : struct, Enum => Codes<T>.ByValue[value];

    /// <summary>The value a code stands for, or null. Case counts.</summary>
    public static T? TryParse<T>(string? code)
        where T : struct, Enum => code is not null && Codes<T>.ByCode.TryGetValue(code, out var value) ? value : null;

    /// <summary>All codes, in the order of the values; for messages that say what would be right.</summary>
    public static IReadOnlyList<string> All<T>()
        where T : struct, Enum => Codes<T>.InOrder;

    private static string From(string name)
    {
        var code = new StringBuilder(name.Length + 4);
        foreach (var c in name)
        {
            if (char.IsAsciiLetterUpper(c) && code.Length > 0)
                code.Append('_');
            code.Append(char.ToLowerInvariant(c));
        }

        return code.ToString();
    }

    private static class Codes<T>
        where T : struct, Enum
    {
        public static readonly FrozenDictionary<T, string> ByValue = Enum.GetValues<T>().ToFrozenDictionary(value => value, value => From(value.ToString()));
        public static readonly FrozenDictionary<string, T> ByCode = ByValue.ToFrozenDictionary(pair => pair.Value, pair => pair.Key, StringComparer.Ordinal);
        public static readonly IReadOnlyList<string> InOrder = [.. Enum.GetValues<T>().Select(value => ByValue[value])];
    }
}
