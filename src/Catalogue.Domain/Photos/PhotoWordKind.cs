namespace Catalogue.Domain.Photos;

/// <summary>What a word in the name of a picture says.</summary>
internal enum PhotoWordKind
{
    /// <summary>Nothing that is known: part of a name or of a caption.</summary>
    Other,

    /// <summary>Digits.</summary>
    Number,

    /// <summary>A circuit board.</summary>
    Board,

    /// <summary>A circuit board, in a language that puts what kind it is behind the word.</summary>
    BoardBeforeName,

    /// <summary>The upper side of a board, or the front.</summary>
    Top,

    /// <summary>The lower side of a board, or the back.</summary>
    Bottom,

    /// <summary>The product from outside, its label or its box.</summary>
    Product,

    /// <summary>A detail seen from near.</summary>
    Detail,

    /// <summary>A step of taking apart.</summary>
    Step,

    /// <summary>Says only that this is a picture, or joins words.</summary>
    Filler,
}
