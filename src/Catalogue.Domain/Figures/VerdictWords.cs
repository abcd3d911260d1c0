namespace Catalogue.Domain.Figures;

/// <summary>The word and the code of each verdict.</summary>
public static class VerdictWords
{
    /// <summary>The word a person reads, such as <c>over guideline</c>.</summary>
    public static string Word(this Verdict verdict) => verdict.Code().Replace('-', ' ');

    /// <summary>The code of pages and styles, such as <c>over-guideline</c>.</summary>
    public static string Code(this Verdict verdict) => verdict switch
    {
        Verdict.OverRating => "over-rating",
        Verdict.OverGuideline => "over-guideline",
        Verdict.Thin => "thin",
        Verdict.Adequate => "adequate",
        Verdict.Ample => "ample",
        Verdict.NoLine => "no-line",
        _ => "unknown",
    };
}
