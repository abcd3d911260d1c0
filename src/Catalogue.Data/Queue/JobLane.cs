namespace Catalogue.Data.Queue;

/// <summary>Jobs wait in two lanes, each with a worker of its own on every node, so that what takes minutes holds up nothing that takes seconds.</summary>
public enum JobLane
{
    /// <summary>Work of seconds, such as renditions of a photo.</summary>
    Quick,

    /// <summary>Work of minutes: imports, and figures computed anew.</summary>
    Lengthy,
}
