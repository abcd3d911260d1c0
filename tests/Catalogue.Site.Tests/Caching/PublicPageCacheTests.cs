using System.Globalization;
using System.Text;
using Catalogue.Site.Caching;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Http.Features;
using Microsoft.Extensions.Logging.Abstractions;
using Npgsql;

namespace Catalogue.Site.Tests.Caching;

public sealed class PublicPageCacheTests : IDisposable
{
    private readonly PageStore _store = new();
    private readonly MovableClock _clock = new();
    private readonly List<string> _rendered = [];

    private Func<CancellationToken, Task<long>> _version = _ => Task.FromResult(1L);
    private Func<HttpContext, Task> _render;

    public PublicPageCacheTests() => _render = context => Page(context, $"page {context.Request.Path}{context.Request.QueryString} {_rendered.Count}");

    public void Dispose() => _store.Dispose();

    [Fact]
    public async Task Get_Twice_RendersOnce()
    {
        var first = await AskAsync("/teardowns");
        var second = await AskAsync("/teardowns");
        Assert.Single(_rendered);
        Assert.Equal("page /teardowns 1", first.Body);
        Assert.Equal(first.Body, second.Body);
        Assert.Equal(first.Headers.ETag.ToString(), second.Headers.ETag.ToString());
        Assert.Equal("text/html; charset=utf-8", second.Headers.ContentType.ToString());
        Assert.Equal("public, max-age=0, must-revalidate", second.Headers.CacheControl.ToString());
        Assert.Equal(second.Body.Length, second.Headers.ContentLength);
    }

    [Fact]
    public async Task Get_AfterTheSiteChanged_RendersAnewAtOnce()
    {
        var before = await AskAsync("/");
        _version = _ => Task.FromResult(2L);
        var after = await AskAsync("/");
        Assert.Equal(2, _rendered.Count);
        Assert.NotEqual(before.Headers.ETag.ToString(), after.Headers.ETag.ToString());
        Assert.Equal("page / 2", after.Body);
    }

    [Fact]
    public async Task Get_TheSameContentAtANewVersion_KeepsItsTag()
    {
        _render = context => Page(context, "the same");
        var before = await AskAsync("/");
        _version = _ => Task.FromResult(2L);
        Assert.Equal(before.Headers.ETag.ToString(), (await AskAsync("/")).Headers.ETag.ToString());
    }

    [Theory]
    [InlineData("{0}")]
    [InlineData("W/{0}")]
    [InlineData("\"another\", {0}")]
    [InlineData("\"another\",W/{0} , \"third\"")]
    [InlineData("*")]
    public async Task Get_WithAKnownTag_Answers304WithoutBody(string known)
    {
        var tag = (await AskAsync("/")).Headers.ETag.ToString();
        var answer = await AskAsync("/", request => request.Headers.IfNoneMatch = string.Format(CultureInfo.InvariantCulture, known, tag));
        Assert.Equal(StatusCodes.Status304NotModified, answer.Status);
        Assert.Equal("", answer.Body);
        Assert.Equal(tag, answer.Headers.ETag.ToString());
        Assert.Equal("public, max-age=0, must-revalidate", answer.Headers.CacheControl.ToString());
    }

    [Theory]
    [InlineData("\"another\"")]
    [InlineData("no tag at all")]
    public async Task Get_WithAnUnknownTag_AnswersThePage(string known)
    {
        await AskAsync("/");
        var answer = await AskAsync("/", request => request.Headers.IfNoneMatch = known);
        Assert.Equal(StatusCodes.Status200OK, answer.Status);
        Assert.NotEqual("", answer.Body);
    }

    [Fact]
    public async Task Get_WithAKnownTagWhileNothingIsKept_Answers304()
    {
        _render = context => Page(context, "the same");
        var tag = (await AskAsync("/")).Headers.ETag.ToString();
        using var other = new PageStore();
        var answer = await AskAsync("/", request => request.Headers.IfNoneMatch = tag, store: other);
        Assert.Equal(StatusCodes.Status304NotModified, answer.Status);
    }

    [Fact]
    public async Task Head_BeforeAnyGet_HasTheHeadersOfTheGetAndNoBody()
    {
        var head = await AskAsync("/", request => request.Method = HttpMethods.Head);
        var get = await AskAsync("/");
        Assert.Equal("", head.Body);
        Assert.Equal(get.Headers.ETag.ToString(), head.Headers.ETag.ToString());
        Assert.Equal(get.Body.Length, head.Headers.ContentLength);
        Assert.Equal(["GET /"], _rendered);
    }

    [Fact]
    public async Task Post_AnyAddress_GoesThroughUntouched()
    {
        await AskAsync("/", request => request.Method = HttpMethods.Post);
        var second = await AskAsync("/", request => request.Method = HttpMethods.Post);
        Assert.Equal(["POST /", "POST /"], _rendered);
        Assert.True(string.IsNullOrEmpty(second.Headers.ETag));
    }

    [Fact]
    public async Task Get_MissingPage_Keeps404AndIsNotKept()
    {
        _render = context =>
        {
            context.Response.StatusCode = StatusCodes.Status404NotFound;
            return Page(context, "no such page");
        };
        var first = await AskAsync("/nope");
        var second = await AskAsync("/nope", request => request.Headers.IfNoneMatch = "*");
        Assert.Equal((StatusCodes.Status404NotFound, "no such page"), (first.Status, first.Body));
        Assert.Equal(StatusCodes.Status404NotFound, second.Status);
        Assert.Equal(2, _rendered.Count);
    }

    [Fact]
    public async Task Get_MovedPage_IsKeptWithItsGoal()
    {
        _render = context =>
        {
            context.Response.Redirect("/families/new", permanent: true);
            return Page(context, "moved");
        };
        await AskAsync("/families/old");
        var second = await AskAsync("/families/old");
        Assert.Equal(StatusCodes.Status301MovedPermanently, second.Status);
        Assert.Equal("/families/new", second.Headers.Location.ToString());
        Assert.Single(_rendered);
    }

    [Fact]
    public async Task Get_PageThatSetsACookie_SendsNone()
    {
        _render = context =>
        {
            context.Response.Cookies.Append("someone", "else");
            return Page(context, "page");
        };
        Assert.True(string.IsNullOrEmpty((await AskAsync("/")).Headers.SetCookie));
        Assert.True(string.IsNullOrEmpty((await AskAsync("/")).Headers.SetCookie));
    }

    [Fact]
    public async Task Get_WhatIsNoPage_GoesThroughAsItIs()
    {
        _render = async context =>
        {
            context.Response.ContentType = "text/css";
            context.Response.Headers.CacheControl = "max-age=31536000, immutable";
            context.Response.Headers.ContentEncoding = "br";
            await context.Response.WriteAsync("packed");
        };
        await AskAsync("/sheet");
        var second = await AskAsync("/sheet");
        Assert.Equal(2, _rendered.Count);
        Assert.Equal("packed", second.Body);
        Assert.Equal("max-age=31536000, immutable", second.Headers.CacheControl.ToString());
        Assert.True(string.IsNullOrEmpty(second.Headers.ETag));
    }

    [Fact]
    public async Task Get_ParametersThatNoPageKnows_AreTheSamePage()
    {
        var first = await AskAsync("/teardowns?search=tor&utm=1&category=charger");
        var second = await AskAsync("/teardowns?category=charger&x=%00&search=tor&after=");
        Assert.Single(_rendered);
        Assert.Equal(first.Body, second.Body);
        Assert.Equal("page /teardowns?category=charger&search=tor 1", first.Body);
    }

    [Theory]
    [InlineData("/search?q=one", "/search?q=two")]
    [InlineData("/teardowns", "/teardowns?after=abc")]
    [InlineData("/ask/designs-using-family?family=a", "/ask/designs-using-family?family=b")]
    [InlineData("/teardowns?search=a%26category%3Dcharger", "/teardowns?search=a&category=charger")]
    [InlineData("/teardowns/a%2Fb", "/teardowns/a/b")]
    public async Task Get_PagesThatDiffer_AreKeptApart(string one, string other)
    {
        Assert.NotEqual((await AskAsync(one)).Body, (await AskAsync(other)).Body);
        Assert.Equal(2, _rendered.Count);
    }

    [Fact]
    public async Task Get_UnderAnotherHost_IsRenderedForIt()
    {
        await AskAsync("/");
        await AskAsync("/", request => request.Host = new HostString("other.example"));
        Assert.Equal(2, _rendered.Count);
    }

    [Fact]
    public async Task Get_WhileTheDatabaseIsAway_AnswersAsLastRenderedForTenMinutesAndMore()
    {
        var page = await AskAsync("/");
        _version = _ => throw new NpgsqlException("refused");
        _clock.Now += TimeSpan.FromMinutes(11);
        var answer = await AskAsync("/");
        Assert.Equal((StatusCodes.Status200OK, page.Body), (answer.Status, answer.Body));
        Assert.Equal(page.Headers.ETag.ToString(), answer.Headers.ETag.ToString());
        Assert.Single(_rendered);
    }

    [Fact]
    public async Task Get_PageOfAnEarlierVersionWhileTheDatabaseIsAway_AnswersIt()
    {
        await AskAsync("/");
        _version = _ => Task.FromResult(2L);
        await AskAsync("/about");
        _version = _ => throw new InvalidOperationException("transient", new NpgsqlException("refused"));
        Assert.Equal("page / 1", (await AskAsync("/")).Body);
    }

    [Fact]
    public async Task Get_UnseenPageWhileTheDatabaseIsAway_Answers503AndSaysWhat()
    {
        _version = _ => throw new NpgsqlException("refused");
        var answer = await AskAsync("/makers");
        Assert.Equal(StatusCodes.Status503ServiceUnavailable, answer.Status);
        Assert.Equal("10", answer.Headers.RetryAfter.ToString());
        Assert.Equal("no-store", answer.Headers.CacheControl.ToString());
        Assert.Contains("database does not answer", answer.Body, StringComparison.Ordinal);
        Assert.Empty(_rendered);
    }

    [Fact]
    public async Task Get_DatabaseLostWhileRendering_FallsBackToTheLastCopy()
    {
        await AskAsync("/");
        _version = _ => Task.FromResult(2L);
        _render = _ => throw new NpgsqlException("broken off");
        Assert.Equal((StatusCodes.Status200OK, "page / 1"), await AskAsync("/") is var kept ? (kept.Status, kept.Body) : default);
        Assert.Equal(StatusCodes.Status503ServiceUnavailable, (await AskAsync("/makers")).Status);
    }

    [Fact]
    public async Task Get_DatabaseThatNeverAnswers_IsGivenUpAfterTheTimeout()
    {
        await AskAsync("/");
        _version = async cancelled =>
        {
            await Task.Delay(Timeout.InfiniteTimeSpan, cancelled);
            return 0;
        };
        var asked = AskAsync("/");
        Assert.False(asked.IsCompleted);
        _clock.FireTimers();
        Assert.Equal("page / 1", (await asked).Body);
    }

    [Fact]
    public async Task Get_FaultThatIsNotTheDatabases_IsNotHidden()
    {
        await AskAsync("/");
        _version = _ => Task.FromResult(2L);
        _render = _ => throw new InvalidOperationException("a fault of the page");
        await Assert.ThrowsAsync<InvalidOperationException>(() => AskAsync("/"));
    }

    [Fact]
    public async Task Get_ManyAtOnce_RendersOnce()
    {
        var gate = new TaskCompletionSource();
        _render = async context =>
        {
            await gate.Task;
            await Page(context, "page");
        };
        var asked = Enumerable.Range(0, 8).Select(_ => AskAsync("/")).ToList();
        gate.SetResult();
        var answers = await Task.WhenAll(asked);
        Assert.All(answers, answer => Assert.Equal("page", answer.Body));
        Assert.Single(_rendered);
    }

    [Fact]
    public async Task Get_MoreThanFits_StaysWithinTheLimitAndAnswersAll()
    {
        using var small = new PageStore(64 * 1024);
        _render = context => Page(context, new string('x', 10_000));
        for (var i = 0; i < 50; i++)
            Assert.Equal(10_000, (await AskAsync(FormattableString.Invariant($"/search?q={i}"), store: small)).Body.Length);
        var kept = Enumerable.Range(0, 50).Count(i => small.Find(FormattableString.Invariant($"https://bench.example/search?q={i}")) is not null);
        Assert.InRange(kept, 1, 6);
    }

    private async Task<Sent> AskAsync(string address, Action<HttpRequest>? change = null, PageStore? store = null)
    {
        var context = new DefaultHttpContext();
        var starting = new StartableResponse();
        context.Features.Set<IHttpResponseFeature>(starting);
        using var body = new MemoryStream();
        context.Features.Set<IHttpResponseBodyFeature>(new StreamResponseBodyFeature(body));
        var uri = new Uri("https://bench.example" + address);
        context.Request.Method = HttpMethods.Get;
        context.Request.Scheme = "https";
        context.Request.Host = new HostString(uri.Host);
        context.Request.Path = PathString.FromUriComponent(uri);
        context.Request.QueryString = QueryString.FromUriComponent(uri);
        change?.Invoke(context.Request);
        var cache = new PublicPageCache(
            inner =>
            {
                lock (_rendered)
                    _rendered.Add($"{inner.Request.Method} {inner.Request.Path}");
                return _render(inner);
            },
            store ?? _store,
            cancelled => _version(cancelled),
            _clock,
            NullLogger<PublicPageCache>.Instance);
        if (store is null)
            cache = _shared ??= cache;
        await cache.InvokeAsync(context);
        await starting.StartAsync();
        return new Sent(context.Response.StatusCode, context.Response.Headers, Encoding.UTF8.GetString(body.ToArray()));
    }

    private PublicPageCache? _shared;

    private static async Task Page(HttpContext context, string text)
    {
        context.Response.ContentType = "text/html; charset=utf-8";
        await context.Response.WriteAsync(text);
    }

    private sealed record Sent(int Status, IHeaderDictionary Headers, string Body);

    // The plain feature never starts, so what is to happen at the start would not happen.
    private sealed class StartableResponse : HttpResponseFeature
    {
        private readonly Stack<(Func<object, Task> Callback, object State)> _starting = [];

        public override void OnStarting(Func<object, Task> callback, object state) => _starting.Push((callback, state));

        public async Task StartAsync()
        {
            while (_starting.TryPop(out var next))
                await next.Callback(next.State);
        }
    }

    private sealed class MovableClock : TimeProvider
    {
        private readonly List<Action> _timers = [];

        public DateTimeOffset Now { get; set; } = new(2026, 5, 4, 12, 0, 0, TimeSpan.Zero);

        public override DateTimeOffset GetUtcNow() => Now;

        public override ITimer CreateTimer(TimerCallback callback, object? state, TimeSpan dueTime, TimeSpan period)
        {
            _timers.Add(() => callback(state));
            return new Stopped();
        }

        public void FireTimers() => _timers[^1]();

        private sealed class Stopped : ITimer
        {
            public bool Change(TimeSpan dueTime, TimeSpan period) => true;

            public void Dispose()
            {
            }

            public ValueTask DisposeAsync() => ValueTask.CompletedTask;
        }
    }
}
