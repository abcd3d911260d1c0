namespace Catalogue.Domain.Figures;

/// <summary>The lines that headrooms are held against. House rules: display bands, not limits of any standard.</summary>
public static class VerdictLines
{
    /// <summary>A headroom of 1 meets the convention exactly.</summary>
    public const double Headroom = 1.0;

    /// <summary>From here on a headroom is called ample.</summary>
    public const double AmpleHeadroom = 1.5;
}
