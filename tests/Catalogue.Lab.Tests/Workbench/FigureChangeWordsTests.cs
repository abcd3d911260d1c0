using Catalogue.Domain.Components;
using Catalogue.Domain.Figures;
using Catalogue.Domain.Identification;
using Catalogue.Domain.Quantities;
using Catalogue.Lab.Workbench;

namespace Catalogue.Lab.Tests.Workbench;

public sealed class FigureChangeWordsTests
{
    [Fact]
    public void Words_ANewFigure_WasNotAsked() => Assert.Equal("Voltage margin of Q7: not asked, then thin, 0.21", Change(VoltageMargin.Rule, null, Verdict.Thin, null, 0.21, Unit.Ratio));

    [Fact]
    public void Words_AVerdict_ComesWithBothValues() => Assert.Equal("Voltage margin of Q7: ample, 0.60, then over rating, −0.10", Change(VoltageMargin.Rule, Verdict.Ample, Verdict.OverRating, 0.6, -0.1, Unit.Ratio));

    [Fact]
    public void Words_AFigureWithoutALine_IsItsValue() => Assert.Equal("Conduction loss of Q7: not computed, then 1.5\u00A0W", Change(ConductionLoss.Rule, Verdict.Unknown, Verdict.NoLine, null, 1.5, Unit.Watt));

    private static string Change(string rule, Verdict? from, Verdict? to, double? valueFrom, double? valueTo, Unit unit) =>
        new FigureChange(rule, ComponentId.New(), null, "Q7", from, to, Of(valueFrom), Of(valueTo), unit).Words();

    private static Interval? Of(double? value) => value is { } exact ? Interval.Exactly(exact) : null;
}
