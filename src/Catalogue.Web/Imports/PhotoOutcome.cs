namespace Catalogue.Web.Imports;

/// <summary>What became of a file among many pictures, or would become of it.</summary>
internal enum PhotoOutcome
{
    /// <summary>It would be added; only when nothing is changed.</summary>
    WouldAdd,

    /// <summary>It was added.</summary>
    Added,

    /// <summary>The teardown has a photo of this very content.</summary>
    AlreadyThere,

    /// <summary>Another file of the same batch has this very content.</summary>
    Repeated,

    /// <summary>It cannot be taken in.</summary>
    Refused,

    /// <summary>An operating system put it there.</summary>
    Skipped,

    /// <summary>It was to be left out.</summary>
    LeftOut,
}
