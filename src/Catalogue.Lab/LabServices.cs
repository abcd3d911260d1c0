using Catalogue.Lab.Accounts;
using Microsoft.Extensions.DependencyInjection;
using MudBlazor;
using MudBlazor.Services;

namespace Catalogue.Lab;

/// <summary>Registers what the signed-in pages need beyond queries and changes.</summary>
public static class LabServices
{
    /// <summary>Adds Razor components with circuits, MudBlazor and the current editor.</summary>
    public static IServiceCollection AddCatalogueLab(this IServiceCollection services)
    {
        services.AddRazorComponents().AddInteractiveServerComponents();
        services.AddMudServices(options =>
        {
            options.SnackbarConfiguration.PositionClass = Defaults.Classes.Position.BottomLeft;
            options.SnackbarConfiguration.SnackbarVariant = Variant.Outlined;
            options.SnackbarConfiguration.ShowTransitionDuration = 0;
            options.SnackbarConfiguration.HideTransitionDuration = 0;
            options.SnackbarConfiguration.PreventDuplicates = false;
        });
        services.AddScoped<CurrentEditor>();
        return services;
    }
}
