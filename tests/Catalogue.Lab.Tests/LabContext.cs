using Bunit;
using MudBlazor.Services;

namespace Catalogue.Lab.Tests;

/// <summary>A place to render components of the lab in; MudBlazor's parts are only disposed of asynchronously.</summary>
public abstract class LabContext : BunitContext, IAsyncLifetime
{
    protected LabContext()
    {
        JSInterop.Mode = JSRuntimeMode.Loose;
        Services.AddMudServices();
    }

    public ValueTask InitializeAsync() => ValueTask.CompletedTask;
}
