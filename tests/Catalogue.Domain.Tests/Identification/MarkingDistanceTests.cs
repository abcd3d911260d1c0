using Catalogue.Domain.Identification;
using CsCheck;

namespace Catalogue.Domain.Tests.Identification;

public sealed class MarkingDistanceTests
{
    [Theory]
    [InlineData("QX4R065N", "QX4R065N", 0)]
    [InlineData("QX4RO65N", "QX4R065N", 0.1)]
    [InlineData("QX4R06SN", "QX4R065N", 0.2)]
    [InlineData("QX4R065", "QX4R065N", 1)]
    [InlineData("QX-4R065N", "QX4R065N", 0.05)]
    [InlineData("0X4R065M", "QX4R065N", 0.65)]
    [InlineData("ZM5N1OD", "2M5N10D", 0.3)]
    [InlineData("B8S21", "88521", 0.4)]
    [InlineData("G1L7", "6117", 0.45)]
    [InlineData("HYLK900", "NVLK900", 0.75)]
    [InlineData("QX4R065N", "QX4P065N", 0.35)]
    [InlineData("ABC", "XYZ", 3)]
    [InlineData("Q?4R065N", "QX4R065N", 0.2)]
    public void Cost_OfAReading_WeighsLookAlikes(string observed, string number, double cost)
    {
        Assert.Equal(cost, MarkingDistance.Cost(observed, number), 9);
        Assert.Equal(1 - (cost / Math.Max(observed.Length, number.Length)), MarkingDistance.Similarity(observed, number), 9);
    }

    [Fact]
    public void Steps_OfAReading_NameEachDifference()
    {
        var steps = MarkingDistance.Steps("QXR0G5NK", "QX4R065N");
        Assert.Equal([new(null, '4'), new('G', '6'), new('K', null)], steps.Where(step => !step.IsEqual));
    }

    [Fact]
    public void Cost_OfAnyTwoTexts_IsSymmetricAndNoMoreThanThePathOfSteps() =>
        Gen.Select(Number, Number).Sample((one, other) =>
        {
            var cost = MarkingDistance.Cost(one, other);
            Assert.Equal(cost, MarkingDistance.Cost(other, one), 9);
            var steps = MarkingDistance.Steps(one, other);
            Assert.Equal(one, string.Concat(steps.Select(step => step.Observed)));
            Assert.Equal(other, string.Concat(steps.Select(step => step.Expected)));
            Assert.True(cost >= Math.Abs(one.Length - other.Length) - 1e-9);
        });

    private static Gen<string> Number => Gen.String[Gen.Char["0123456789ABCDEFGHIJKLMNOPQRSTUVWXYZ"], 0, 12];
}
