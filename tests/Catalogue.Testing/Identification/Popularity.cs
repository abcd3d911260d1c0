namespace Catalogue.Testing.Identification;

/// <summary>How often families turn up: a few everywhere, most hardly ever (Zipf's law with exponent 0.9).</summary>
public sealed class Popularity
{
    private readonly double[] _upTo;
    private readonly int[] _places;

    /// <summary>A popularity of so many things; equal seeds give equal ones.</summary>
    public Popularity(int count, int seed)
    {
        var chance = new Random(seed);
        _places = [.. Enumerable.Range(0, count)];
        chance.Shuffle(_places);
        _upTo = new double[count];
        var sum = 0.0;
        for (var i = 0; i < count; i++)
            _upTo[i] = sum += Math.Pow(i + 10, -0.9);
    }

    /// <summary>The place of one of them, the popular ones more often.</summary>
    public int Draw(Random chance)
    {
        ArgumentNullException.ThrowIfNull(chance);
        var at = Array.BinarySearch(_upTo, chance.NextDouble() * _upTo[^1]);
        return _places[Math.Min(_places.Length - 1, at < 0 ? ~at : at)];
    }
}
