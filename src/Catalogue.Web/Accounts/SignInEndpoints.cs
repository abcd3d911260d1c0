using Catalogue.Data.Accounts;
using Catalogue.Data.Publishing;
using Catalogue.Domain.Publishing;
using Microsoft.AspNetCore.Antiforgery;
using Microsoft.AspNetCore.Http.HttpResults;
using Microsoft.AspNetCore.Identity;
using Microsoft.AspNetCore.Mvc;

namespace Catalogue.Web.Accounts;

/// <summary>Signing in and out: static pages and plain forms, so that cookies are set before anything is sent.</summary>
internal static class SignInEndpoints
{
    public static void MapSignIn(this IEndpointRouteBuilder app)
    {
        var pages = app.MapGroup("").AllowAnonymous().ExcludeFromDescription();
        pages.MapGet(Addresses.SignIn, ShowAsync);
        pages.MapPost(Addresses.SignIn, SignInAsync).RequireRateLimiting(RateLimits.SignIn);
        pages.MapGet(SignInAddresses.OneTimePage, ShowOneTimeAsync).RequireRateLimiting(RateLimits.SignIn);
        pages.MapPost(SignInAddresses.OneTimePage, UseOneTimeAsync).RequireRateLimiting(RateLimits.SignIn);
        pages.MapGet("/account/denied", DeniedAsync);
        app.MapPost(Addresses.SignOut, SignOutAsync).RequireAuthorization(Policies.Staff).ExcludeFromDescription();
    }

    private static async Task<RazorComponentResult> ShowAsync(HttpContext http, SettingsQuery settings, [FromQuery] string? then = null) =>
        await PageAsync<SignInPage>(http, settings, StatusCodes.Status200OK, new() { [nameof(SignInPage.Then)] = then });

    private static async Task<IResult> SignInAsync(
        HttpContext http, SettingsQuery settings, SignInManager<Account> manager, [FromForm] string? name, [FromForm] string? password, [FromForm] string? then)
    {
        var account = await manager.UserManager.FindByNameAsync((name ?? "").Trim());
        var result = account is null ? Microsoft.AspNetCore.Identity.SignInResult.Failed : await manager.CheckPasswordSignInAsync(account, password ?? "", lockoutOnFailure: true);
        if (result.Succeeded)
        {
            await manager.SignInAsync(account!);
            return TypedResults.LocalRedirect(SignInSetup.IsLocal(then) ? then! : Addresses.Lab);
        }

        var reason = result.IsLockedOut
            ? "Too many wrong passwords: this account is locked for ten minutes."
            : "Name and password do not belong together. An administrator can make a new one-time sign-in with the admin command.";
        return await PageAsync<SignInPage>(
            http, settings, StatusCodes.Status401Unauthorized, new() { [nameof(SignInPage.Then)] = then, [nameof(SignInPage.Name)] = name, [nameof(SignInPage.Reason)] = reason });
    }

    // Looking at the link does not use it up: mail scanners and previews look too.
    private static async Task<RazorComponentResult> ShowOneTimeAsync(HttpContext http, SettingsQuery settings, OneTimeSignIns signIns, UserManager<Account> accounts, [FromQuery] string? code = null)
    {
        var account = await AccountOfAsync(signIns, accounts, code);
        return await PageAsync<OneTimePage>(
            http,
            settings,
            account is null ? StatusCodes.Status404NotFound : StatusCodes.Status200OK,
            new() { [nameof(OneTimePage.Code)] = code, [nameof(OneTimePage.Name)] = account?.UserName });
    }

    private static async Task<IResult> UseOneTimeAsync(
        HttpContext http, SettingsQuery settings, OneTimeSignIns signIns, SignInManager<Account> manager, [FromForm] string? code, [FromForm] string? password, [FromForm] string? again)
    {
        if (await AccountOfAsync(signIns, manager.UserManager, code) is not { } account)
            return await PageAsync<OneTimePage>(http, settings, StatusCodes.Status404NotFound, []);
        async Task<IResult> RefuseAsync(string reason) => await PageAsync<OneTimePage>(
            http,
            settings,
            StatusCodes.Status422UnprocessableEntity,
            new() { [nameof(OneTimePage.Code)] = code, [nameof(OneTimePage.Name)] = account.UserName, [nameof(OneTimePage.Reason)] = reason });
        if (password != again)
            return await RefuseAsync("The two passwords differ.");
        foreach (var validator in manager.UserManager.PasswordValidators)
            if (await validator.ValidateAsync(manager.UserManager, account, password) is { Succeeded: false } weak)
                return await RefuseAsync(string.Join(" ", weak.Errors.Select(error => error.Description)));
        if (!await signIns.UseAsync(code!))
            return await PageAsync<OneTimePage>(http, settings, StatusCodes.Status404NotFound, []);
        var reset = await manager.UserManager.GeneratePasswordResetTokenAsync(account);
        var changed = await manager.UserManager.ResetPasswordAsync(account, reset, password!);
        if (!changed.Succeeded)
            return await RefuseAsync(string.Join(" ", changed.Errors.Select(error => error.Description)));
        await manager.UserManager.SetLockoutEndDateAsync(account, null);
        await manager.SignInAsync(account);
        return TypedResults.LocalRedirect(Addresses.Lab);
    }

    private static async Task<IResult> SignOutAsync(HttpContext http, SignInManager<Account> manager, IAntiforgery antiforgery)
    {
        if (!await antiforgery.IsRequestValidAsync(http))
            return TypedResults.LocalRedirect(Addresses.Lab);
        await manager.SignOutAsync();
        return TypedResults.LocalRedirect(Addresses.Home);
    }

    private static async Task<RazorComponentResult> DeniedAsync(HttpContext http, SettingsQuery settings) => await PageAsync<DeniedPage>(http, settings, StatusCodes.Status403Forbidden, []);

    private static async Task<Account?> AccountOfAsync(OneTimeSignIns signIns, UserManager<Account> accounts, string? code) =>
        code is { Length: > 0 and < 200 } && await signIns.PeekAsync(code) is { } id ? await accounts.FindByIdAsync(id.ToString()) : null;

    private static async Task<RazorComponentResult> PageAsync<TPage>(HttpContext http, SettingsQuery settings, int status, Dictionary<string, object?> parameters)
        where TPage : Microsoft.AspNetCore.Components.IComponent
    {
        http.Response.Headers.CacheControl = "no-store";
        parameters["LabName"] = (await settings.RunAsync(http.RequestAborted)).LabName;
        return new RazorComponentResult<TPage>(parameters) { StatusCode = status, PreventStreamingRendering = true };
    }
}
