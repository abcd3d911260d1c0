namespace Catalogue.Domain.Callouts;

/// <summary>Where the numbered balloon of a callout stands. All four values are fractions of the picture, 0 to 1, from its upper left corner.</summary>
/// <param name="Callout">The callout.</param>
/// <param name="X">Centre of the balloon.</param>
/// <param name="Y">Centre of the balloon.</param>
/// <param name="TouchX">Where its leader touches the part.</param>
/// <param name="TouchY">Where its leader touches the part.</param>
public sealed record Balloon(Callout Callout, double X, double Y, double TouchX, double TouchY);
