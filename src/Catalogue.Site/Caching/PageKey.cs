using System.Text;
using Catalogue.Domain.Questions;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Http.Extensions;

namespace Catalogue.Site.Caching;

/// <summary>What tells one public page from another: host, path, and those parameters that pages know, in one order.</summary>
internal static class PageKey
{
    // Longer values are no search that anybody typed; pages cut them too.
    private const int MaxKeyLength = 2048;

    private static readonly string[] Parameters =
        [.. new[] { "after", "category", "q", "search" }.Concat(ReadyQuestions.All.SelectMany(question => question.Parameters).Select(parameter => parameter.Name)).Distinct().Order(StringComparer.Ordinal)];

    /// <summary>
    /// The query with nothing in it but what pages know. It is put in place of the one that was sent, so that no page can depend on what the key
    /// leaves out.
    /// </summary>
    public static QueryString Normalise(IQueryCollection query)
    {
        var builder = new QueryBuilder();
        foreach (var name in Parameters)
        {
            // The last one counts, as a page would read a repeated field of a form.
            if (query.TryGetValue(name, out var values) && values.LastOrDefault(value => !string.IsNullOrEmpty(value)) is { } value)
                builder.Add(name, value);
        }

        return builder.ToQueryString();
    }

    /// <summary>The key, or null when the address is too long to be kept.</summary>
    public static string? Of(HttpRequest request, QueryString query)
    {
        var key = new StringBuilder()
            .Append(request.Scheme).Append("://").Append(request.Host.Value).Append(request.PathBase.ToUriComponent()).Append(request.Path.ToUriComponent()).Append(query.Value)
            .ToString();
        return key.Length <= MaxKeyLength ? key : null;
    }
}
