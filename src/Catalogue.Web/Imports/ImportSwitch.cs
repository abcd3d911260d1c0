using Catalogue.Data.Teardowns;

namespace Catalogue.Web.Imports;

/// <summary>Options of imports that are on or off.</summary>
internal static class ImportSwitch
{
    /// <summary>Why an option is neither, or null.</summary>
    public static Refusal? Check(IReadOnlyDictionary<string, string> options, string name) =>
        options.TryGetValue(name, out var text) && text is not ("true" or "false") ? new Refusal(name, $"{name} is true or false; it was “{text}”.") : null;

    /// <summary>True where it is on.</summary>
    public static bool IsOn(IReadOnlyDictionary<string, string> options, string name) => options.GetValueOrDefault(name) is "true";
}
