using System.Globalization;
using System.Net;
using System.Text;

namespace Catalogue.Domain.UsbPd;

/// <summary>The envelope of a source as a small picture: voltage across, current up.</summary>
/// <remarks>
/// An <c>svg</c> element of class <c>chart</c> without script, style or colours of its own: stretches and strokes come from the style sheet, positions are per cent of the
/// ground. Fixed supplies are rings on stems, adjustable ones areas; a dashed edge is the most a power-limited supply names. All it says stands in its label too.
/// </remarks>
public static class EnvelopeSvg
{
    /// <summary>The picture of what captured words offer, or null where none is readable or nothing is offered.</summary>
    /// <param name="words">As captured, in their order.</param>
    public static string? Of(IReadOnlyList<string> words)
    {
        var read = WordText.ReadAll(words);
        if (read.Count == 0)
            return null;
        var list = CapabilityList.Of(read);
        var envelope = SupplyEnvelope.Of(list);
        return envelope.Regions.Count == 0 ? null : Draw(envelope, Label(list, envelope));
    }

    private static string Label(CapabilityList list, SupplyEnvelope envelope)
    {
        var offered = envelope.Regions.Select(region => region.Position).ToHashSet();
        return "Voltage against current offered: " + string.Join("; ", list.Items.Where(item => offered.Contains(item.Position)).Select(item => SupplyWords.Of(item.Capability)));
    }

    private static string Draw(SupplyEnvelope envelope, string label)
    {
        var points = envelope.Regions.SelectMany(region => region.Limit).ToList();
        var ground = new Ground(Axis.To(points.Max(point => point.VoltageV), [5, 10, 20]), Axis.To(points.Max(point => point.CurrentA), [1, 2, 5, 10, 50, 200]));
        var svg = new StringBuilder().Append(CultureInfo.InvariantCulture, $"""<svg class="chart" role="img" aria-label="{WebUtility.HtmlEncode(label)}"><svg x="30" y="12" width="86%" height="76%" overflow="visible">""");
        foreach (var volts in ground.Volts.Ticks)
            svg.Append(CultureInfo.InvariantCulture, $"""<line class="grid" x1="{ground.X(volts)}%" x2="{ground.X(volts)}%" y1="0" y2="100%"/><text x="{ground.X(volts)}%" y="100%" dy="16" text-anchor="middle">{volts}</text>""");
        foreach (var amperes in ground.Amperes.Ticks)
            svg.Append(CultureInfo.InvariantCulture, $"""<line class="grid" x1="0" x2="100%" y1="{ground.Y(amperes)}%" y2="{ground.Y(amperes)}%"/><text x="-6" y="{ground.Y(amperes)}%" dy="4" text-anchor="end">{amperes}</text>""");

        svg.Append("""<svg viewBox="0 0 100 100" preserveAspectRatio="none" width="100%" height="100%" overflow="visible">""");
        // Larger areas first, so that none hides another.
        foreach (var region in envelope.Regions.Where(region => region.Kind is not SupplyKind.Fixed).OrderByDescending(Span))
            svg.Append(CultureInfo.InvariantCulture, $"""<path class="{(region.MayGiveLess ? "pps2" : "pps")}" vector-effect="non-scaling-stroke" d="{Outline(ground, region)}"/>""");
        svg.Append("</svg>");
        foreach (var point in envelope.Regions.Where(region => region.Kind is SupplyKind.Fixed).SelectMany(region => region.Limit))
            svg.Append(CultureInfo.InvariantCulture, $"""<line class="stem" x1="{ground.X(point.VoltageV)}%" x2="{ground.X(point.VoltageV)}%" y1="100%" y2="{ground.Y(point.CurrentA)}%"/><circle class="head" cx="{ground.X(point.VoltageV)}%" cy="{ground.Y(point.CurrentA)}%" r="4"/>""");
        return svg
            .Append("""<line class="axis" x1="0" x2="100%" y1="100%" y2="100%"/><line class="axis" x1="0" x2="0" y1="0" y2="100%"/><text x="100%" y="100%" dy="16" text-anchor="end">V</text><text x="-6" y="0" dy="4" text-anchor="end">A</text></svg></svg>""")
            .ToString();
    }

    private static double Span(SupplyRegion region) => region.Limit.Max(point => point.CurrentA) * (region.Limit[^1].VoltageV - region.Limit[0].VoltageV);

    private static string Outline(Ground ground, SupplyRegion region)
    {
        var path = new StringBuilder().Append(CultureInfo.InvariantCulture, $"M{ground.X(region.Limit[0].VoltageV)} 100");
        foreach (var point in region.Limit)
            path.Append(CultureInfo.InvariantCulture, $"L{ground.X(point.VoltageV)} {ground.Y(point.CurrentA)}");
        return path.Append(CultureInfo.InvariantCulture, $"L{ground.X(region.Limit[^1].VoltageV)} 100Z").ToString();
    }

    private sealed record Ground(Axis Volts, Axis Amperes)
    {
        public double X(double volts) => Math.Round(100 * volts / Volts.Top, 2);

        public double Y(double amperes) => Math.Round(100 - (100 * amperes / Amperes.Top), 2);
    }

    // From zero to a little above the highest value; the unit stands at the top, so no tick does.
    private sealed record Axis(double Top, IReadOnlyList<int> Ticks)
    {
        private const int MostTicks = 6;
        private const double Above = 1.15;

        public static Axis To(double highest, int[] steps)
        {
            var step = Array.Find(steps, one => highest / one < MostTicks) is var fitting and > 0 ? fitting : (int)Math.Ceiling(highest / MostTicks);
            return new Axis(highest * Above, [.. Enumerable.Range(0, (int)Math.Floor(highest / step) + 1).Select(index => index * step)]);
        }
    }
}
