using Bunit;
using Catalogue.Site.Figures;

namespace Catalogue.Site.Tests.Figures;

public sealed class FormulaTests : BunitContext
{
    [Theory]
    [InlineData("I_rated · n", "<var>I<sub>rated</sub></var> · <var>n</var>")]
    [InlineData("P / (η · V_min · λ)", "<var>P</var> / (<var>η</var> · <var>V<sub>min</sub></var> · <var>λ</var>)")]
    [InlineData("headroom", "headroom")]
    [InlineData("a < 1 & <b>", "<var>a</var> &lt; 1 &amp; &lt;<var>b</var>&gt;")]
    [InlineData("", "")]
    public void Formula_Symbols_AreSetAsMathematics(string text, string markup) => Assert.Equal(markup, Render<Formula>(parameters => parameters.Add(x => x.Text, text)).Markup);
}
