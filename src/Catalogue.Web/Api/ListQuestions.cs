using Catalogue.Data.Teardowns;
using Catalogue.Domain.Products;
using Catalogue.Domain.Text;
using Microsoft.AspNetCore.Http.Extensions;

namespace Catalogue.Web.Api;

/// <summary>What all lists check and give alike.</summary>
internal static class ListQuestions
{
    /// <summary>Why a list cannot be given, or null.</summary>
    public static IResult? Refuse(string? category, string? after, int limit)
    {
        if (category is not null && SnakeCase.TryParse<ProductCategory>(category) is null)
            return ApiProblem.Of(StatusCodes.Status400BadRequest, $"category is one of {string.Join(", ", SnakeCase.All<ProductCategory>())}; it was “{category}”.", "category");
        if (after is not null && PageMark.TryParse(after) is null)
            return ApiProblem.Of(StatusCodes.Status400BadRequest, "after is the mark that the previous page's next address carries; this text is none.", "after");
        return limit is < 1 or > 200 ? ApiProblem.Of(StatusCodes.Status400BadRequest, $"limit is 1 to 200; it was {limit}.", "limit") : null;
    }

    /// <summary>The address of the next page, or null.</summary>
    public static string? Next(HttpRequest request, string? mark)
    {
        if (mark is null)
            return null;
        var query = new QueryBuilder(request.Query.Where(pair => pair.Key != "after").SelectMany(pair => pair.Value.Select(value => KeyValuePair.Create(pair.Key, value ?? ""))))
        {
            { "after", mark },
        };
        return request.Path + query.ToQueryString();
    }
}
