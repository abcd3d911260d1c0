using Catalogue.Domain.Quantities;
using CsCheck;

namespace Catalogue.Domain.Tests.Quantities;

/// <summary>What every sum must keep to, whatever it computes.</summary>
internal static class Reckoned
{
    private static readonly double[] AbsurdValues = [-1e300, -1000, 1e15, 1e300, double.MaxValue];

    public static T Done<T>(Reckoning<T> reckoning) => Assert.IsType<Reckoning<T>.Done>(reckoning).Value;

    public static string[] Refused<T>(Reckoning<T> reckoning) =>
        [.. Assert.IsType<Reckoning<T>.Refused>(reckoning).Refusals.Select(refusal => refusal.Input)];

    public static void Near(double expected, double actual, double tolerance = 1e-5) =>
        Assert.InRange(actual, expected - (tolerance * Math.Abs(expected)), expected + (tolerance * Math.Abs(expected)));

    public static Interval Exactly(double value) => Interval.Exactly(value);

    public static Interval Scaled(Interval interval, double factor) =>
        Interval.Create(interval.Low * factor, interval.Nominal * factor, interval.High * factor);

    /// <summary>Any inputs within their intervals give a result within the interval of the result.</summary>
    public static void HoldsEveryCase(Func<Interval[], Reckoning<Interval>> sum, params (double Low, double High)[] ranges) =>
        Gen.Select(GenInputs(ranges), Gen.Double[-0.5, 1.5].Array[ranges.Length]).Sample((inputs, at) =>
        {
            if (sum(inputs) is not Reckoning<Interval>.Done { Value: var whole })
                return;
            var one = Done(sum([.. inputs.Select((input, i) => Exactly(Within(input, at[i])))]));
            var noise = 1e-9 * Math.Max(Math.Abs(whole.Low), Math.Abs(whole.High));
            Assert.InRange(one.Nominal, whole.Low - noise, whole.High + noise);
        });

    /// <summary>More of one input moves all three cases of the result one way: +1 up, −1 down.</summary>
    public static void Moves(Func<Interval[], Reckoning<Interval>> sum, int input, int way, params (double Low, double High)[] ranges) =>
        Gen.Select(GenInputs(ranges), Gen.Double[1, 2]).Sample((inputs, more) =>
        {
            Interval[] changed = [.. inputs];
            changed[input] = Scaled(changed[input], more);
            if (sum(inputs) is not Reckoning<Interval>.Done { Value: var before } || sum(changed) is not Reckoning<Interval>.Done { Value: var after })
                return;
            var noise = 1e-9 * Math.Max(Math.Abs(before.High), Math.Abs(after.High));
            Assert.True(way * (after.Low - before.Low) >= -noise, $"low: {before.Low} became {after.Low}");
            Assert.True(way * (after.Nominal - before.Nominal) >= -noise, $"nominal: {before.Nominal} became {after.Nominal}");
            Assert.True(way * (after.High - before.High) >= -noise, $"high: {before.High} became {after.High}");
        });

    /// <summary>Inputs in other units give the same result in its other unit.</summary>
    public static void Scales(Func<Interval[], Reckoning<Interval>> sum, double[] powers, double power, params (double Low, double High)[] ranges) =>
        Gen.Select(GenInputs(ranges), Gen.Double[0.5, 2]).Sample((inputs, factor) =>
        {
            var before = sum(inputs);
            var after = sum([.. inputs.Select((input, i) => Scaled(input, Math.Pow(factor, powers[i])))]);
            if (before is not Reckoning<Interval>.Done { Value: var small } || after is not Reckoning<Interval>.Done { Value: var large })
                return;
            Near(small.Low * Math.Pow(factor, power), large.Low, 1e-9);
            Near(small.Nominal * Math.Pow(factor, power), large.Nominal, 1e-9);
            Near(small.High * Math.Pow(factor, power), large.High, 1e-9);
        });

    /// <summary>Each input alone missing, negative or of an impossible size is refused, and a sane set is not.</summary>
    public static void RefusesTheAbsurd<T>(Func<Interval?[], Reckoning<T>> sum, params double[] sane)
    {
        Interval?[] inputs = [.. sane.Select(value => (Interval?)Exactly(value))];
        Done(sum(inputs));
        for (var i = 0; i < inputs.Length; i++)
        {
            Assert.NotEmpty(Refused(sum(With(i, null))));
            foreach (var value in AbsurdValues)
            {
                var refusal = Assert.IsType<Reckoning<T>.Refused>(sum(With(i, Exactly(value)))).Refusals[0];
                Assert.NotEmpty(refusal.Input);
                Assert.NotEmpty(refusal.Reason);
            }
        }

        Interval?[] With(int at, Interval? value) => [.. inputs.Select((input, i) => i == at ? value : input)];
    }

    private static Gen<Interval[]> GenInputs((double Low, double High)[] ranges) =>
        Gen.Double[0, 1].Array[3].Array[ranges.Length].Select(drawn => drawn
            .Select((three, i) =>
            {
                var values = three.Select(at => ranges[i].Low + (at * (ranges[i].High - ranges[i].Low))).Order().ToArray();
                return Interval.Create(values[0], values[1], values[2]);
            })
            .ToArray());

    // Half of the cases lie on an end.
    private static double Within(Interval interval, double at) => Math.Min(interval.High, interval.Low + (Math.Clamp(at, 0, 1) * (interval.High - interval.Low)));
}
