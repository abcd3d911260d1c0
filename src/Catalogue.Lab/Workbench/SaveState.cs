using System.Globalization;

namespace Catalogue.Lab.Workbench;

/// <summary>How what was typed last stands, in a code for its outline and in words.</summary>
/// <param name="Code">The code that lab.css draws it by.</param>
/// <param name="Words">The words; empty while nothing was changed.</param>
public sealed record SaveState(string Code, string Words)
{
    /// <summary>Nothing was changed yet.</summary>
    public static SaveState Untouched { get; } = new("untouched", "");

    /// <summary>On its way.</summary>
    public static SaveState Saving { get; } = new("saving", "Saving");

    /// <summary>Stored.</summary>
    /// <param name="at">The moment, as the clock on the wall shows it.</param>
    public static SaveState Saved(DateTimeOffset at) => new("saved", string.Create(CultureInfo.InvariantCulture, $"Saved {at:HH:mm:ss}"));

    /// <summary>Refused; what was typed is still in the fields.</summary>
    public static SaveState NotSaved(string reason) => new("offline", $"Not saved: {reason}");

    /// <summary>Somebody else was first; nothing was overwritten.</summary>
    public static SaveState Clash(string noun) => new("clash", $"Somebody else saved this {noun} first: compare");
}
