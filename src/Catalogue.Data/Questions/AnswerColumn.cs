using Catalogue.Domain.Quantities;

namespace Catalogue.Data.Questions;

/// <summary>A column of an answer.</summary>
/// <param name="Name">Its name in rows, in CSV and in JSON.</param>
/// <param name="Title">The heading a person reads.</param>
/// <param name="Type"><c>text</c>, <c>number</c>, <c>interval</c>, <c>verdict</c> or <c>date</c>.</param>
/// <param name="Unit">The unit of numbers, or null.</param>
public sealed record AnswerColumn(string Name, string Title, string Type, Unit? Unit = null);
