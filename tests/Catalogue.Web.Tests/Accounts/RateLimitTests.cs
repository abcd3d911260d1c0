using System.Net;

namespace Catalogue.Web.Tests.Accounts;

/// <summary>Guessing is slow.</summary>
/// <param name="site">A site of its own, since the limit counts by address.</param>
public sealed class RateLimitTests(SiteFixture site) : IClassFixture<SiteFixture>
{
    [Fact]
    public async Task SignIn_TriedOverAndOver_IsSlowedDownInWords()
    {
        using var person = site.Client(null);
        HttpResponseMessage answer;
        var tries = 0;
        do
            answer = await person.GetAsync("/sign-in/once?code=guess");
        while (answer.StatusCode == HttpStatusCode.NotFound && ++tries < 60);

        Assert.Equal(30, tries);
        await Requests.ReadAsync(answer, HttpStatusCode.TooManyRequests);
        Assert.NotNull(answer.Headers.RetryAfter);
    }
}
