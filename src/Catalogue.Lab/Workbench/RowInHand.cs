using System.Globalization;
using Catalogue.Data.Components;
using Catalogue.Data.Teardowns;
using Catalogue.Domain.Components;
using Catalogue.Domain.Families;
using Catalogue.Domain.Rails;

namespace Catalogue.Lab.Workbench;

/// <summary>The component whose row is open: what stands in its fields, the version it began from, and what somebody else saved meanwhile.</summary>
public sealed class RowInHand
{
    private int _edits;
    private int _saved;

    private RowInHand(ComponentId id, uint version, ComponentForm form)
    {
        Id = id;
        Version = version;
        Form = form;
    }

    /// <summary>The component.</summary>
    public ComponentId Id { get; }

    /// <summary>The version that the next save expects.</summary>
    public uint Version { get; private set; }

    /// <summary>What stands in the fields.</summary>
    public ComponentForm Form { get; private set; }

    /// <summary>What somebody else saved first, or null. While it is there nothing is saved.</summary>
    public BoardComponent? Theirs { get; private set; }

    /// <summary>True when every edit was saved.</summary>
    public bool IsSettled => _edits == _saved && Theirs is null;

    /// <summary>True when a save is due and allowed.</summary>
    public bool IsDue => _edits != _saved && Theirs is null;

    /// <summary>How many edits there were; handed to <see cref="Saved"/> when they are stored.</summary>
    public int Edits => _edits;

    /// <summary>Takes a component into the hand.</summary>
    public static RowInHand Of(BoardComponent component, IReadOnlyDictionary<FamilyId, TeardownRecord.FamilyName> families)
    {
        ArgumentNullException.ThrowIfNull(component);
        return new RowInHand(component.Id, component.Version, FormOf(component, families));
    }

    /// <summary>Counts an edit.</summary>
    public void Edited() => _edits++;

    /// <summary>Notes that the edits up to a count are stored, in the version that is there now. What was typed since stays in the fields.</summary>
    public void Saved(int edits, BoardComponent now, IReadOnlyDictionary<FamilyId, TeardownRecord.FamilyName> families)
    {
        ArgumentNullException.ThrowIfNull(now);
        _saved = edits;
        Version = now.Version;
        if (_edits == _saved)
            Form = FormOf(now, families);
    }

    /// <summary>Notes that the component was changed beside the fields: it was identified. What was typed since stays, but a class that came with the family.</summary>
    public void Identified(BoardComponent now, IReadOnlyDictionary<FamilyId, TeardownRecord.FamilyName> families)
    {
        ArgumentNullException.ThrowIfNull(now);
        Form.FunctionClass ??= now.FunctionClass;
        Saved(_saved, now, families);
    }

    /// <summary>Notes that somebody else was first. Nothing of either is lost.</summary>
    public void Clashed(BoardComponent theirs) => Theirs = theirs;

    /// <summary>Gives up what stands in the fields for what the other person saved.</summary>
    public void TakeTheirs(IReadOnlyDictionary<FamilyId, TeardownRecord.FamilyName> families)
    {
        if (Theirs is not { } theirs)
            return;
        Version = theirs.Version;
        Form = FormOf(theirs, families);
        _saved = _edits;
        Theirs = null;
    }

    /// <summary>Decides, having seen both, that what stands in the fields shall be saved over the other.</summary>
    public void KeepMine()
    {
        if (Theirs is not { } theirs)
            return;
        Version = theirs.Version;
        Theirs = null;
    }

    /// <summary>Writes the fields of the row into the form that the record has now, leaving alone what the row does not show.</summary>
    public ComponentForm Into(ComponentForm now)
    {
        ArgumentNullException.ThrowIfNull(now);
        now.Role = Form.Role;
        now.FunctionClass = Form.FunctionClass;
        now.Designators = Form.Designators;
        now.MarkingAsRead = Form.MarkingAsRead;
        now.PartNumber = Form.PartNumber;
        now.Value = Form.Value;
        now.Package = Form.Package;
        now.Maker = Form.Maker;
        now.Quantity = Form.Quantity;
        now.Parallel = Form.Parallel;
        now.Series = Form.Series;
        now.IsFitted = Form.IsFitted;
        now.RailId = Form.RailId;
        now.CircuitPosition = Form.CircuitPosition;
        now.Note = Form.Note;
        return now;
    }

    /// <summary>The fields in which the two differ, each with both texts.</summary>
    public IReadOnlyList<Difference> Differences(IReadOnlyList<Rail> rails)
    {
        if (Theirs is not { } theirs)
            return [];
        string? RailName(Guid? id) => rails.FirstOrDefault(rail => rail.Id.Value == id)?.Name;
        Difference[] all =
        [
            new("Role", Form.Role, theirs.Role),
            new("Kind", Form.FunctionClass?.Word(), theirs.FunctionClass?.Word()),
            new("Ref.", Form.Designators, theirs.Designators),
            new("Marking as read", Form.MarkingAsRead, theirs.MarkingAsRead),
            new("Part number", Form.PartNumber, theirs.PartNumber),
            new("Value", Form.Value, theirs.Value),
            new("Package", Form.Package, theirs.Package),
            new("Maker as read", Form.Maker, theirs.MakerAsRead),
            new("Quantity", Text(Form.Quantity), Text(theirs.Quantity)),
            new("In parallel", Text(Form.Parallel), Text(theirs.ParallelCount)),
            new("In series", Text(Form.Series), Text(theirs.SeriesCount)),
            new("Fitted", Form.IsFitted ? "yes" : "no", theirs.IsFitted ? "yes" : "no"),
            new("Rail", RailName(Form.RailId), RailName(theirs.RailId?.Value)),
            new("Position", Form.CircuitPosition?.Word(), theirs.CircuitPosition?.Word()),
            new("Note", Form.Note, theirs.Note),
        ];
        return [.. all.Where(item => (item.Mine ?? "") != (item.Theirs ?? ""))];
    }

    private static string? Text(int? number) => number?.ToString(CultureInfo.InvariantCulture);

    private static ComponentForm FormOf(BoardComponent component, IReadOnlyDictionary<FamilyId, TeardownRecord.FamilyName> families) => new()
    {
        Role = component.Role,
        FunctionClass = component.FunctionClass,
        Designators = component.Designators,
        MarkingAsRead = component.MarkingAsRead,
        PartNumber = component.PartNumber,
        Value = component.Value,
        Package = component.Package,
        Maker = component.MakerAsRead,
        Description = component.Description,
        Quantity = component.Quantity,
        Parallel = component.ParallelCount,
        Series = component.SeriesCount,
        IsFitted = component.IsFitted,
        Family = component.FamilyId is { } family && families.TryGetValue(family, out var known) ? known.Current.Slug : null,
        FamilyEvidence = component.FamilyEvidence,
        RailId = component.RailId?.Value,
        CircuitPosition = component.CircuitPosition,
        Note = component.Note,
    };

    /// <summary>One field in which two people differ.</summary>
    /// <param name="Field">What the field is called.</param>
    /// <param name="Mine">What stands in it here, or null.</param>
    /// <param name="Theirs">What the other person saved, or null.</param>
    public sealed record Difference(string Field, string? Mine, string? Theirs);
}
