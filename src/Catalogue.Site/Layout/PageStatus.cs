using Microsoft.AspNetCore.Http;

namespace Catalogue.Site.Layout;

/// <summary>
/// Lets a page answer 404 in its own words. The framework drops the body of a page that sets that status while it is rendered; so it is set when
/// the answer starts.
/// </summary>
internal static class PageStatus
{
    private static readonly object Mark = new();

    /// <summary>What the page was asked for does not exist.</summary>
    public static void MarkMissing(this HttpContext context) => context.AnswerWith(StatusCodes.Status404NotFound);

    /// <summary>The page is to be sent with this status.</summary>
    public static void AnswerWith(this HttpContext context, int status)
    {
        if (!context.Items.ContainsKey(Mark))
            context.Response.OnStarting(Set, context);
        context.Items[Mark] = status;
    }

    /// <summary>The status that the page will be sent with.</summary>
    public static int ComingStatus(this HttpContext context) => context.Items.TryGetValue(Mark, out var status) && status is int known ? known : context.Response.StatusCode;

    /// <summary>Takes it back, for an answer that is not that page's.</summary>
    public static void ForgetComingStatus(this HttpContext context) => context.Items[Mark] = null;

    private static Task Set(object state)
    {
        var context = (HttpContext)state;
        context.Response.StatusCode = context.ComingStatus();
        return Task.CompletedTask;
    }
}
