namespace Catalogue.Domain.Identification;

/// <summary>One way to take a number from a marking of several lines.</summary>
/// <param name="Signs">The letters, digits and unreadable places in their order.</param>
/// <param name="Text">The piece of the marking as folded, with its separators.</param>
/// <param name="How">Which piece was taken, in words; empty where it is the whole marking.</param>
/// <param name="Cost">How unusual it is to take that piece, in nats, 0 for the most usual.</param>
public sealed record MarkingReading(string Signs, string Text, string How, float Cost);
