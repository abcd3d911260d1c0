using System.Globalization;
using Catalogue.Data;
using Catalogue.Data.Conversions;
using Catalogue.Domain.Publishing;
using Catalogue.Lab;
using Catalogue.Media.Imports;
using Catalogue.Media.Photos;
using Catalogue.Site;
using Catalogue.Web.Accounts;
using Catalogue.Web.Api;
using Catalogue.Web.Imports;
using Microsoft.AspNetCore.DataProtection;
using Microsoft.AspNetCore.HttpOverrides;
using Npgsql;
using Serilog;
using Serilog.Events;

namespace Catalogue.Web.Hosting;

/// <summary>Builds the site: what it is made of, and the order requests pass through it.</summary>
public static class CatalogueHost
{
    /// <summary>Builds it over a database that is running; nothing is started yet.</summary>
    public static WebApplication Build(ServeOptions options, NpgsqlDataSource source)
    {
        ArgumentNullException.ThrowIfNull(options);
        var builder = WebApplication.CreateBuilder(new WebApplicationOptions { ContentRootPath = AppContext.BaseDirectory, ApplicationName = "catalogue" });
        builder.WebHost.UseStaticWebAssets();
        builder.WebHost.ConfigureKestrel(kestrel =>
        {
            kestrel.AddServerHeader = false;
            kestrel.Limits.MaxRequestBodySize = 2 * 1024 * 1024;
            if (options.ListensOnAllNetworks)
                kestrel.ListenAnyIP(options.Port);
            else if (options.Port == 0)
                kestrel.Listen(System.Net.IPAddress.Loopback, 0);
            else
                kestrel.ListenLocalhost(options.Port);
        });
        builder.Host.UseSerilog((_, log) => log
            .MinimumLevel.Information()
            .MinimumLevel.Override("Microsoft", LogEventLevel.Warning)
            // A failed command is told by whoever ran it; the very first look for migrations always fails.
            .MinimumLevel.Override("Microsoft.EntityFrameworkCore.Database.Command", LogEventLevel.Fatal)
            // It warns wherever a page with a form is not to be cached, which is what those pages ask for.
            .MinimumLevel.Override("Microsoft.AspNetCore.Antiforgery", LogEventLevel.Error)
            // Keys lie in the database beside everything they protect; the data folder's mode is what guards both.
            .MinimumLevel.Override("Microsoft.AspNetCore.DataProtection", LogEventLevel.Error)
            // Strangers with wrong tokens are told so; they need no line each.
            .MinimumLevel.Override("Catalogue.Web.Accounts.TokenAuthentication", LogEventLevel.Warning)
            .WriteTo.Console(formatProvider: CultureInfo.InvariantCulture, standardErrorFromLevel: LogEventLevel.Verbose));
        builder.Services.Configure<HostOptions>(host => host.ShutdownTimeout = TimeSpan.FromSeconds(20));

        AddParts(builder.Services, options, source);
        var app = builder.Build();
        app.UseForwardedHeaders();
        app.UseMiddleware<SecurityHeaders>();
        app.UseMiddleware<CleanQuery>();
        app.UseWhen(context => IsApi(context.Request.Path), api => api.UseMiddleware<ProblemMiddleware>());
        app.UseWhen(context => !IsApi(context.Request.Path), pages => pages.UseMiddleware<FaultPages>());
        app.UseWhen(context => IsPublicPage(context.Request.Path) || context.Request.Path.StartsWithSegments(ApiEndpoints.Prefix), compressed => compressed.UseResponseCompression());
        app.UseWhen(context => IsPublicPage(context.Request.Path), pages => pages.UsePublicPageCache());
        app.UseRouting();
        app.UseMiddleware<PathsWithoutEndpoint>();
        app.UseAuthentication();
        app.UseMiddleware<TokenMustBeValid>();
        app.UseRateLimiter();
        app.UseAuthorization();
        app.UseAntiforgery();
        app.MapHealth();
        app.MapMedia();
        app.MapApi();
        app.MapLabUploads();
        app.MapSignIn();
        app.MapStaticAssets().AllowAnonymous();
        app.MapCatalogueSite().AllowAnonymous();
        app.MapCatalogueLab();
        return app;
    }

    /// <summary>True for addresses whose every failure is a problem document.</summary>
    internal static bool IsApi(PathString path) =>
        path.StartsWithSegments("/api") || path.StartsWithSegments("/health") || path.StartsWithSegments("/media") || path.StartsWithSegments("/lab/upload") || path.StartsWithSegments("/lab/import");

    // Whatever is no file and belongs to none of the signed-in or machine-read zones.
    private static bool IsPublicPage(PathString path) =>
        !IsApi(path)
        && !path.StartsWithSegments(Addresses.Lab) && !path.StartsWithSegments("/account") && !path.StartsWithSegments("/admin") && !path.StartsWithSegments(Addresses.SignIn)
        && !path.StartsWithSegments("/_blazor") && !path.StartsWithSegments("/_framework") && !path.StartsWithSegments("/_content")
        && !Path.HasExtension(path.Value);

    private static void AddParts(IServiceCollection services, ServeOptions options, NpgsqlDataSource source)
    {
        services.AddSingleton(source);
        services.AddCatalogueData();
        services.AddCatalogueMedia(options.DataFolder);
        services.AddSingleton<RenditionMaker>();
        services.AddSingleton<StagedFiles>();
        services.AddSingleton<IImportWorker, TeardownArchiveImport>();
        services.AddSingleton<ImportRunner>();
        services.AddSingleton<PhotosImport>();
        services.AddSingleton<IImportWorker>(provider => provider.GetRequiredService<PhotosImport>());
        services.AddSingleton<IImportWorker, ArticleImport>();
        services.AddHostedService<QueueWorker>();
        services.AddSingleton<Planting>();

        services.AddDataProtection().SetApplicationName("catalogue").PersistKeysToDbContext<CatalogueContext>();
        services.AddCatalogueSignIn();
        services.AddCatalogueSite();
        services.AddCatalogueLab();
        services.AddProblemDetails();
        // Pages that carry no secret only: what a signed-in person sees is never compressed beside what a stranger can put into it.
        services.AddResponseCompression(compression =>
        {
            compression.EnableForHttps = true;
            compression.MimeTypes = ["text/html", "application/json", "text/csv"];
        });
        services.AddAntiforgery(antiforgery =>
        {
            antiforgery.HeaderName = "RequestVerificationToken";
            // Uploads are streamed; their form must not be read to look for a token.
            antiforgery.SuppressReadingTokenFromFormBody = false;
            antiforgery.Cookie.Name = "catalogue-antiforgery";
        });
        services.ConfigureHttpJsonOptions(json =>
        {
            StoredJson.Configure(json.SerializerOptions);
            json.SerializerOptions.PropertyNameCaseInsensitive = false;
            json.SerializerOptions.RespectNullableAnnotations = true;
            json.SerializerOptions.UnmappedMemberHandling = System.Text.Json.Serialization.JsonUnmappedMemberHandling.Disallow;
        });
        services.Configure<RouteHandlerOptions>(routes => routes.ThrowOnBadRequest = true);
        services.Configure<ForwardedHeadersOptions>(forwarded => forwarded.ForwardedHeaders = ForwardedHeaders.XForwardedFor | ForwardedHeaders.XForwardedProto);
        services.AddCatalogueRateLimits();
        services.AddCatalogueOpenApi();
    }
}
