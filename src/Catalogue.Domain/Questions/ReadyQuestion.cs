namespace Catalogue.Domain.Questions;

/// <summary>A question that ships with the catalogue.</summary>
/// <param name="Slug">Its address.</param>
/// <param name="Title">The question in plain words.</param>
/// <param name="Description">What the answer shows and how it is ranked.</param>
/// <param name="Parameters">What it asks for; may be empty.</param>
/// <param name="Build">The typed question for given parameter values; a required value is present when it is called.</param>
public sealed record ReadyQuestion(
    string Slug,
    string Title,
    string Description,
    IReadOnlyList<QuestionParameter> Parameters,
    Func<IReadOnlyDictionary<string, string>, Question> Build);
