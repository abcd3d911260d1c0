using Catalogue.Data.Publishing;
using Catalogue.Data.Teardowns;
using Catalogue.Site.Layout;
using Microsoft.AspNetCore.Components;
using Microsoft.AspNetCore.Http;

namespace Catalogue.Site.Teardowns;

public sealed partial class RevisionPage(TeardownRecordQuery teardowns, SiteSettings settings, NavigationManager navigation)
{
    private TeardownRecord? _record;
    private LabSettings? _settings;

    [Parameter]
    public string Slug { get; set; } = "";

    [Parameter]
    public int Number { get; set; }

    [CascadingParameter]
    public HttpContext? HttpContext { get; set; }

    private string SiteAddress => (_settings?.PublicBaseAddress ?? navigation.BaseUri).TrimEnd('/');

    protected override async Task OnInitializedAsync()
    {
        var cancelled = HttpContext?.RequestAborted ?? CancellationToken.None;
        _settings = await settings.ReadAsync();
        _record = await teardowns.RevisionAsync(Slug, Number, cancelled);
        // Nothing has been sent yet: public pages do not stream.
        if (_record is null && HttpContext is { } context)
            context.MarkMissing();
    }
}
