namespace Catalogue.Web.Accounts;

/// <summary>Addresses of signing in that no other page links to.</summary>
public static class SignInAddresses
{
    /// <summary>The page that a one-time link opens.</summary>
    public const string OneTimePage = "/sign-in/once";

    /// <summary>A one-time link, from the root of the site.</summary>
    public static string OneTime(string code) => $"{OneTimePage}?code={code}";
}
