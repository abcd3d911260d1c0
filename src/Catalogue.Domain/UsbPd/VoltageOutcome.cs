namespace Catalogue.Domain.UsbPd;

/// <summary>How a required voltage is offered.</summary>
public enum VoltageOutcome
{
    /// <summary>Within the rule.</summary>
    Met,

    /// <summary>Not offered.</summary>
    Missing,

    /// <summary>Offered with less current than the rule asks for.</summary>
    TooLow,

    /// <summary>Offered with more current than the rule allows at this power.</summary>
    TooHigh,

    /// <summary>Less than the rule, which an extended source is allowed while it speaks in standard mode (clause 10.2.3.3).</summary>
    LessInStandardMode,
}
