namespace Catalogue.Domain.Questions;

/// <summary>What a row of an answer is.</summary>
public enum QuestionSubject
{
    /// <summary>A published teardown.</summary>
    Designs,

    /// <summary>A component of a published teardown.</summary>
    Components,
}
