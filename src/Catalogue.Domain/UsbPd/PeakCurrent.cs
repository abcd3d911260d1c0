namespace Catalogue.Domain.UsbPd;

/// <summary>The code of the overload a supply stands for a moment; its number is the code.</summary>
/// <remarks>Source: USB Power Delivery 3.2, tables 6.10 and 6.16.</remarks>
public enum PeakCurrent
{
    /// <summary>None is advertised here; an extended message may say more.</summary>
    None = 0,

    /// <summary>150 % for 1 ms, 125 % for 2 ms, 110 % for 10 ms.</summary>
    Low = 1,

    /// <summary>200 % for 1 ms, 150 % for 2 ms, 125 % for 10 ms.</summary>
    Middle = 2,

    /// <summary>200 % for 1 ms, 175 % for 2 ms, 150 % for 10 ms.</summary>
    High = 3,
}
