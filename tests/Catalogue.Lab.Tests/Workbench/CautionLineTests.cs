using Bunit;
using Catalogue.Data.Teardowns;
using Catalogue.Domain.Quantities;
using Catalogue.Domain.Rails;
using Catalogue.Domain.Teardowns;
using Catalogue.Lab.Workbench;
using Microsoft.Extensions.DependencyInjection;

namespace Catalogue.Lab.Tests.Workbench;

public sealed class CautionLineTests : LabContext
{
    private readonly HandClock _clock = new();

    private readonly Rail _bus = new() { RevisionId = Records.Revision, Id = RailId.New(), Name = "HV bus", Kind = RailKind.DcBus };

    public CautionLineTests() => Services.AddSingleton<TimeProvider>(_clock);

    [Fact]
    public void FreshReading_BelowTheLimit_StandsBesideTheCautionOfItsRailWhichStays()
    {
        var line = Line(Read(0.4, minutesAgo: 3));

        var caution = line.FindAll("p").Single(p => p.TextContent.StartsWith("Charged capacitors.", StringComparison.Ordinal));
        Assert.Contains("Treat it as live until measured", caution.TextContent, StringComparison.Ordinal);
        Assert.Equal("HV bus: read 0.4\u00A0V 3\u00A0min ago (13:57), C1, at its pins; measure again before touching.", Words(caution.NextElementSibling!.TextContent));
        Assert.Equal("below-limit", line.Find(".discharge").GetAttribute("data-state"));
    }

    [Fact]
    public void Reading_LeftAlone_AgesAndGoesStaleWithoutAClick()
    {
        var line = Line(Read(0.4, minutesAgo: 0));
        Assert.Contains("just now", line.Markup, StringComparison.Ordinal);

        _clock.Advance(TimeSpan.FromMinutes(9));
        line.WaitForAssertion(() => Assert.Contains("9\u00A0min ago", line.Markup, StringComparison.Ordinal));
        Assert.Empty(line.FindAll("s"));

        _clock.Advance(TimeSpan.FromSeconds(60));
        line.WaitForAssertion(() => Assert.Equal("stale", line.Find(".discharge").GetAttribute("data-state")));
        Assert.Equal("0.4\u00A0V", line.Find("s").TextContent);
        Assert.Contains("stale, measure again before touching", line.Find(".discharge").TextContent, StringComparison.Ordinal);
        Assert.Contains("Charged capacitors.", line.Markup, StringComparison.Ordinal);
    }

    [Fact]
    public void FreshReading_AtTheLimitOrAbove_SaysCharged()
    {
        var line = Line(Read(312, minutesAgo: 1));

        Assert.Equal("charged", line.Find(".discharge").GetAttribute("data-state"));
        Assert.Contains("charged; treat it as live", line.Find(".discharge").TextContent, StringComparison.Ordinal);
    }

    [Fact]
    public void Readings_OfOnePlace_ShowTheLastOnly()
    {
        var line = Line(Read(312, minutesAgo: 8), Read(0.4, minutesAgo: 2));

        Assert.Equal("0.4\u00A0V", Assert.Single(line.FindAll(".discharge b")).TextContent);
    }

    [Fact]
    public void Reading_OfARailWithoutItsOwnCaution_IsShownByItsRailAndCalmsNothing()
    {
        var reading = Read(0.4, minutesAgo: 1);
        reading.RailId = Records.Pack.Id;
        var line = Line(reading);

        Assert.StartsWith("pack: read", Words(line.Find("p:has(.discharge)").TextContent), StringComparison.Ordinal);
        Assert.Contains("Cells of unrecorded chemistry.", line.Find("details").TextContent, StringComparison.Ordinal);
    }

    [Fact]
    public void NothingRecorded_SaysToTreatItAsLiveAndOffersTheForm()
    {
        var line = Render<CautionLine>(parameters => parameters.Add(x => x.Record, Records.Record([]) with { Rails = [] }).Add(x => x.Saved, () => Task.CompletedTask));

        Assert.Contains("treat the whole unit as live", line.Markup, StringComparison.Ordinal);
        Assert.Equal("Measured now", line.Find("button").TextContent);
        Assert.Contains(Cautions.Deferral, line.Markup, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Line_Gone_LeavesNoTimer()
    {
        Line(Read(0.4, minutesAgo: 1));
        Assert.Equal(1, _clock.Running);

        await DisposeComponentsAsync();

        Assert.Equal(0, _clock.Running);
    }

    private IRenderedComponent<CautionLine> Line(params DischargeReading[] readings)
    {
        TeardownRecord record = Records.Record([]) with
        {
            Rails = [_bus, Records.Pack],
            RailQuantities =
            [
                new RailQuantity { RevisionId = Records.Revision, Id = RailQuantityId.New(), RailId = _bus.Id, Kind = RailQuantityKind.MaxVoltage, Low = 372, Nominal = 372, High = 372, Evidence = Evidence.Measured },
            ],
            DischargeReadings = readings,
        };
        return Render<CautionLine>(parameters => parameters.Add(x => x.Record, record).Add(x => x.Saved, () => Task.CompletedTask));
    }

    private DischargeReading Read(double volts, int minutesAgo) => new()
    {
        RevisionId = Records.Revision,
        Id = DischargeReadingId.New(),
        RailId = _bus.Id,
        Place = "C1, at its pins",
        LowV = volts,
        NominalV = volts,
        HighV = volts,
        TakenAt = _clock.GetUtcNow().AddMinutes(-minutesAgo),
    };

    private static string Words(string text) => string.Join(' ', text.Split([' ', '\n', '\r'], StringSplitOptions.RemoveEmptyEntries));
}
