using System.Net;
using System.Text.RegularExpressions;
using Catalogue.Data.Accounts;
using Catalogue.Web.Accounts;
using Microsoft.Extensions.DependencyInjection;

namespace Catalogue.Web.Tests.Accounts;

/// <summary>Signing in with a one-time link, with a password, and not at all.</summary>
/// <param name="site">The site.</param>
public sealed partial class SignInTests(SiteFixture site) : IClassFixture<SiteFixture>
{
    private const string Password = "correct horse battery";

    [Fact]
    public async Task OneTimeLink_SetsAPassword_WorksOnceAndThenThePasswordDoes()
    {
        var code = await OpenAsync("sorrel", Roles.Reviewer);
        var link = $"/sign-in/once?code={code}";
        using var person = site.Client(null);

        // Looking does not use the link up.
        Assert.Equal(HttpStatusCode.OK, (await person.GetAsync(link)).StatusCode);
        Assert.Equal(HttpStatusCode.UnprocessableEntity, (await PostAsync(person, link, "/sign-in/once", new() { ["code"] = code, ["password"] = "short", ["again"] = "short" })).StatusCode);
        Assert.Equal(HttpStatusCode.UnprocessableEntity, (await PostAsync(person, link, "/sign-in/once", new() { ["code"] = code, ["password"] = Password, ["again"] = "another one entirely" })).StatusCode);
        var set = await PostAsync(person, link, "/sign-in/once", new() { ["code"] = code, ["password"] = Password, ["again"] = Password });
        Assert.Equal((HttpStatusCode.Redirect, "/lab"), (set.StatusCode, set.Headers.Location?.ToString()));
        Assert.Equal(HttpStatusCode.NotFound, (await person.GetAsync(link)).StatusCode);

        using var later = site.Client(null);
        Assert.Equal(HttpStatusCode.Unauthorized, (await PostAsync(later, "/sign-in", "/sign-in", new() { ["name"] = "sorrel", ["password"] = "wrong wrong wrong" })).StatusCode);
        var signedIn = await PostAsync(later, "/sign-in", "/sign-in", new() { ["name"] = "sorrel", ["password"] = Password, ["then"] = "/lab/teardowns/x" });
        Assert.Equal((HttpStatusCode.Redirect, "/lab/teardowns/x"), (signedIn.StatusCode, signedIn.Headers.Location?.ToString()));
    }

    [Theory]
    [InlineData("https://elsewhere.example/")]
    [InlineData("//elsewhere.example/")]
    [InlineData("/\\elsewhere.example/")]
    [InlineData("/lab/\u00e9")]
    [InlineData("/\u2028lab")]
    public async Task SignIn_ReturningElsewhere_GoesToTheLab(string then)
    {
        var name = "adair" + Math.Abs(then.GetHashCode(StringComparison.Ordinal) % 1000);
        var code = await OpenAsync(name, Roles.Editor);
        using var person = site.Client(null);
        await PostAsync(person, $"/sign-in/once?code={code}", "/sign-in/once", new() { ["code"] = code, ["password"] = Password, ["again"] = Password });

        var signedIn = await PostAsync(person, "/sign-in", "/sign-in", new() { ["name"] = name, ["password"] = Password, ["then"] = then });

        Assert.Equal("/lab", signedIn.Headers.Location?.ToString());
    }

    [Fact]
    public async Task SignIn_WithoutTheFormsToken_IsRefused()
    {
        using var response = await site.Anonymous.PostAsync("/sign-in", new FormUrlEncodedContent(new Dictionary<string, string> { ["name"] = "x", ["password"] = "y" }));

        Assert.Equal(HttpStatusCode.BadRequest, response.StatusCode);
    }

    [Fact]
    public async Task Uploads_OfTheLab_NeedASignInAndThePagesToken()
    {
        using var anonymous = await site.Anonymous.PostAsync("/lab/upload/any", new MultipartFormDataContent());
        Assert.Equal((HttpStatusCode.Redirect, "/sign-in"), (anonymous.StatusCode, anonymous.Headers.Location is { } to ? new Uri(site.Anonymous.BaseAddress!, to).AbsolutePath : null));

        var code = await OpenAsync("uploader", Roles.Reviewer);
        using var person = site.Client(null);
        await PostAsync(person, $"/sign-in/once?code={code}", "/sign-in/once", new() { ["code"] = code, ["password"] = Password, ["again"] = Password });
        using var without = await person.PostAsync("/lab/upload/any", new MultipartFormDataContent { { new StringContent("x"), "file", "x.png" } });
        await Requests.ReadAsync(without, HttpStatusCode.BadRequest);
    }

    private async Task<string> OpenAsync(string name, string role) =>
        Assert.IsType<OpenAccount.Outcome.Opened>(await site.Services.GetRequiredService<OpenAccount>().RunAsync(name, null, role)).Code;

    private static async Task<HttpResponseMessage> PostAsync(HttpClient client, string formPage, string path, Dictionary<string, string> fields)
    {
        var html = await client.GetStringAsync(formPage);
        fields["__RequestVerificationToken"] = TokenField().Match(html).Groups[1].Value;
        return await client.PostAsync(path, new FormUrlEncodedContent(fields));
    }

    [GeneratedRegex("name=\"__RequestVerificationToken\" value=\"([^\"]+)\"")]
    private static partial Regex TokenField();
}
