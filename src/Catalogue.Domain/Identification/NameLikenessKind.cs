namespace Catalogue.Domain.Identification;

/// <summary>In which way two names are alike.</summary>
public enum NameLikenessKind
{
    /// <summary>One stem with different endings: grades or versions of one part, offered as kin and never joined.</summary>
    Version,

    /// <summary>They are easily taken for each other.</summary>
    LookAlike,
}
