namespace Catalogue.Data.Accounts;

/// <summary>What an account may do. Each role includes the ones before it.</summary>
public static class Roles
{
    /// <summary>Records at the bench.</summary>
    public const string Reviewer = "reviewer";

    /// <summary>Checks evidence and publishes.</summary>
    public const string Editor = "editor";

    /// <summary>Accounts, settings and back-ups.</summary>
    public const string Administrator = "administrator";

    /// <summary>All of them, weakest first.</summary>
    public static IReadOnlyList<string> All { get; } = [Reviewer, Editor, Administrator];
}
