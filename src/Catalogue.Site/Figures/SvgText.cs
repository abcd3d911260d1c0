using Microsoft.AspNetCore.Components;
using Microsoft.AspNetCore.Components.Rendering;

namespace Catalogue.Site.Figures;

/// <summary>An SVG <c>text</c>; Razor keeps that tag for itself, so it is built by hand.</summary>
public sealed class SvgText : ComponentBase
{
    [Parameter, EditorRequired]
    public string Text { get; set; } = "";

    [Parameter, EditorRequired]
    public string X { get; set; } = "";

    [Parameter, EditorRequired]
    public string Y { get; set; } = "";

    [Parameter]
    public string? Class { get; set; }

    protected override void BuildRenderTree(RenderTreeBuilder builder)
    {
        builder.OpenElement(0, "text");
        builder.AddAttribute(1, "class", Class);
        builder.AddAttribute(2, "x", X);
        builder.AddAttribute(3, "y", Y);
        builder.AddContent(4, Text);
        builder.CloseElement();
    }
}
