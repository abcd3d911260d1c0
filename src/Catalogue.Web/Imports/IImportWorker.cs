using System.Collections.ObjectModel;
using Catalogue.Data.Teardowns;
using Catalogue.Domain.Imports;

namespace Catalogue.Web.Imports;

/// <summary>
/// Brings in one kind of file. A run may be broken off at any point and is then begun again from the start: what it brought in before must be found again and left
/// as it is, and one teardown is one transaction.
/// </summary>
internal interface IImportWorker
{
    /// <summary>The kind that it brings in.</summary>
    ImportKind Kind { get; }

    /// <summary>Longest file in bytes.</summary>
    long MaxFileBytes { get; }

    /// <summary>The options that it knows, each with what it says; all of them may be left out.</summary>
    IReadOnlyDictionary<string, string> Options { get; }

    /// <summary>Options too long for an address: they come as form fields in front of the file. Each with what it says; all of them may be left out.</summary>
    IReadOnlyDictionary<string, string> Fields => ReadOnlyDictionary<string, string>.Empty;

    /// <summary>Why these options cannot be run, asked before the file is taken in, and once more when fields came with it; or null.</summary>
    /// <param name="options">Only names of <see cref="Options"/> and <see cref="Fields"/>.</param>
    /// <param name="role">The strongest role of the person who asks; null for a script.</param>
    /// <param name="cancellationToken">Cancels it.</param>
    Task<Refusal?> CheckAsync(IReadOnlyDictionary<string, string> options, string? role, CancellationToken cancellationToken);

    /// <summary>Brings the file in. A refusal of the file is an outcome and final; a fault of the machine is thrown, and the run is tried again.</summary>
    Task<ImportOutcome> RunAsync(ImportWork work, CancellationToken cancellationToken);
}
