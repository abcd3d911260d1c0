namespace Catalogue.Domain.Photos;

/// <summary>What a photo shows.</summary>
public enum PhotoSubject
{
    /// <summary>The product from outside.</summary>
    Product,

    /// <summary>A board, seen from its top side.</summary>
    BoardTop,

    /// <summary>A board, seen from its bottom side.</summary>
    BoardBottom,

    /// <summary>A detail.</summary>
    Detail,

    /// <summary>A step of taking apart.</summary>
    Step,
}
