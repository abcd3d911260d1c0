using MudBlazor;

namespace Catalogue.Lab;

/// <summary>The face for MudBlazor, which takes literals only. A test holds them against tokens.css.</summary>
public static class LabTheme
{
    /// <summary>The theme of every signed-in page.</summary>
    public static MudTheme Theme { get; } = new()
    {
        PaletteLight = new PaletteLight
        {
            Background = "#F3F5F2",
            BackgroundGray = "#E9EDEA",
            Surface = "#FCFDFB",
            AppbarBackground = "#FCFDFB",
            AppbarText = "#16202A",
            TextPrimary = "#16202A",
            TextSecondary = "#3D4954",
            TextDisabled = "#55616C",
            Primary = "#8A3F14",
            PrimaryContrastText = "#FFFAF5",
            Secondary = "#16202A",
            SecondaryContrastText = "#FCFDFB",
            Info = "#1B5484",
            Success = "#0C5A4A",
            Warning = "#664E00",
            Error = "#93103A",
            LinesDefault = "#D2D8D5",
            LinesInputs = "#73808A",
            TableLines = "#D2D8D5",
            TableHover = "#F5E7DC",
            Divider = "#D2D8D5",
        },
        PaletteDark = new PaletteDark
        {
            Background = "#11161B",
            BackgroundGray = "#0B1014",
            Surface = "#181E25",
            AppbarBackground = "#181E25",
            AppbarText = "#E8EBE7",
            TextPrimary = "#E8EBE7",
            TextSecondary = "#BAC4CA",
            TextDisabled = "#97A4AD",
            Primary = "#EBA678",
            PrimaryContrastText = "#11161B",
            Secondary = "#E8EBE7",
            SecondaryContrastText = "#11161B",
            Info = "#93C5F0",
            Success = "#79D6BC",
            Warning = "#EDCB62",
            Error = "#FFA6BC",
            LinesDefault = "#2A343D",
            LinesInputs = "#7A8894",
            TableLines = "#2A343D",
            TableHover = "#352419",
            Divider = "#2A343D",
        },
        LayoutProperties = new LayoutProperties { DefaultBorderRadius = "2px", AppbarHeight = "46px" },
        Shadows = new Shadow { Elevation = [.. Enumerable.Repeat("none", 26)] },
        Typography = new Typography
        {
            Default = new DefaultTypography { FontFamily = ["Sofia Sans", "Arial", "sans-serif"], FontSize = ".875rem", LineHeight = "1.4", LetterSpacing = "normal" },
            Button = new ButtonTypography { FontSize = ".875rem", FontWeight = "600", TextTransform = "none", LetterSpacing = "normal" },
        },
    };
}
