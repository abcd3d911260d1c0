using Catalogue.Domain.Families;
using Catalogue.Domain.Packages;
using Catalogue.Domain.Quantities;
using Catalogue.Domain.Rails;
using Catalogue.Domain.Teardowns;

namespace Catalogue.Domain.Components;

/// <summary>One kind of part at one place of a board: what was read, what it was resolved to, and how many work together.</summary>
public sealed class BoardComponent : IEditableRecord
{
    /// <summary>The most component lines of one teardown: far beyond any power product, and its page can still be made at once.</summary>
    public const int MaxInTeardown = 5000;

    /// <summary>Longest marking as read.</summary>
    public const int MaxMarkingLength = 500;

    /// <summary>Longest other text.</summary>
    public const int MaxTextLength = 2000;

    /// <inheritdoc />
    public required RevisionId RevisionId { get; set; }

    /// <summary>Its id.</summary>
    public required ComponentId Id { get; init; }

    /// <summary>The board.</summary>
    public required BoardId BoardId { get; set; }

    /// <summary>Its place in the board's list, from 0.</summary>
    public int Position { get; set; }

    /// <summary>What it does, as the reviewer says it, or null.</summary>
    public string? Role { get; set; }

    /// <summary>Its function class, or null where not decided.</summary>
    public FunctionClass? FunctionClass { get; set; }

    /// <summary>Reference designators as written, or null.</summary>
    public string? Designators { get; set; }

    /// <summary>The designators one by one, ranges written out.</summary>
    public string[] DesignatorList { get; set; } = [];

    /// <summary>The marking as read from the part, line breaks and all, or null. Never replaced by what it was resolved to.</summary>
    public string? MarkingAsRead { get; set; }

    /// <summary>The part number as given, or null.</summary>
    public string? PartNumber { get; set; }

    /// <summary>The value as given, such as <c>4k7</c>, or null.</summary>
    public string? Value { get; set; }

    /// <summary>The package as given, or null.</summary>
    public string? Package { get; set; }

    /// <summary>The maker as read or given, or null.</summary>
    public string? MakerAsRead { get; set; }

    /// <summary>A description, or null.</summary>
    public string? Description { get; set; }

    /// <summary>How many of the part, or null when not known.</summary>
    public int? Quantity { get; set; }

    /// <summary>How many share the current, from 1.</summary>
    public int ParallelCount { get; set; } = 1;

    /// <summary>How many share the voltage, from 1.</summary>
    public int SeriesCount { get; set; } = 1;

    /// <summary>False where the list says that the place is left empty.</summary>
    public bool IsFitted { get; set; } = true;

    /// <summary>The part family, or null while not identified.</summary>
    public FamilyId? FamilyId { get; set; }

    /// <summary>How the family is known, or null with no family.</summary>
    public Evidence? FamilyEvidence { get; set; }

    /// <summary>The rail it sits on or in, or null.</summary>
    public RailId? RailId { get; set; }

    /// <summary>Where in the circuit it stands, or null where not decided.</summary>
    public CircuitPosition? CircuitPosition { get; set; }

    /// <summary>A remark, or null.</summary>
    public string? Note { get; set; }

    /// <summary>The imported row: header and text pairs exactly as they came, in their order. Empty when it was not imported.</summary>
    public IReadOnlyList<ImportedCell> ImportedRow { get; set; } = [];

    /// <inheritdoc />
    public uint Version { get; init; }

    /// <summary>What it is called: its designators, else its role, class or part number, else its row.</summary>
    public string Name => Designators ?? Role ?? FunctionClass?.Word() ?? PartNumber ?? FormattableString.Invariant($"row {Position + 1}");

    /// <summary>What <see cref="Package"/> names; an unknown reading where nothing is recorded or nothing known is written.</summary>
    public PackageReading ReadPackage() => PackageText.Read(Package);

    /// <summary>A copy of its own.</summary>
    public BoardComponent Copy() => (BoardComponent)MemberwiseClone();

    /// <summary>A copy that is taken to be of a class.</summary>
    public BoardComponent WithClass(FunctionClass functionClass)
    {
        var copy = Copy();
        copy.FunctionClass = functionClass;
        return copy;
    }
}
