namespace Catalogue.Web.Hosting;

/// <summary>Whether the demo teardowns are planted. They never go into a catalogue that has teardowns.</summary>
public enum DemoChoice
{
    /// <summary>Into an empty catalogue.</summary>
    IfEmpty,

    /// <summary>The same, and it is said when the catalogue is not empty.</summary>
    Asked,

    /// <summary>Never.</summary>
    Never,
}
