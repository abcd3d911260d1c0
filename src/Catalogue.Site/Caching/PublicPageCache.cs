using System.Buffers.Text;
using System.Data.Common;
using System.Security.Cryptography;
using System.Text;
using Catalogue.Site.Layout;
using Microsoft.AspNetCore.Components.Endpoints;
using Microsoft.AspNetCore.Http;
using Microsoft.Extensions.Logging;
using Microsoft.Net.Http.Headers;

namespace Catalogue.Site.Caching;

/// <summary>
/// Renders each public page once for each version of the site and answers from memory after that. The version is read for every request, so that
/// what was published is seen at once; while it cannot be read, pages are answered as they were last rendered. Public pages vary on their address
/// alone: no cookie leaves here.
/// </summary>
/// <param name="next">Renders.</param>
/// <param name="pages">Keeps.</param>
/// <param name="readVersion">Reads the site's version.</param>
/// <param name="time">The clock.</param>
/// <param name="log">The log.</param>
public sealed class PublicPageCache(RequestDelegate next, PageStore pages, ReadSiteVersion readVersion, TimeProvider time, ILogger<PublicPageCache> log)
{
    /// <summary>How long the version may take to read before the database counts as out of reach.</summary>
    public static readonly TimeSpan VersionTimeout = TimeSpan.FromSeconds(2);

    /// <summary>How old a page may be to stand in while the database is out of reach.</summary>
    public static readonly TimeSpan MaxStaleAge = TimeSpan.FromDays(1);

    private const string CacheControl = "public, max-age=0, must-revalidate";
    private const string PageType = "text/html";
    private const string RetryAfterSeconds = "10";

    // One page is rendered by one request at a time; the others wait for its copy. Two pages that share a gate only wait for each other.
    private readonly SemaphoreSlim[] _gates = [.. Enumerable.Range(0, 64).Select(_ => new SemaphoreSlim(1, 1))];

    private int _isAway;

    /// <summary>Answers one request.</summary>
    public async Task InvokeAsync(HttpContext context)
    {
        ArgumentNullException.ThrowIfNull(context);
        var request = context.Request;
        if ((!HttpMethods.IsGet(request.Method) && !HttpMethods.IsHead(request.Method)) || !IsPublic(context.GetEndpoint()))
        {
            await next(context);
            return;
        }

        var query = PageKey.Normalise(request.Query);
        var key = PageKey.Of(request, query);
        request.QueryString = query;
        if (await VersionAsync(context) is not { } version)
        {
            await WriteStaleAsync(context, key);
            return;
        }

        if (key is null)
        {
            await WriteAsync(context, await RenderOrExplainAsync(context, version, null));
            return;
        }

        if (pages.Find(key) is { } kept && kept.SiteVersion == version)
        {
            await WriteAsync(context, kept);
            return;
        }

        var gate = _gates[(uint)StringComparer.Ordinal.GetHashCode(key) % (uint)_gates.Length];
        await gate.WaitAsync(context.RequestAborted);
        CachedPage? page;
        try
        {
            // Whoever waited may find that the one before has rendered it, even at a later version than its own.
            page = pages.Find(key) is { } made && made.SiteVersion >= version ? made : await RenderOrExplainAsync(context, version, key);
        }
        finally
        {
            gate.Release();
        }

        await WriteAsync(context, page);
    }

    // A page of this project, or an address that has not been routed yet or leads nowhere, for which a page says so.
    private static bool IsPublic(Endpoint? endpoint) => endpoint is null || endpoint.Metadata.GetMetadata<RootComponentMetadata>()?.Type == typeof(SiteRoot);

    private async Task<long?> VersionAsync(HttpContext context)
    {
        using var timeout = new CancellationTokenSource(VersionTimeout, time);
        using var either = CancellationTokenSource.CreateLinkedTokenSource(context.RequestAborted, timeout.Token);
        try
        {
            var version = await readVersion(either.Token).WaitAsync(either.Token);
            if (Interlocked.Exchange(ref _isAway, 0) == 1)
                log.LogInformation("The site's version can be read again.");
            return version;
        }
        catch (OperationCanceledException) when (timeout.IsCancellationRequested && !context.RequestAborted.IsCancellationRequested)
        {
            SayAway(FormattableString.Invariant($"no answer within {VersionTimeout.TotalSeconds:0} s"));
            return null;
        }
        catch (Exception exception) when (IsOfDatabase(exception))
        {
            SayAway((exception.InnerException ?? exception).Message);
            return null;
        }
    }

    // Once for each time that it goes away, not for every request of a reader.
    private void SayAway(string reason)
    {
        if (Interlocked.Exchange(ref _isAway, 1) == 0)
            log.LogWarning("The site's version could not be read ({Reason}); pages are answered as last rendered.", reason);
    }

    // Null when the answer has been written already: the database went away meanwhile, or what came is no page.
    private async Task<CachedPage?> RenderOrExplainAsync(HttpContext context, long version, string? key)
    {
        try
        {
            if (await RenderAsync(context, version) is not { } page)
                return null;
            // Pages that do not exist are beyond number and are made anew each time.
            if (key is not null && (page.StatusCode is StatusCodes.Status200OK or StatusCodes.Status301MovedPermanently))
                pages.Keep(key, page, context.Request.QueryString.HasValue);
            return page;
        }
        catch (Exception exception) when (IsOfDatabase(exception) && !context.Response.HasStarted)
        {
            log.LogError(exception, "The database did not answer while {Path} was rendered.", context.Request.Path);
            await WriteStaleAsync(context, key);
            return null;
        }
    }

    private async Task<CachedPage?> RenderAsync(HttpContext context, long version)
    {
        var method = context.Request.Method;
        var response = context.Response;
        var sent = response.Body;
        using var body = new MemoryStream();
        try
        {
            // The body is made for HEAD as well: its length and its tag are part of the answer.
            context.Request.Method = HttpMethods.Get;
            response.Body = body;
            response.OnStarting(RemoveCookies, response);
            await next(context);
        }
        finally
        {
            context.Request.Method = method;
            response.Body = sent;
        }

        if (response.ContentType?.StartsWith(PageType, StringComparison.OrdinalIgnoreCase) != true)
        {
            body.Position = 0;
            await body.CopyToAsync(sent, context.RequestAborted);
            return null;
        }

        var bytes = body.ToArray();
        return new CachedPage(version, time.GetUtcNow(), context.ComingStatus(), response.ContentType, response.Headers.Location.ToString() is { Length: > 0 } location ? location : null, Tag(bytes), bytes);
    }

    private async Task WriteStaleAsync(HttpContext context, string? key)
    {
        context.ForgetComingStatus();
        if (key is not null && pages.Find(key) is { } page && time.GetUtcNow() - page.RenderedAt <= MaxStaleAge)
        {
            await WriteAsync(context, page);
            return;
        }

        var body = Encoding.UTF8.GetBytes(UnavailablePage.Html);
        context.Response.Headers.Location = default;
        context.Response.Headers.RetryAfter = RetryAfterSeconds;
        await SendAsync(context, StatusCodes.Status503ServiceUnavailable, PageType + "; charset=utf-8", "no-store", body);
    }

    private static async Task WriteAsync(HttpContext context, CachedPage? page)
    {
        if (page is null)
            return;
        var headers = context.Response.Headers;
        if (page.Location is not null)
            headers.Location = page.Location;
        if (page.StatusCode is StatusCodes.Status200OK)
        {
            headers.ETag = page.EntityTag;
            if (IsKnown(context.Request, page.EntityTag))
            {
                headers.CacheControl = CacheControl;
                headers.ContentType = default;
                context.Response.StatusCode = StatusCodes.Status304NotModified;
                return;
            }
        }

        await SendAsync(context, page.StatusCode, page.ContentType, CacheControl, page.Body);
    }

    private static async Task SendAsync(HttpContext context, int status, string? contentType, string cacheControl, ReadOnlyMemory<byte> body)
    {
        var response = context.Response;
        response.StatusCode = status;
        response.Headers.CacheControl = cacheControl;
        response.ContentType = contentType;
        response.ContentLength = body.Length;
        if (!HttpMethods.IsHead(context.Request.Method))
            await response.Body.WriteAsync(body, context.RequestAborted);
    }

    private static bool IsKnown(HttpRequest request, string tag)
    {
        var own = new EntityTagHeaderValue(tag);
        return request.GetTypedHeaders().IfNoneMatch.Any(known => known.Equals(EntityTagHeaderValue.Any) || known.Compare(own, useStrongComparison: false));
    }

    private static string Tag(byte[] body) => $"\"{Base64Url.EncodeToString(SHA256.HashData(body).AsSpan(0, 18))}\"";

    private static Task RemoveCookies(object response)
    {
        ((HttpResponse)response).Headers.SetCookie = default;
        return Task.CompletedTask;
    }

    // The mapper wraps what the driver throws.
    private static bool IsOfDatabase(Exception? exception) => exception is DbException { IsTransient: true } or DbException { SqlState: null } or TimeoutException || exception?.InnerException is { } inner && IsOfDatabase(inner);
}
