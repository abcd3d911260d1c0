namespace Catalogue.Domain.Isolation;

/// <summary>Which shortest path was measured. The two are different paths; a photo shows at most one.</summary>
public enum PathKind
{
    /// <summary>Along the surface of the insulation.</summary>
    Creepage,

    /// <summary>Through air.</summary>
    Clearance,
}
