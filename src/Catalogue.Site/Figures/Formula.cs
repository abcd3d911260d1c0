using System.Text.RegularExpressions;
using Microsoft.AspNetCore.Components;
using Microsoft.AspNetCore.Components.Rendering;

namespace Catalogue.Site.Figures;

/// <summary>
/// A formula in symbols, set as mathematics: <c>I_rated</c> becomes a variable with an index, single letters become variables, words and signs stay
/// as they are.
/// </summary>
public sealed partial class Formula : ComponentBase
{
    [Parameter, EditorRequired]
    public string Text { get; set; } = "";

    protected override void BuildRenderTree(RenderTreeBuilder builder)
    {
        var at = 0;
        foreach (Match match in Symbol().Matches(Text))
        {
            builder.AddContent(0, Text[at..match.Index]);
            at = match.Index + match.Length;
            var index = match.Groups["index"];
            if (!index.Success && match.Length > 1)
            {
                builder.AddContent(1, match.Value);
                continue;
            }

            builder.OpenElement(2, "var");
            builder.AddContent(3, match.Groups["name"].Value);
            if (index.Success)
            {
                builder.OpenElement(4, "sub");
                builder.AddContent(5, index.Value);
                builder.CloseElement();
            }

            builder.CloseElement();
        }

        builder.AddContent(6, Text[at..]);
    }

    [GeneratedRegex(@"(?<name>\p{L}+)(_(?<index>[\p{L}\p{N}]+))?", RegexOptions.CultureInvariant)]
    private static partial Regex Symbol();
}
