namespace Catalogue.Domain.Capacitors;

/// <summary>What a bulk capacitor is there for, as far as a rule of thumb for its size exists (<see cref="BulkRule"/>).</summary>
public enum BulkUse
{
    /// <summary>Behind a rectifier for 100 to 240 V.</summary>
    UniversalInput,

    /// <summary>Behind a rectifier for 230 V only.</summary>
    Mains230,

    /// <summary>On a bus of about 400 V behind a power-factor stage.</summary>
    PowerFactorBus,
}
