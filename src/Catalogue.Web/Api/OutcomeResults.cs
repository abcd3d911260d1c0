using Catalogue.Data.Teardowns;

namespace Catalogue.Web.Api;

/// <summary>Turns the outcome of a change into an answer.</summary>
internal static class OutcomeResults
{
    /// <summary>What was done as the caller says, and every refusal as a problem document.</summary>
    public static IResult ToResult<T>(this ChangeOutcome<T> outcome, Func<T, IResult> done) => outcome switch
    {
        ChangeOutcome<T>.Done x => done(x.Value),
        ChangeOutcome<T>.NotFound x => ApiProblem.Of(StatusCodes.Status404NotFound, x.Reason),
        ChangeOutcome<T>.Stale x => ApiProblem.Of(StatusCodes.Status409Conflict, x.Reason),
        ChangeOutcome<T>.Refused x => ApiProblem.Of(StatusCodes.Status422UnprocessableEntity, x.Reason, x.Field),
        _ => throw new InvalidOperationException("Every outcome is known."),
    };
}
