using Catalogue.Web.Accounts;
using Microsoft.AspNetCore.Http.HttpResults;

namespace Catalogue.Web.Hosting;

/// <summary>Answers a page that failed with one that says so, and keeps the fault for the log.</summary>
/// <param name="next">The rest of the pipeline.</param>
/// <param name="log">The log.</param>
internal sealed class FaultPages(RequestDelegate next, ILogger<FaultPages> log)
{
    public async Task InvokeAsync(HttpContext context)
    {
        try
        {
            await next(context);
        }
        catch (BadHttpRequestException exception) when (!context.Response.HasStarted)
        {
            await WriteAsync(context, exception.StatusCode, "The form could not be read. It may have been open for too long: go back, reload the page and send it again.");
        }
        catch (OperationCanceledException) when (context.RequestAborted.IsCancellationRequested)
        {
            context.Abort();
        }
        catch (Exception exception) when (!context.Response.HasStarted)
        {
            log.LogError(exception, "{Method} {Path} failed.", context.Request.Method, context.Request.Path);
            await WriteAsync(context, StatusCodes.Status500InternalServerError, "Something went wrong on the server; its log says more. Nothing was changed by this request.");
        }
    }

    private static Task WriteAsync(HttpContext context, int status, string text)
    {
        context.Response.Clear();
        context.Response.Headers.CacheControl = "no-store";
        return new RazorComponentResult<FaultPage>(new { Text = text }) { StatusCode = status, PreventStreamingRendering = true }.ExecuteAsync(context);
    }
}
