using Catalogue.Domain.Isolation;
using Catalogue.Domain.Quantities;
using Catalogue.Domain.Tests.Samples;
using Catalogue.Domain.Text;
using CsCheck;
using static Catalogue.Domain.Tests.Quantities.Reckoned;

namespace Catalogue.Domain.Tests.Isolation;

public sealed class IsolationNoteTests
{
    private static readonly IsolationPath Path = new(PathKind.Creepage, Exactly(7e-3), "caliper", "live trace", "output pad");

    private static readonly IsolationAssumptions Assumptions = new()
    {
        WorkingVoltage = Exactly(230),
        Insulation = InsulationKind.Reinforced,
        OvervoltageCategory = 2,
        PollutionDegree = 2,
        Material = MaterialGroup.ThreeA,
        Altitude = 2000,
        IsCoated = false,
    };

    public static TheoryData<string[]> WorkedExamples => FigureDocument.Theory("isolation.md", "## Worked examples");

    [Theory]
    [MemberData(nameof(WorkedExamples))]
    public void Of_WorkedExample_GivesTheDocumentedOutcome(string[] row)
    {
        var spread = FigureDocument.Number(row[2]);
        var note = IsolationNote.Of(
            Path with
            {
                Kind = SnakeCase.TryParse<PathKind>(row[0]),
                Length = FigureDocument.Known(row[1]) is { Nominal: var length } ? Interval.Create((length - spread) * 1e-3, length * 1e-3, (length + spread) * 1e-3) : null,
            },
            Assumptions with
            {
                Insulation = SnakeCase.TryParse<InsulationKind>(row[3]),
                PollutionDegree = FigureDocument.Count(row[4]),
                Material = SnakeCase.TryParse<MaterialGroup>(row[5]),
                OvervoltageCategory = row[6] == "none" ? null : FigureDocument.Count(row[6]),
                Altitude = FigureDocument.Known(row[7])?.Nominal,
            });
        Assert.Equal(row[9], SnakeCase.Code(note.Outcome));
        Assert.Equal(row[8] == "none", note.Orientation is null);
        if (note.Orientation is { } orientation)
            Near(FigureDocument.Number(row[8]) * 1e-3, orientation);
        Assert.NotEmpty(note.Reasons);
    }

    [Fact]
    public void Of_OneThingMissing_IsNotAssessable_AndOneReasonSaysWhich()
    {
        Assert.Equal(IsolationOutcome.ClearlyAbove, IsolationNote.Of(Path, Assumptions).Outcome);
        IsolationNote[] notes =
        [
            IsolationNote.Of(Path with { Kind = null }, Assumptions),
            IsolationNote.Of(Path with { Length = null }, Assumptions),
            IsolationNote.Of(Path with { Method = " " }, Assumptions),
            IsolationNote.Of(Path with { From = null }, Assumptions),
            IsolationNote.Of(Path, Assumptions with { WorkingVoltage = null }),
            IsolationNote.Of(Path, Assumptions with { Insulation = null }),
            IsolationNote.Of(Path, Assumptions with { PollutionDegree = null }),
            IsolationNote.Of(Path, Assumptions with { Material = null }),
            IsolationNote.Of(Path, Assumptions with { IsCoated = null }),
            IsolationNote.Of(Path with { Kind = PathKind.Clearance }, Assumptions with { OvervoltageCategory = null }),
            IsolationNote.Of(Path with { Kind = PathKind.Clearance }, Assumptions with { Altitude = null }),
        ];

        Assert.All(notes, note => Assert.Equal(IsolationOutcome.NotAssessable, note.Outcome));
        Assert.Equal(notes.Length, notes.Select(note => Assert.Single(note.Reasons)).Distinct().Count());
    }

    [Fact]
    public void Of_AssumptionsBeyondTheValues_IsNotAssessable() => Assert.All(
        new[]
        {
            Assumptions with { WorkingVoltage = Exactly(300) },
            Assumptions with { WorkingVoltage = Exactly(-1) },
            Assumptions with { OvervoltageCategory = 4 },
            Assumptions with { PollutionDegree = 0 },
            Assumptions with { Altitude = 6000 },
            Assumptions with { Altitude = double.NaN },
            Assumptions with { Frequency = 100e3 },
            Assumptions with { Frequency = double.NaN },
            Assumptions with { IsCoated = true },
        },
        assumptions => Assert.Equal(IsolationOutcome.NotAssessable, IsolationNote.Of(Path, assumptions).Outcome));

    [Theory]
    [InlineData(0.9e-3, IsolationOutcome.NotAssessable)]
    [InlineData(1.0e-3, IsolationOutcome.ClearlyAbove)]
    [InlineData(double.NaN, IsolationOutcome.NotAssessable)]
    [InlineData(-1, IsolationOutcome.NotAssessable)]
    public void Of_Groove_CountsFromItsWidthOn(double width, IsolationOutcome outcome) =>
        Assert.Equal(outcome, IsolationNote.Of(Path with { NarrowestGroove = width }, Assumptions).Outcome);

    [Theory]
    [InlineData(0)]
    [InlineData(-5e-3)]
    [InlineData(7)]
    [InlineData(1e300)]
    public void Of_LengthThatCannotBe_IsNotAssessable(double metres) =>
        Assert.Equal(IsolationOutcome.NotAssessable, IsolationNote.Of(Path with { Length = Exactly(metres) }, Assumptions).Outcome);

    [Fact]
    public void Of_ShorterPath_NeverABetterOutcome() => Gen.Select(Gen.Double[1e-4, 2e-2], Gen.Double[0.1, 1]).Sample((metres, less) =>
        IsolationNote.Of(Path with { Length = Exactly(metres * less) }, Assumptions).Outcome >= IsolationNote.Of(Path with { Length = Exactly(metres) }, Assumptions).Outcome);

    [Fact]
    public void Of_AnyOutcome_SpeaksNoVerdict() => Assert.All(
        new[] { 3e-3, 7e-3 }.SelectMany(metres => IsolationNote.Of(Path with { Length = Exactly(metres) }, Assumptions).Reasons).Append(IsolationNote.Deferral),
        text => Assert.DoesNotMatch("(?i)compl|pass|fail|safe|certif", text));
}
