using Catalogue.Domain.Quantities;

namespace Catalogue.Domain.Isolation;

/// <summary>A measured distance beside a value to compare it with. An orientation, never a verdict.</summary>
/// <remarks>
/// Orientation values, as commonly quoted for mains equipment up to 250 V rms, overvoltage category II, pollution degree 2, material group III, up to
/// 2000 m: creepage 2.5 mm basic and 5.0 mm reinforced; clearance 1.5 mm basic and 3.0 mm reinforced; clearance × 1.48 up to 5000 m. Milder assumptions are compared
/// with the same values, harsher ones with none. Source: IEC 60664-1 and the product standards that use it, not read clause by clause; “clearly above” from
/// 1.25 times is a house rule.
/// </remarks>
/// <param name="Outcome">One of three.</param>
/// <param name="Orientation">The value to compare with, in metre; null where not assessable.</param>
/// <param name="Reasons">What was compared, or why nothing was; at least one, each a sentence.</param>
public sealed record IsolationNote(IsolationOutcome Outcome, double? Orientation, IReadOnlyList<string> Reasons)
{
    /// <summary>Stands under every note.</summary>
    public const string Deferral = "Compare with, no more: a qualified assessor with the product standard decides.";

    /// <summary>How well the orientation values are founded.</summary>
    public const Confidence Mark = Confidence.Medium;

    /// <summary>From so many times the orientation value on a distance is clearly above; a house rule.</summary>
    public const double ClearlyAboveFrom = 1.25;

    private const double HighestVolts = 250;
    private const double LowAltitude = 2000;
    private const double HighestAltitude = 5000;
    private const double AltitudeFactor = 1.48;
    private const double HighestHertz = 30_000;
    private const double LongestPath = 1;

    /// <summary>The value to compare with, in millimetre, without the noise of the conversion; null where not assessable.</summary>
    public double? OrientationMm => Orientation is { } metres ? Math.Round(metres * 1000, 9) : null;

    /// <summary>Compares a path with the orientation value of the assumptions.</summary>
    public static IsolationNote Of(IsolationPath path, IsolationAssumptions assumptions)
    {
        ArgumentNullException.ThrowIfNull(path);
        ArgumentNullException.ThrowIfNull(assumptions);
        List<string> obstacles = [.. Undescribed(path), .. Unsaid(path, assumptions), .. Unfitting(path, assumptions)];
        if (obstacles.Count > 0 || path.Length is not { } length)
            return new IsolationNote(IsolationOutcome.NotAssessable, null, obstacles);

        var orientation = OrientationOf(path.Kind!.Value, assumptions);
        var outcome = Line.IsBelow(length.Low, ClearlyAboveFrom * orientation) ? IsolationOutcome.NearOrBelowAsk : IsolationOutcome.ClearlyAbove;
        return new IsolationNote(
            outcome,
            orientation,
            [
                $"{Name(path.Kind.Value)} of {Millimetres(length.Low)} at least, compare with {Millimetres(orientation)}.",
                outcome is IsolationOutcome.ClearlyAbove
                    ? $"Clearly above: from {QuantityText.Number(ClearlyAboveFrom)} times the orientation value, a house rule."
                    : $"Near or below: less than {QuantityText.Number(ClearlyAboveFrom)} times the orientation value, a house rule. Ask.",
            ]);
    }

    private static double OrientationOf(PathKind kind, IsolationAssumptions assumptions)
    {
        var isReinforced = assumptions.Insulation is InsulationKind.Double or InsulationKind.Reinforced;
        return kind is PathKind.Creepage
            ? isReinforced ? 5.0e-3 : 2.5e-3
            : (isReinforced ? 3.0e-3 : 1.5e-3) * (assumptions.Altitude > LowAltitude ? AltitudeFactor : 1);
    }

    private static IEnumerable<string> Undescribed(IsolationPath path)
    {
        if (path.Kind is null)
            yield return "Whether the path is creepage or clearance is not said.";
        if (path.Length is not { } length)
            yield return "No distance was measured.";
        else if (length.Low <= 0 || length.High > LongestPath)
            yield return "The distance must lie above zero and be at most 1 m.";
        if (string.IsNullOrWhiteSpace(path.Method))
            yield return "How it was measured is not said.";
        if (string.IsNullOrWhiteSpace(path.From) || string.IsNullOrWhiteSpace(path.To))
            yield return "The two ends of the path are not both named.";
        if (path.NarrowestGroove is { } groove && !(groove > 0 && groove <= LongestPath))
            yield return "The width of the narrowest groove must lie above zero and be at most 1 m.";
    }

    private static IEnumerable<string> Unsaid(IsolationPath path, IsolationAssumptions assumptions)
    {
        if (assumptions.WorkingVoltage is null)
            yield return "The working voltage is not said.";
        if (assumptions.Insulation is null)
            yield return "The kind of insulation is not said.";
        if (assumptions.PollutionDegree is null)
            yield return "The pollution degree is not said.";
        if (path.Kind is PathKind.Creepage && assumptions.Material is null)
            yield return "The material group is not said.";
        if (path.Kind is PathKind.Clearance && assumptions.OvervoltageCategory is null)
            yield return "The overvoltage category is not said.";
        if (path.Kind is PathKind.Clearance && assumptions.Altitude is null)
            yield return "The altitude of use is not said.";
        if (assumptions.IsCoated is null)
            yield return "Whether coating or potting covers the path is not said.";
    }

    private static IEnumerable<string> Unfitting(IsolationPath path, IsolationAssumptions assumptions)
    {
        if (assumptions.WorkingVoltage is { } volts && (volts.Low <= 0 || volts.High > HighestVolts))
            yield return "The orientation values hold for working voltages above 0 and up to 250 V rms.";
        if (assumptions.Insulation is InsulationKind.Functional)
            yield return "There is no orientation value for functional insulation.";
        if (assumptions.OvervoltageCategory is < 1 or > 2)
            yield return "The orientation values hold for overvoltage category I and II.";
        if (assumptions.PollutionDegree is < 1 or > 2)
            yield return "The orientation values hold for pollution degree 1 and 2.";
        if (assumptions.Altitude is { } altitude && !(altitude >= -500 && altitude <= HighestAltitude))
            yield return "The orientation values hold up to 5000 m.";
        if (assumptions.Frequency is { } hertz && !(hertz >= 0 && hertz <= HighestHertz))
            yield return "The orientation values hold up to 30 kHz.";
        if (assumptions.IsCoated is true)
            yield return "Under coating or potting other rules hold, and a photo shows no distance.";
        if (path.NarrowestGroove is { } groove && assumptions.PollutionDegree is 1 or 2 && groove < NarrowestThatCounts(assumptions.PollutionDegree.Value))
            yield return "A groove this narrow does not count at this pollution degree: measure across it.";
    }

    private static double NarrowestThatCounts(int pollutionDegree) => pollutionDegree == 1 ? 0.25e-3 : 1.0e-3;

    private static string Name(PathKind kind) => kind is PathKind.Creepage ? "Creepage" : "Clearance";

    private static string Millimetres(double metres) => IsolationWords.Millimetres(metres * 1000);
}
