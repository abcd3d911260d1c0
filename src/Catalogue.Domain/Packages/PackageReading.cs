namespace Catalogue.Domain.Packages;

/// <summary>What came of reading the name of a package.</summary>
public abstract record PackageReading
{
    private PackageReading(string asWritten) => AsWritten = asWritten;

    /// <summary>The text as it was written; empty where there was none.</summary>
    public string AsWritten { get; }

    /// <summary>The canonical name, or null where the package is unknown: an unknown text never makes a name.</summary>
    public virtual string? Canonical => null;

    /// <summary>The canonical name where the text does not hold it already, to stand beside the text; else null.</summary>
    public string? CanonicalBeside => Canonical is { } name && !AsWritten.Contains(name, StringComparison.OrdinalIgnoreCase) ? name : null;

    /// <summary>The name that several spellings of one package share: the canonical one where it says the size too, else the text as written.</summary>
    public string Grouping => this is Recognised { Outline.HasSeveralSizes: false } read ? read.Outline.Name : AsWritten;

    /// <summary>It names one outline. Sizes are as written; the nominal ones are the outline's.</summary>
    /// <param name="AsWritten">The text as it was written.</param>
    /// <param name="Outline">The outline; one without a row of its own has no synonyms.</param>
    public sealed record Recognised(string AsWritten, PackageOutline Outline) : PackageReading(AsWritten)
    {
        /// <inheritdoc />
        public override string? Canonical => Outline.Name;

        /// <summary>Pins as the trade counts them, or null where neither the text nor the outline says how many.</summary>
        public int? Pins => Outline.Pins;

        /// <summary>True where the text leaves the count open and the usual one was taken: <c>SOT23</c>.</summary>
        public bool ArePinsAssumed { get; init; }

        /// <summary>Body in plan as written, or null.</summary>
        public PackageSize? Body { get; init; }

        /// <summary>Distance of pins or wires in millimetre as written, or null.</summary>
        public double? PitchMm { get; init; }

        /// <summary>Exposed pad as written, or null.</summary>
        public PackageSize? ExposedPad { get; init; }

        /// <summary>Diameter in millimetre as written, or null.</summary>
        public double? DiameterMm { get; init; }

        /// <summary>Height in millimetre as written, or null.</summary>
        public double? HeightMm { get; init; }

        /// <summary>The other name: the one that was written where it is not the canonical one, else the outline's other common name. Null where there is none.</summary>
        public string? Alias { get; init; }

        /// <summary>What was assumed, dropped or not read, in words.</summary>
        public IReadOnlyList<string> Warnings { get; init; } = [];
    }

    /// <summary>No outline, or more than one: kept as written, for a person to look at.</summary>
    /// <param name="AsWritten">The text as it was written.</param>
    /// <param name="Reason">Why, in words; <see cref="NotKnown"/> where no name in it is known.</param>
    public sealed record Unknown(string AsWritten, string Reason) : PackageReading(AsWritten)
    {
        /// <summary>The reason where no name in the text is known.</summary>
        public const string NotKnown = "unknown, kept as written";
    }
}
