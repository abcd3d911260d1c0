using Catalogue.Domain.Isolation;
using Catalogue.Domain.Teardowns;
using CsCheck;

namespace Catalogue.Domain.Tests.Isolation;

public sealed class MeasuredPathTests
{
    [Fact]
    public void ToNote_WhollyDescribed_IsHeldAgainstFiveMillimetre()
    {
        var note = Path().ToNote();

        Assert.Equal(IsolationOutcome.ClearlyAbove, note.Outcome);
        Assert.Equal(5, note.OrientationMm);
        Assert.Equal("compare with 5\u00A0mm", note.CompareWith());
    }

    [Theory]
    [InlineData(6.25, IsolationOutcome.ClearlyAbove)]
    [InlineData(6.24, IsolationOutcome.NearOrBelowAsk)]
    [InlineData(0.5, IsolationOutcome.NearOrBelowAsk)]
    public void ToNote_LowestCase_DecidesAtOneAndAQuarter(double low, IsolationOutcome expected) =>
        Assert.Equal(expected, Path(path => path.LowMm = low).ToNote().Outcome);

    [Fact]
    public void ToNote_Clearance_IsConvertedFromMillimetreAndMetre()
    {
        var note = Path(path => (path.PathKind, path.AltitudeM, path.LowMm) = (PathKind.Clearance, 5000, 6)).ToNote();

        Assert.Equal(4.44, note.OrientationMm);
        Assert.Equal(IsolationOutcome.ClearlyAbove, note.Outcome);
    }

    [Fact]
    public void ToNote_GrooveOfHalfAMillimetre_DoesNotCountAtPollutionDegreeTwo() =>
        Assert.Equal(IsolationOutcome.NotAssessable, Path(path => path.NarrowestGrooveMm = 0.5).ToNote().Outcome);

    [Fact]
    public void ToNote_NothingButTheEnds_NamesEverythingThatIsMissing()
    {
        var note = new MeasuredPath { RevisionId = RevisionId.New(), Id = MeasuredPathId.New(), From = "primary", To = "secondary" }.ToNote();

        Assert.Equal(IsolationOutcome.NotAssessable, note.Outcome);
        Assert.Null(note.OrientationMm);
        Assert.Contains("No distance was measured.", note.Reasons);
        Assert.Contains("The working voltage is not said.", note.Reasons);
        Assert.Equal("nothing to compare with", note.CompareWith());
    }

    [Fact]
    public void ToNote_AnyPath_GivesReasonsAndNoVerdict() =>
        Gen.Select(Gen.Double[0.01, 30], Gen.Double[0, 5], Gen.Int[1, 4], Gen.Int[1, 3], Gen.Bool).Sample((low, more, category, degree, isCoated) =>
        {
            var path = Path(path => (path.LowMm, path.NominalMm, path.HighMm, path.OvervoltageCategory, path.PollutionDegree, path.IsCoated) = (low, low + more, low + more + more, category, degree, isCoated));
            var note = path.ToNote();
            Assert.NotEmpty(note.Reasons);
            foreach (var text in note.Reasons.Append(note.Outcome.Word()).Append(note.CompareWith()).Concat(path.Assumed()))
            {
                Assert.DoesNotContain("compl", text, StringComparison.OrdinalIgnoreCase);
                Assert.DoesNotContain("pass", text, StringComparison.OrdinalIgnoreCase);
                Assert.DoesNotContain("safe", text, StringComparison.OrdinalIgnoreCase);
            }
        });

    [Fact]
    public void Words_OfAPath_SayWhatWasMeasuredAndAssumed()
    {
        var path = Path();

        Assert.Equal("7 / 7.2 / 7.4\u00A0mm", path.Distance());
        Assert.Equal("not measured", Path(path => (path.LowMm, path.NominalMm, path.HighMm) = (null, null, null)).Distance());
        Assert.Equal("3\u00A0mm", Path(path => (path.LowMm, path.NominalMm, path.HighMm) = (3, 3, 3)).Distance());
        Assert.Equal("1.5\u00A0mm", path.Groove());
        Assert.Equal(
            ["working voltage 240\u00A0V rms", "insulation reinforced", "overvoltage category II", "pollution degree 2", "material group IIIa", "up to 2000\u00A0m", "not coated"],
            path.Assumed());
        Assert.Contains("coating not said", Path(path => path.IsCoated = null).Assumed());
    }

    [Theory]
    [InlineData(IsolationOutcome.ClearlyAbove, "clearly above")]
    [InlineData(IsolationOutcome.NearOrBelowAsk, "near or below: ask")]
    [InlineData(IsolationOutcome.NotAssessable, "not assessable")]
    public void Word_EachOutcome_IsAnOrientation(IsolationOutcome outcome, string word) => Assert.Equal(word, outcome.Word());

    [Fact]
    public void Category_BeyondFour_Throws() => Assert.Throws<ArgumentOutOfRangeException>(() => IsolationWords.Category(5));

    private static MeasuredPath Path(Action<MeasuredPath>? change = null)
    {
        var path = new MeasuredPath
        {
            RevisionId = RevisionId.New(),
            Id = MeasuredPathId.New(),
            From = "primary pads of U2",
            To = "secondary pads of U2",
            PathKind = PathKind.Creepage,
            LowMm = 7.0,
            NominalMm = 7.2,
            HighMm = 7.4,
            Method = "caliper",
            NarrowestGrooveMm = 1.5,
            WorkingVoltageV = 240,
            Insulation = InsulationKind.Reinforced,
            OvervoltageCategory = 2,
            PollutionDegree = 2,
            MaterialGroup = MaterialGroup.ThreeA,
            AltitudeM = 2000,
            IsCoated = false,
        };
        change?.Invoke(path);
        return path;
    }
}
