using Catalogue.Domain.Text;
using CsCheck;

namespace Catalogue.Domain.Tests.Text;

public sealed class NaturalOrderTests
{
    private static readonly Gen<string> Names = Gen.String[Gen.OneOf(Gen.Char['0', '3'], Gen.Char['a', 'c'], Gen.Char['A', 'C'], Gen.Const('_')), 0, 8];

    [Theory]
    [InlineData("IMG_9.jpg", "IMG_10.jpg")]
    [InlineData("c20", "C100")]
    [InlineData("R", "R1")]
    [InlineData("R1A", "R2")]
    [InlineData("r3", "R10")]
    [InlineData("a 99999999999999999999", "a 100000000000000000000")]
    [InlineData("TOP (2).JPG", "TOP (10).JPG")]
    [InlineData("007", "7")]
    public void Compare_NumbersInside_GoByValue(string first, string second)
    {
        Assert.True(NaturalOrder.Instance.Compare(first, second) < 0);
        Assert.True(NaturalOrder.Instance.Compare(second, first) > 0);
    }

    [Fact]
    public void Compare_Null_ComesFirst()
    {
        Assert.True(NaturalOrder.Instance.Compare(null, "") < 0);
        Assert.Equal(0, NaturalOrder.Instance.Compare(null, null));
    }

    [Fact]
    public void Compare_AnyThree_IsATotalOrder() => Gen.Select(Names, Names, Names).Sample((x, y, z) =>
    {
        var order = NaturalOrder.Instance;
        Assert.Equal(Math.Sign(order.Compare(x, y)), -Math.Sign(order.Compare(y, x)));
        Assert.Equal(x == y, order.Compare(x, y) == 0);
        if (order.Compare(x, y) <= 0 && order.Compare(y, z) <= 0)
            Assert.True(order.Compare(x, z) <= 0, $"{x} {y} {z}");
    });
}
