using System.Globalization;

namespace Catalogue.Domain.UsbPd;

/// <summary>One thing that is noticed of a capability list as a whole; a fact with its words, never a verdict on the product.</summary>
/// <param name="Words">The fact as a sentence.</param>
/// <remarks>Source: USB Power Delivery 3.2, clauses 6.4.1.2, 6.4.1.4 and 6.5.15.1.</remarks>
public abstract record ListFact(string Words)
{
    /// <summary>The list does not begin with a fixed supply of 5 V.</summary>
    public sealed record FirstIsNotFiveVolts() : ListFact("The first object is no fixed 5 V supply; every list begins with one.");

    /// <summary>The first object is 5 V without a current.</summary>
    public sealed record OffersNothingNow() : ListFact("The first object is 5 V at 0 A: the source offers nothing at the moment.");

    /// <summary>More objects than the longest list holds.</summary>
    /// <param name="Count">How many.</param>
    public sealed record TooMany(int Count) : ListFact(Text($"{Count} objects are more than the {CapabilityList.LongestExtended} an extended list may hold."));

    /// <summary>More than seven objects, none of them of the extended range.</summary>
    /// <param name="Count">How many.</param>
    public sealed record LongWithoutExtended(int Count) : ListFact(Text($"{Count} objects, but none of the extended range from position {CapabilityList.FirstExtended}; a standard list holds {CapabilityList.LongestStandard} at most."));

    /// <summary>Two fixed supplies of one voltage.</summary>
    /// <param name="First">The position of the earlier one.</param>
    /// <param name="Second">The position of the later one.</param>
    /// <param name="VoltageMv">Their voltage in mV.</param>
    public sealed record SameVoltageTwice(int First, int Second, int VoltageMv) : ListFact(Text($"Objects {First} and {Second} are both fixed {VoltageMv / 1000m:0.##} V; one voltage may stand in a list once."));

    /// <summary>An object stands before one that it should follow.</summary>
    /// <param name="Position">The object out of order.</param>
    /// <param name="After">The object it should stand before.</param>
    public sealed record OutOfOrder(int Position, int After) : ListFact(Text($"Object {Position} should stand before object {After}: kinds have an order, and voltages rise within a kind."));

    /// <summary>Zero words fill positions.</summary>
    /// <param name="Positions">Which, rising.</param>
    /// <param name="GoesOn">True where objects follow them.</param>
    public sealed record Padded(IReadOnlyList<int> Positions, bool GoesOn) : ListFact(
        (Positions.Count == 1 ? Text($"Position {Positions[0]} is padding (a zero word)") : Text($"Positions {string.Join(", ", Positions)} are padding (zero words)"))
        + (GoesOn ? Text($"; numbering goes on at {Positions[^1] + 1}.") : "."));

    /// <summary>Zero words in a list that needs none.</summary>
    /// <param name="Positions">Which, rising.</param>
    public sealed record ZeroInStandardList(IReadOnlyList<int> Positions) : ListFact(Text($"A zero word stands at {string.Join(", ", Positions)} of a list without an extended part; only an extended list is padded."));

    /// <summary>An extended object outside positions 8 to 11.</summary>
    /// <param name="Position">Where it stands.</param>
    /// <param name="Kind">What it is.</param>
    public sealed record ExtendedOutsideItsPlace(int Position, SupplyKind Kind) : ListFact(Text($"Object {Position} ({(Kind == SupplyKind.EprAvs ? "EPR AVS" : "fixed above 20 V")}) stands outside an EPR list: such objects begin at position {CapabilityList.FirstExtended}."));

    /// <summary>A standard object in positions 8 to 11.</summary>
    /// <param name="Position">Where it stands.</param>
    public sealed record StandardInExtendedPlace(int Position) : ListFact(Text($"Object {Position} is of the standard range but stands among the extended objects, which are fixed above 20 V and one EPR AVS."));

    /// <summary>An extended list has another number of EPR AVS objects than one.</summary>
    /// <param name="Count">How many.</param>
    public sealed record ExtendedAvsCount(int Count) : ListFact(Text($"An extended list has exactly one EPR AVS object; this one has {Count}."));

    /// <summary>The reserved augmented type.</summary>
    /// <param name="Position">Where it stands.</param>
    /// <param name="Word">The word.</param>
    public sealed record ReservedType(int Position, uint Word) : ListFact(Text($"Object {Position} ({CapabilityWord.Text(Word)}) is of a reserved type: the word is kept, no numbers are taken from it."));

    /// <summary>Bits are set that the kind leaves zero.</summary>
    /// <param name="Position">Where the object stands.</param>
    /// <param name="Word">The word.</param>
    /// <param name="Bits">The bits in question.</param>
    public sealed record ReservedBits(int Position, uint Word, uint Bits) : ListFact(Text($"Object {Position} ({CapabilityWord.Text(Word)}) has reserved bits set ({CapabilityWord.Text(Bits)}); they are not read."));

    /// <summary>Flags on a 5 V object that is not the first.</summary>
    /// <param name="Position">Where it stands.</param>
    public sealed record FlagsNotFirst(int Position) : ListFact(Text($"Object {Position} carries flags though it is not the first; flags count in the first object."));

    /// <summary>The lower voltage is above the higher one.</summary>
    /// <param name="Position">Where the object stands.</param>
    public sealed record WindowUpsideDown(int Position) : ListFact(Text($"Object {Position} has a lowest voltage above its highest."));

    /// <summary>A variable supply that wanders too far.</summary>
    /// <param name="Position">Where it stands.</param>
    public sealed record VariableTooWide(int Position) : ListFact(Text($"Object {Position} is a variable supply whose lowest voltage is under 80 % of its highest."));

    /// <summary>A fixed supply of 0 V that is no padding.</summary>
    /// <param name="Position">Where it stands.</param>
    public sealed record NoVoltage(int Position) : ListFact(Text($"Object {Position} is not zero but says 0 V."));

    /// <summary>A damaged word.</summary>
    /// <param name="Position">Where it stands.</param>
    /// <param name="AsRead">The text as read.</param>
    /// <param name="Reason">Why it is no word.</param>
    public sealed record Damaged(int Position, string AsRead, string Reason) : ListFact(Text($"Object {Position} cannot be read: “{AsRead}”. {Reason} Nothing is guessed."));

    /// <summary>The position of an object is missing though later ones are there.</summary>
    /// <param name="Positions">Which, rising.</param>
    public sealed record Skipped(IReadOnlyList<int> Positions) : ListFact(Text($"Nothing is listed at position {string.Join(", ", Positions)}."));

    private static string Text(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}
