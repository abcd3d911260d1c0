namespace Catalogue.Domain.Isolation;

/// <summary>The group of an insulating material by its comparative tracking index.</summary>
public enum MaterialGroup
{
    /// <summary>600 and above.</summary>
    One,

    /// <summary>400 to 599.</summary>
    Two,

    /// <summary>175 to 399.</summary>
    ThreeA,

    /// <summary>100 to 174.</summary>
    ThreeB,
}
