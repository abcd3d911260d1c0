namespace Catalogue.Domain.Components.Lists;

/// <summary>What becomes of a rating.</summary>
/// <param name="Now">What the list says; null where it does not say it any more.</param>
/// <param name="There">What is recorded; null where nothing is.</param>
/// <param name="Action">What is done to it.</param>
public sealed record PlannedRating(ListedRating? Now, Rating? There, PlannedRatingAction Action);
