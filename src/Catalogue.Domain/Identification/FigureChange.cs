using Catalogue.Domain.Components;
using Catalogue.Domain.Figures;
using Catalogue.Domain.Quantities;
using Catalogue.Domain.Rails;

namespace Catalogue.Domain.Identification;

/// <summary>A figure that would come out differently.</summary>
/// <param name="Rule">The rule's code, such as <c>fuse_headroom</c>.</param>
/// <param name="Component">The component it is about, or null for a figure of a rail.</param>
/// <param name="Rail">The rail it is about, or null for a figure of a component.</param>
/// <param name="Subject">What that is called.</param>
/// <param name="From">The verdict now; <see cref="Verdict.Unknown"/> where an input is missing, null where the figure does not apply.</param>
/// <param name="To">The verdict then; null where the figure would not apply any more.</param>
/// <param name="ValueFrom">The value now, or null where not computed.</param>
/// <param name="ValueTo">The value then, or null where not computed.</param>
/// <param name="Unit">The unit of both.</param>
public sealed record FigureChange(
    string Rule, ComponentId? Component, RailId? Rail, string Subject, Verdict? From, Verdict? To, Interval? ValueFrom, Interval? ValueTo, Unit Unit)
{
    /// <summary>True where the figure cannot be computed now and could be then.</summary>
    public bool BecomesComputable => ValueFrom is null && ValueTo is not null;
}
