using Catalogue.Data.Components;
using Catalogue.Data.Rails;
using Catalogue.Domain.Components;
using Catalogue.Domain.Quantities;

namespace Catalogue.Web.Demo;

/// <summary>Short ways to write ratings and rail quantities with what they rest on.</summary>
internal static class DemoQuantities
{
    public static RatingForm Printed(RatingKind kind, string text, string? condition = null) =>
        new() { Kind = kind, Text = text, Condition = condition, Evidence = Evidence.ReadOnPart, Source = "printed on the part" };

    public static RatingForm Coded(RatingKind kind, string text) =>
        new() { Kind = kind, Text = text, Evidence = Evidence.Decoded, Source = "value code on the part" };

    public static RatingForm Sheet(RatingKind kind, string text, string? condition = null) =>
        new() { Kind = kind, Text = text, Condition = condition, Evidence = Evidence.Datasheet, Source = "maker's sheet" };

    public static RatingForm Known(RatingKind kind, Evidence evidence, string source, double nominal, double? low = null, double? high = null, string? condition = null) =>
        new() { Kind = kind, Low = low, Nominal = nominal, High = high, Evidence = evidence, Source = source, Condition = condition };

    public static GivenQuantity Of(double nominal, Evidence evidence, string source, double? low = null, double? high = null) =>
        new() { Low = low, Nominal = nominal, High = high, Evidence = evidence, Source = source };
}
