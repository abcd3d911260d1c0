using Catalogue.Domain.Quantities;
using Catalogue.Domain.Teardowns;

namespace Catalogue.Domain.Isolation;

/// <summary>
/// A shortest path across an insulation as it was measured, with the assumptions chosen for it. Only this is stored; the note is computed
/// whenever it is shown.
/// </summary>
public sealed class MeasuredPath : IEditableRecord
{
    /// <summary>No path or groove within a power product is longer or wider, in millimetre.</summary>
    public const double LongestMm = 1000;

    /// <summary>No insulation of a power product works at more, in volt rms.</summary>
    public const double HighestVolts = 100_000;

    /// <summary>The lowest altitude that is taken, in metre.</summary>
    public const double LowestAltitudeM = -500;

    /// <summary>The highest altitude that is taken, in metre.</summary>
    public const double HighestAltitudeM = 20_000;

    /// <summary>The highest frequency that is taken, in hertz.</summary>
    public const double HighestHertz = 1e9;

    /// <summary>Overvoltage categories are I to IV; source: IEC 60664-1.</summary>
    public const int HighestOvervoltageCategory = 4;

    /// <summary>Pollution degrees are 1 to 3 inside an enclosure; source: IEC 60664-1.</summary>
    public const int HighestPollutionDegree = 3;

    private const double MetresInMillimetre = 1e-3;

    private static readonly string[] PrimaryWords = ["primary", "mains"];
    private static readonly string[] SecondaryWords = ["secondary", "output"];

    /// <inheritdoc />
    public required RevisionId RevisionId { get; set; }

    /// <summary>Its id.</summary>
    public required MeasuredPathId Id { get; init; }

    /// <summary>Its place in the list, from 0.</summary>
    public int Position { get; set; }

    /// <summary>The board it was measured on, or null.</summary>
    public BoardId? BoardId { get; set; }

    /// <summary>One end in words, such as <c>primary pads of U3</c>.</summary>
    public required string From { get; set; }

    /// <summary>The other end in words.</summary>
    public required string To { get; set; }

    /// <summary>Which of the two paths was measured, or null where not said.</summary>
    public PathKind? PathKind { get; set; }

    /// <summary>The lowest case of the distance in millimetre; null exactly where <see cref="NominalMm"/> is.</summary>
    public double? LowMm { get; set; }

    /// <summary>The distance in millimetre, above 0 and at most <see cref="LongestMm"/>; null where not measured.</summary>
    public double? NominalMm { get; set; }

    /// <summary>The highest case of the distance in millimetre; null exactly where <see cref="NominalMm"/> is.</summary>
    public double? HighMm { get; set; }

    /// <summary>How it was measured, such as <c>caliper</c>; null where not said.</summary>
    public string? Method { get; set; }

    /// <summary>Width of the narrowest slot or groove that the path follows, in millimetre; null where it follows none.</summary>
    public double? NarrowestGrooveMm { get; set; }

    /// <summary>Assumed working voltage across the path, in volt rms; null where not said.</summary>
    public double? WorkingVoltageV { get; set; }

    /// <summary>What the insulation is taken to be there for; null where not said.</summary>
    public InsulationKind? Insulation { get; set; }

    /// <summary>Assumed overvoltage category, 1 to 4; null where not said.</summary>
    public int? OvervoltageCategory { get; set; }

    /// <summary>Assumed pollution degree, 1 to 3; null where not said.</summary>
    public int? PollutionDegree { get; set; }

    /// <summary>Assumed material group; null where not said.</summary>
    public MaterialGroup? MaterialGroup { get; set; }

    /// <summary>Assumed highest altitude of use, in metre; null where not said.</summary>
    public double? AltitudeM { get; set; }

    /// <summary>Assumed highest frequency across the path, in hertz; null where not said.</summary>
    public double? FrequencyHz { get; set; }

    /// <summary>True when coating or potting covers the path; null where not said.</summary>
    public bool? IsCoated { get; set; }

    /// <summary>A remark, or null.</summary>
    public string? Remark { get; set; }

    /// <inheritdoc />
    public uint Version { get; init; }

    /// <summary>
    /// True where the path crosses insulation that protects a person: it is taken as such, or one end is said to be at the mains or primary side and the other at the
    /// secondary or output side. Functional insulation protects nobody.
    /// </summary>
    public bool CrossesBarrier => Insulation switch
    {
        InsulationKind.Functional => false,
        not null => true,
        null => (IsAt(From, PrimaryWords) && IsAt(To, SecondaryWords)) || (IsAt(To, PrimaryWords) && IsAt(From, SecondaryWords)),
    };

    /// <summary>What the path says beside the value it may be compared with.</summary>
    public IsolationNote ToNote()
    {
        Interval? length = (LowMm, NominalMm, HighMm) is ({ } low, { } nominal, { } high)
            ? Interval.Create(low * MetresInMillimetre, nominal * MetresInMillimetre, high * MetresInMillimetre)
            : null;
        return IsolationNote.Of(
            new IsolationPath(PathKind, length, Method, From, To, NarrowestGrooveMm * MetresInMillimetre),
            new IsolationAssumptions
            {
                WorkingVoltage = WorkingVoltageV is { } volts ? Interval.Exactly(volts) : null,
                Insulation = Insulation,
                OvervoltageCategory = OvervoltageCategory,
                PollutionDegree = PollutionDegree,
                Material = MaterialGroup,
                Altitude = AltitudeM,
                Frequency = FrequencyHz,
                IsCoated = IsCoated,
            });
    }

    private static bool IsAt(string end, string[] words) => Array.Exists(words, word => end.Contains(word, StringComparison.OrdinalIgnoreCase));
}
