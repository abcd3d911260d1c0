namespace Catalogue.Domain.Articles;

/// <summary>What a section of an article becomes.</summary>
public enum ArticleSectionKind
{
    /// <summary>A step of taking apart.</summary>
    Step,

    /// <summary>A finding.</summary>
    Finding,

    /// <summary>How the work was done.</summary>
    Method,

    /// <summary>Nothing: the section has no text of its own, or a person left it out.</summary>
    LeaveOut,
}
