namespace Catalogue.Domain.UsbPd;

/// <summary>One object of a source's capability list: whole millivolts, milliamperes and milliwatts.</summary>
/// <remarks>Source: USB Power Delivery 3.2, clause 6.4.1.2.</remarks>
public abstract record Capability
{
    private Capability()
    {
    }

    /// <summary>Its kind.</summary>
    public abstract SupplyKind Kind { get; }

    /// <summary>The lowest and highest voltage in mV, equal for a fixed supply; null where the word says none.</summary>
    public virtual (int MinMv, int MaxMv)? Window => null;

    /// <summary>The highest current the word names, in mA; null where it names none.</summary>
    public virtual int? HighestCurrentMa => null;

    /// <summary>One voltage.</summary>
    /// <param name="VoltageMv">0 to 51 150 in steps of 50.</param>
    /// <param name="MaxCurrentMa">0 to 10 230 in steps of 10.</param>
    /// <param name="Peak">Overload for a moment.</param>
    /// <param name="Flags">What is said of the port; none but in the 5 V object.</param>
    public sealed record Fixed(int VoltageMv, int MaxCurrentMa, PeakCurrent Peak = PeakCurrent.None, SourceFlags Flags = SourceFlags.None) : Capability
    {
        /// <inheritdoc />
        public override SupplyKind Kind => SupplyKind.Fixed;

        /// <inheritdoc />
        public override (int MinMv, int MaxMv)? Window => (VoltageMv, VoltageMv);

        /// <inheritdoc />
        public override int? HighestCurrentMa => MaxCurrentMa;

        /// <summary>Voltage times current in mW, rounded down.</summary>
        public int PowerMw => (int)((long)VoltageMv * MaxCurrentMa / 1000);
    }

    /// <summary>A battery.</summary>
    /// <param name="MinMv">0 to 51 150 in steps of 50.</param>
    /// <param name="MaxMv">The same.</param>
    /// <param name="MaxPowerMw">0 to 255 750 in steps of 250.</param>
    public sealed record Battery(int MinMv, int MaxMv, int MaxPowerMw) : Capability
    {
        /// <inheritdoc />
        public override SupplyKind Kind => SupplyKind.Battery;

        /// <inheritdoc />
        public override (int MinMv, int MaxMv)? Window => (MinMv, MaxMv);
    }

    /// <summary>A supply whose voltage wanders.</summary>
    /// <param name="MinMv">0 to 51 150 in steps of 50.</param>
    /// <param name="MaxMv">The same.</param>
    /// <param name="MaxCurrentMa">0 to 10 230 in steps of 10.</param>
    public sealed record Variable(int MinMv, int MaxMv, int MaxCurrentMa) : Capability
    {
        /// <inheritdoc />
        public override SupplyKind Kind => SupplyKind.Variable;

        /// <inheritdoc />
        public override (int MinMv, int MaxMv)? Window => (MinMv, MaxMv);

        /// <inheritdoc />
        public override int? HighestCurrentMa => MaxCurrentMa;
    }

    /// <summary>A programmable supply.</summary>
    /// <param name="MinMv">0 to 25 500 in steps of 100.</param>
    /// <param name="MaxMv">The same.</param>
    /// <param name="MaxCurrentMa">0 to 6350 in steps of 50.</param>
    /// <param name="IsPowerLimited">True where voltage times current may exceed what the source can give.</param>
    public sealed record SprPps(int MinMv, int MaxMv, int MaxCurrentMa, bool IsPowerLimited = false) : Capability
    {
        /// <inheritdoc />
        public override SupplyKind Kind => SupplyKind.SprPps;

        /// <inheritdoc />
        public override (int MinMv, int MaxMv)? Window => (MinMv, MaxMv);

        /// <inheritdoc />
        public override int? HighestCurrentMa => MaxCurrentMa;
    }

    /// <summary>Adjustable voltage of the standard range, from 9 V.</summary>
    /// <param name="CurrentTo15VMa">Highest current from 9 V to 15 V: 0 to 10 230 in steps of 10.</param>
    /// <param name="CurrentTo20VMa">Highest current from 15 V to 20 V, the same; 0 where the range stops at 15 V.</param>
    /// <param name="Peak">Overload for a moment.</param>
    public sealed record SprAvs(int CurrentTo15VMa, int CurrentTo20VMa, PeakCurrent Peak = PeakCurrent.None) : Capability
    {
        /// <summary>Where the range begins.</summary>
        public const int LowestMv = 9000;

        /// <summary>Where the second current begins to count.</summary>
        public const int SplitMv = 15_000;

        /// <summary>Where the range ends at most.</summary>
        public const int HighestMv = 20_000;

        /// <inheritdoc />
        public override SupplyKind Kind => SupplyKind.SprAvs;

        /// <inheritdoc />
        public override (int MinMv, int MaxMv)? Window => (LowestMv, CurrentTo20VMa == 0 ? SplitMv : HighestMv);

        /// <inheritdoc />
        public override int? HighestCurrentMa => Math.Max(CurrentTo15VMa, CurrentTo20VMa);
    }

    /// <summary>Adjustable voltage of the extended range. Its current is <see cref="CurrentMa"/>.</summary>
    /// <param name="MinMv">0 to 25 500 in steps of 100.</param>
    /// <param name="MaxMv">0 to 51 100 in steps of 100.</param>
    /// <param name="PdpW">The power in W, 0 to 255.</param>
    /// <param name="Peak">Overload for a moment.</param>
    public sealed record EprAvs(int MinMv, int MaxMv, int PdpW, PeakCurrent Peak = PeakCurrent.None) : Capability
    {
        /// <summary>No current of the extended range is beyond this, in mA.</summary>
        public const int CurrentLimitMa = 5000;

        /// <inheritdoc />
        public override SupplyKind Kind => SupplyKind.EprAvs;

        /// <inheritdoc />
        public override (int MinMv, int MaxMv)? Window => (MinMv, MaxMv);

        /// <inheritdoc />
        public override int? HighestCurrentMa => MinMv > 0 ? (int)CurrentMa(MinMv) : CurrentLimitMa;

        /// <summary>Highest current at a voltage, in mA: <c>min(5 A, PDP / V)</c>, 0 outside the range.</summary>
        /// <param name="voltageMv">Above zero.</param>
        /// <remarks>Source: USB Power Delivery 3.2, table 10.12, note 4.</remarks>
        public double CurrentMa(double voltageMv) =>
            voltageMv > 0 && voltageMv >= MinMv && voltageMv <= MaxMv ? Math.Min(CurrentLimitMa, PdpW * 1e6 / voltageMv) : 0;
    }

    /// <summary>An augmented word of the reserved type: the word is kept, no number is taken from it.</summary>
    /// <param name="Word">The word.</param>
    public sealed record ReservedApdo(uint Word) : Capability
    {
        /// <inheritdoc />
        public override SupplyKind Kind => SupplyKind.ReservedApdo;
    }

    /// <summary>A zero word: it fills a position and offers nothing.</summary>
    public sealed record Padding : Capability
    {
        /// <inheritdoc />
        public override SupplyKind Kind => SupplyKind.Padding;
    }

    /// <summary>What stood where a word should be. Nothing is guessed from it.</summary>
    /// <param name="AsRead">The text as it was read.</param>
    /// <param name="Reason">Why it is no word.</param>
    public sealed record Unreadable(string AsRead, string Reason) : Capability
    {
        /// <inheritdoc />
        public override SupplyKind Kind => SupplyKind.Unreadable;
    }
}
