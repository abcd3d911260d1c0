using System.Text.RegularExpressions;
using MudBlazor;
using MudBlazor.Utilities;

namespace Catalogue.Lab.Tests;

public sealed partial class LabThemeTests
{
    private static readonly Dictionary<string, (string Light, string Dark)> Tokens = Token()
        .Matches(File.ReadAllText(Path.Combine(AppContext.BaseDirectory, "tokens.css")))
        .ToDictionary(match => match.Groups["name"].Value, match => (match.Groups["light"].Value, match.Groups["dark"].Value));

    public static TheoryData<string, string> Pairs => new()
    {
        { nameof(Palette.Background), "paper" },
        { nameof(Palette.BackgroundGray), "well" },
        { nameof(Palette.Surface), "sheet" },
        { nameof(Palette.AppbarBackground), "sheet" },
        { nameof(Palette.AppbarText), "ink" },
        { nameof(Palette.TextPrimary), "ink" },
        { nameof(Palette.TextSecondary), "ink-2" },
        { nameof(Palette.TextDisabled), "ink-3" },
        { nameof(Palette.Primary), "copper" },
        { nameof(Palette.Secondary), "ink" },
        { nameof(Palette.SecondaryContrastText), "sheet" },
        { nameof(Palette.Info), "adequate" },
        { nameof(Palette.Success), "ample" },
        { nameof(Palette.Warning), "thin" },
        { nameof(Palette.Error), "over-rating" },
        { nameof(Palette.LinesDefault), "rule" },
        { nameof(Palette.LinesInputs), "edge" },
        { nameof(Palette.TableLines), "rule" },
        { nameof(Palette.TableHover), "copper-wash" },
        { nameof(Palette.Divider), "rule" },
    };

    [Theory]
    [MemberData(nameof(Pairs))]
    public void Theme_Literal_EqualsItsToken(string colour, string token)
    {
        var (light, dark) = Tokens[token];
        var dull = colour is nameof(Palette.SecondaryContrastText);

        Assert.Equal(light, Hex(LabTheme.Theme.PaletteLight, colour));
        // On the light ink of the dark face stands the dark paper: its sheet is no more legible there.
        Assert.Equal(dull ? Tokens["paper"].Dark : dark, Hex(LabTheme.Theme.PaletteDark, colour));
    }

    [Fact]
    public void Theme_TextOnCopper_IsThatOfTheFaceByDayAndPaperByNight()
    {
        Assert.Equal(Tokens["on-copper"].Light, Hex(LabTheme.Theme.PaletteLight, nameof(Palette.PrimaryContrastText)));
        Assert.Equal(Tokens["paper"].Dark, Hex(LabTheme.Theme.PaletteDark, nameof(Palette.PrimaryContrastText)));
    }

    [Fact]
    public void Theme_Shadows_AreNone() => Assert.All(LabTheme.Theme.Shadows.Elevation, shadow => Assert.Equal("none", shadow));

    private static string Hex(Palette palette, string name) =>
        ((MudColor)typeof(Palette).GetProperty(name)!.GetValue(palette)!).ToString(MudColorOutputFormats.Hex).ToUpperInvariant();

    [GeneratedRegex(@"--(?<name>[a-z0-9-]+): light-dark\((?<light>#[0-9A-F]{6}), (?<dark>#[0-9A-F]{6})\)")]
    private static partial Regex Token();
}
