using Catalogue.Domain.Text;
using Microsoft.AspNetCore.Http.Extensions;

namespace Catalogue.Web.Hosting;

/// <summary>
/// Takes out of every query what no text may hold (NUL, other control characters), before anything reads it. A parameter of which nothing is
/// left stays, empty.
/// </summary>
/// <param name="next">The rest of the pipeline.</param>
internal sealed class CleanQuery(RequestDelegate next)
{
    public Task InvokeAsync(HttpContext context)
    {
        var request = context.Request;
        if (request.QueryString.HasValue && request.Query.Any(pair => IsUnclean(pair.Key) || pair.Value.Any(IsUnclean)))
        {
            request.QueryString = new QueryBuilder(request.Query.SelectMany(pair => pair.Value.Select(value => KeyValuePair.Create(PlainText.Clean(pair.Key) ?? "", PlainText.Clean(value) ?? "")))).ToQueryString();
        }

        return next(context);
    }

    private static bool IsUnclean(string? text) => text is not null && text.Any(char.IsControl);
}
