namespace Catalogue.Domain.UsbPd;

/// <summary>A point of an envelope.</summary>
/// <param name="VoltageV">In V.</param>
/// <param name="CurrentA">In A.</param>
public readonly record struct EnvelopePoint(double VoltageV, double CurrentA);
