namespace Catalogue.Lab;

/// <summary>What the circuit must know of the request that opened the page; the request itself is gone by then.</summary>
/// <param name="FormToken">The token against forged requests, bound to the person who is signed in.</param>
/// <param name="FormFieldName">The name of the form field that carries it.</param>
/// <param name="Theme"><c>light</c>, <c>dark</c>, or null where the device decides.</param>
public sealed record LabRequest(string FormToken, string FormFieldName, string? Theme)
{
    /// <summary>The cookie that holds the choice of light or dark.</summary>
    public const string ThemeCookie = "catalogue-theme";
}
