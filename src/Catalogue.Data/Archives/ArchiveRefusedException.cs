namespace Catalogue.Data.Archives;

/// <summary>Ends the reading of an archive that cannot be taken; it never leaves this room, where it becomes an outcome.</summary>
/// <param name="place">The entry and the line, or null where it is the archive as a whole.</param>
/// <param name="reason">What is wrong and what would be right.</param>
internal sealed class ArchiveRefusedException(string? place, string reason) : Exception(place is null ? reason : $"{place}: {reason}")
{
    /// <summary>A refusal of one line.</summary>
    public static ArchiveRefusedException AtLine(string entry, int line, string reason) => new(FormattableString.Invariant($"{entry}, line {line}"), reason);
}
