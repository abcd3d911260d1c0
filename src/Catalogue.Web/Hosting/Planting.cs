namespace Catalogue.Web.Hosting;

/// <summary>Says whether the demo is being planted, so that the site does not call itself ready before it stands.</summary>
internal sealed class Planting
{
    private volatile bool _isUnderWay;

    /// <summary>True from the first planted record to the last.</summary>
    public bool IsUnderWay
    {
        get => _isUnderWay;
        set => _isUnderWay = value;
    }
}
