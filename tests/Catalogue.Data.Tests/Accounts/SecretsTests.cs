using Catalogue.Data.Accounts;

namespace Catalogue.Data.Tests.Accounts;

public sealed class SecretsTests : DatabaseTests
{
    [Fact]
    public async Task Token_IsFoundByItself_AndNotByAnythingElse()
    {
        var tokens = Database.Get<Tokens>();
        var token = await tokens.CreateAsync("bench script", TokenScope.Write);

        Assert.Equal(("bench script", TokenScope.Write), await tokens.FindAsync(token) is { } found ? (found.Name, found.Scope) : default);
        Assert.Null(await tokens.FindAsync(token + "x"));
        Assert.Null(await tokens.FindAsync(""));
        Assert.DoesNotContain(token, await Database.ScalarAsync<string>("select token_hash from api_tokens"), StringComparison.Ordinal);

        await Database.SqlAsync("update api_tokens set revoked_at = now()");
        Assert.Null(await tokens.FindAsync(token));
    }

    [Fact]
    public async Task OneTimeSignIn_UsedByManyAtOnce_WorksForOne()
    {
        var signIns = Database.Get<OneTimeSignIns>();
        var code = await signIns.CreateAsync(await AccountAsync());

        var used = await Task.WhenAll(Enumerable.Range(0, 8).Select(_ => signIns.UseAsync(code)));

        Assert.Equal(1, used.Count(done => done));
        Assert.Null(await signIns.PeekAsync(code));
    }

    [Fact]
    public async Task OneTimeSignIn_ADayLater_NoLongerWorks()
    {
        var signIns = Database.Get<OneTimeSignIns>();
        var account = await AccountAsync();
        var code = await signIns.CreateAsync(account);
        Assert.Equal(account, await signIns.PeekAsync(code));

        Database.Clock.Advance(OneTimeSignIn.Lifetime);

        Assert.Null(await signIns.PeekAsync(code));
        Assert.False(await signIns.UseAsync(code));
    }

    [Fact]
    public async Task OneTimeSignIn_ANewerOne_EndsTheOlder()
    {
        var signIns = Database.Get<OneTimeSignIns>();
        var account = await AccountAsync();
        var older = await signIns.CreateAsync(account);
        var newer = await signIns.CreateAsync(account);

        Assert.Null(await signIns.PeekAsync(older));
        Assert.Equal(account, await signIns.PeekAsync(newer));
    }

    private async Task<Guid> AccountAsync()
    {
        await using var context = await Database.ContextAsync();
        var account = new Account { Id = Guid.CreateVersion7(), UserName = "sorrel", DisplayName = "I. Sorrel" };
        context.Users.Add(account);
        await context.SaveChangesAsync();
        return account.Id;
    }
}
