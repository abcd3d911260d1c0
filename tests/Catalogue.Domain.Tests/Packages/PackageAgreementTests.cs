using Catalogue.Domain.Packages;
using Catalogue.Domain.Tests.Samples;
using Catalogue.Domain.Text;
using CsCheck;

namespace Catalogue.Domain.Tests.Packages;

public sealed class PackageAgreementTests
{
    private static readonly string[] Texts = [.. FigureDocument.Rows("packages.md", "## Worked examples").Concat(FigureDocument.Rows("packages.md", "## Agreement, worked")).Select(row => row[0].Trim('`'))];

    public static TheoryData<string[]> WorkedExamples => FigureDocument.Theory("packages.md", "## Agreement, worked");

    [Theory]
    [MemberData(nameof(WorkedExamples))]
    public void Of_WorkedExample_GivesTheDocumentedOutcomeBothWays(string[] row)
    {
        var (one, other) = (PackageText.Read(row[0].Trim('`')), PackageText.Read(row[1].Trim('`')));
        var outcome = SnakeCase.TryParse<PackageAgreementKind>(row[2].Replace(' ', '_'));

        Assert.Equal((outcome, outcome), (PackageAgreement.Of(one, other).Kind, PackageAgreement.Of(other, one).Kind));
    }

    [Fact]
    public void Of_AnyTwo_IsTheSameBothWaysAndSaysWhy() => Gen.Select(GenReading(), GenReading()).Sample((one, other) =>
    {
        var agreement = PackageAgreement.Of(one, other);
        Assert.Equal(agreement, PackageAgreement.Of(other, one));
        Assert.NotEmpty(agreement.Why);
    });

    [Fact]
    public void Of_AReadingWithItself_IsTheSame() =>
        Assert.All(Texts, text => Assert.Equal(PackageAgreementKind.Same, PackageAgreement.Of(PackageText.Read(text), PackageText.Read(text)).Kind));

    [Fact]
    public void Of_AnUnknownOne_DecidesNothing() =>
        Assert.All(Texts.Select(PackageText.Read).OfType<PackageReading.Recognised>(), read => Assert.Equal(PackageAgreementKind.NotKnown, PackageAgreement.Of(read, PackageText.Read(null)).Kind));

    private static Gen<PackageReading> GenReading() => Gen.Int[0, Texts.Length - 1].Select(i => PackageText.Read(Texts[i]));
}
