using System.ComponentModel;

namespace Catalogue.Domain.Questions;

/// <summary>A condition of a question.</summary>
public sealed record QuestionCondition
{
    /// <summary>The slug of a part family.</summary>
    [Description("The slug of a part family, as GET families gives it.")]
    public required string Family { get; init; }
}
