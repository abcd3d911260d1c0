namespace Catalogue.Domain.Questions;

/// <summary>Something a ready-made question asks for.</summary>
/// <param name="Name">Its name in the address.</param>
/// <param name="Type">What kind of value it takes: <c>family</c> or <c>category</c>.</param>
/// <param name="Required">True when the question cannot be asked without it.</param>
/// <param name="Words">What a person is asked for.</param>
public sealed record QuestionParameter(string Name, string Type, bool Required, string Words);
