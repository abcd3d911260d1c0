using AngleSharp.Dom;
using Bunit;
using Catalogue.Data.Teardowns;
using Catalogue.Domain.Figures;
using Catalogue.Domain.Isolation;
using Catalogue.Domain.Publishing;
using Catalogue.Domain.Rails;
using Catalogue.Domain.Teardowns;
using Catalogue.Site.Markdown;
using Catalogue.Site.Teardowns;
using Microsoft.Extensions.DependencyInjection;

namespace Catalogue.Site.Tests.Teardowns;

public sealed class TeardownBodyTests : BunitContext
{
    private readonly SampleTeardown _sample = new();
    private readonly RailId _bus = RailId.New();

    public TeardownBodyTests() => Services.AddSingleton<SafeMarkdown>();

    [Fact]
    public void Body_Whole_HasNoStyleAttributeAndNoScript()
    {
        var page = Body();
        Assert.Empty(page.FindAll("[style]"));
        Assert.Empty(page.FindAll("script"));
        Assert.DoesNotContain(page.FindAll("*"), element => element.Attributes.Any(attribute => attribute.Name.StartsWith("on", StringComparison.OrdinalIgnoreCase)));
    }

    [Fact]
    public void Body_Whole_EveryLinkWithinThePageLeadsSomewhereAndIdsAreUnique()
    {
        var page = Body();
        var ids = page.FindAll("[id]").Select(element => element.Id).ToList();
        Assert.Equal(ids.Count, ids.Distinct().Count());
        var targets = page.FindAll("a[href^='#']").Select(link => link.GetAttribute("href")![1..]).ToList();
        Assert.True(targets.Count > 20);
        Assert.All(targets, target => Assert.Contains(target, ids));
    }

    [Fact]
    public void Body_TitleBlock_SaysWhichPaperThisIs()
    {
        var block = Words(Body().Find(".title-block"));
        Assert.Contains("T-041", block, StringComparison.Ordinal);
        Assert.Contains("3, current", block, StringComparison.Ordinal);
        Assert.Contains("replaces revision 2", block, StringComparison.Ordinal);
        Assert.Contains("18 Nov 2025", block, StringComparison.Ordinal);
        Assert.Contains("bought by the lab", block, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("TO247-3", "TO247-3 TO-247")]
    [InlineData("TO-247", "TO-247")]
    [InlineData("chip, 9 × 5 mm", "chip, 9 × 5 mm")]
    public void Body_PackageOfAPart_StandsAsReadWithItsNameBeside(string package, string shown)
    {
        _sample.Switches.Package = package;
        Assert.StartsWith(shown + " ", Words(Body().Find($"#{Addresses.ComponentAnchor(_sample.Switches.Id)} td[data-h=package]")), StringComparison.Ordinal);
    }

    [Fact]
    public void Record_TypesItHolds_DoNotIncludeTheTeardownWithItsSerialNumber() =>
        Assert.DoesNotContain(
            typeof(TeardownRecord).GetProperties().SelectMany(property => property.PropertyType.GenericTypeArguments.Append(property.PropertyType)),
            type => type == typeof(Teardown));

    [Fact]
    public void Body_Tally_LeadsToTheFiguresWordByWord()
    {
        var page = Body();
        Assert.Equal("1 figure, screened on one sample; 1 more could not be computed", Words(page.Find(".glance .note")));
        var link = page.Find(".tally a");
        Assert.Equal("1 over guideline", Words(link));
        Assert.Equal("over-guideline", page.Find(link.GetAttribute("href")!).QuerySelector(".verdict")!.GetAttribute("data-verdict"));
    }

    [Fact]
    public void Body_UnknownFigure_IsCountedApartAndNamesWhatIsMissing()
    {
        _sample.Fuse.RailId = null;
        _sample.Figures = RevisionFigures.Compute(_sample.Fuse.RevisionId, _sample.Facts, LineTable.Default);
        var page = Body();
        Assert.Equal("No figure could be computed; 2 lack an input", Words(page.Find(".glance .note")));
        var row = page.Find("#margins .figures > li");
        Assert.Contains("not computed", Words(row), StringComparison.Ordinal);
        Assert.Contains("the rail the fuse sits in", Words(row), StringComparison.Ordinal);
        Assert.NotEmpty(row.QuerySelectorAll(".interval .void"));
        Assert.Empty(row.QuerySelectorAll(".interval .needle"));
    }

    [Fact]
    public void Body_Cautions_StandBeforeEveryPictureOfTheOpenedUnitAndDeferLast()
    {
        var page = Body();
        var order = page.FindAll(".cautions, img").ToList();
        var frame = order.FindIndex(element => element.ClassList.Contains("cautions"));
        Assert.Equal("Front of the unit", order[frame - 1].GetAttribute("alt"));
        Assert.Equal(1, frame);
        Assert.Contains("lithium iron phosphate (LFP)", Words(order[frame]), StringComparison.Ordinal);
        Assert.Equal(Cautions.Deferral, Words(order[frame].Children[^1]));
    }

    [Fact]
    public void Body_KeyFacts_ClaimStandsBesideTheTestOfTheSameSubject()
    {
        var rows = Body().FindAll(".plate tbody tr").Select(Words).ToList();
        Assert.Equal(4, rows.Count);
        Assert.Matches("^Energy 512.Wh label, “25.6V 20Ah 512Wh” 396.Wh 392.Wh to 400.Wh; at the AC outlet, 300 W; test 1 77.3.%$", rows[0]);
        Assert.Matches("^Waterproof “splash proof” box not measured nothing to compare$", rows[1]);
        Assert.Matches("^Draw with AC on not claimed 8.6.W test 2 nothing to compare$", rows[2]);
        Assert.Matches("^Mass not claimed 6.52.kg weighed nothing to compare$", rows[3]);
    }

    [Fact]
    public void Body_PartRow_LinksToItsBalloonAndBack()
    {
        var page = Body();
        var row = page.Find("#" + Addresses.ComponentAnchor(_sample.Fuse.Id));
        Assert.Equal("1", row.GetAttribute("data-n"));
        var balloon = page.Find(row.QuerySelector("a.keyno")!.GetAttribute("href")!);
        Assert.Equal("#" + row.Id, balloon.GetAttribute("href"));
        Assert.Equal("1", balloon.GetAttribute("data-n"));
        Assert.Equal("Callout 1: Pack fuse, F1, over guideline", balloon.GetAttribute("aria-label"));
        Assert.NotNull(balloon.QuerySelector(".badge"));
    }

    [Fact]
    public void Body_PartRow_SaysWhatWasReadHowManyAndHowItIsKnown()
    {
        var page = Body();
        var fuse = Words(page.Find("#" + Addresses.ComponentAnchor(_sample.Fuse.Id)));
        Assert.Matches("35.A", fuse);
        Assert.Contains("read on part", fuse, StringComparison.Ordinal);
        Assert.Contains("fuse headroom 0.83, line at 1.00", fuse, StringComparison.Ordinal);
        var switches = page.Find("#" + Addresses.ComponentAnchor(_sample.Switches.Id));
        Assert.Contains("2 in parallel, 2 in series", Words(switches), StringComparison.Ordinal);
        Assert.Equal("YTQ65-080\nY2318", switches.QuerySelector(".mono")!.TextContent);
        Assert.NotNull(switches.QuerySelector("a[href='/families/ytq65-080']"));
        var relay = page.Find("#" + Addresses.ComponentAnchor(_sample.Relay.Id));
        Assert.Contains("not resolved", Words(relay), StringComparison.Ordinal);
        Assert.NotNull(relay.QuerySelector(".keyno.unread"));
        var empty = Words(page.Find("#" + Addresses.ComponentAnchor(_sample.Empty.Id)));
        Assert.Contains("not fitted", empty, StringComparison.Ordinal);
        Assert.Contains("part number RQX0805 value 4k7", empty, StringComparison.Ordinal);
        Assert.Contains("on no picture", empty, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("<script>alert(1)</script>")]
    [InlineData("\"><img src=x onerror=alert(1)>")]
    [InlineData("</text></svg><b>x")]
    public void Body_HostileMarking_IsTextEverywhere(string marking)
    {
        _sample.Fuse.MarkingAsRead = marking;
        _sample.Fuse.Role = marking;
        var page = Body();
        Assert.Empty(page.FindAll("script, img[src='x'], [onerror]"));
        Assert.Contains(marking, page.Find("#" + Addresses.ComponentAnchor(_sample.Fuse.Id)).TextContent, StringComparison.Ordinal);
    }

    [Fact]
    public void Body_Superseded_SaysSoFirstAndLinksToTheCurrent()
    {
        _sample.State = RevisionState.Superseded;
        var page = Body();
        var notice = page.Find(".superseded");
        Assert.Contains("replaced by revision 4", Words(notice), StringComparison.Ordinal);
        Assert.Equal("/teardowns/ferrowick-tor-600", notice.QuerySelector("a")!.GetAttribute("href"));
        Assert.Equal(notice, page.Nodes.OfType<IElement>().First(element => element.LocalName != "svg"));
        Assert.Contains("3, replaced", Words(page.Find(".title-block")), StringComparison.Ordinal);
    }

    [Fact]
    public void Body_RulesGiveTheSameNow_SaysNothingBeside()
    {
        _sample.Current = [.. _sample.Figures.Select(figure => _sample.Now(figure, figure.RuleVersion, figure.Verdict))];
        Assert.Empty(Body().FindAll(".since"));
    }

    [Fact]
    public void Body_RuleChangedSince_PrintsBoth()
    {
        _sample.Current = [_sample.Now(_sample.Figures[0], FuseHeadroom.Version + 1, Verdict.Adequate, 1.5)];
        var page = Body();
        Assert.Contains("0.83", Words(page.Find("#margins .figure-row .lnh")), StringComparison.Ordinal);
        var since = Words(page.Find(".since"));
        Assert.Contains($"version {FuseHeadroom.Version + 1}", since, StringComparison.Ordinal);
        Assert.Contains("1.24", since, StringComparison.Ordinal);
        Assert.Contains("adequate", since, StringComparison.Ordinal);
    }

    [Fact]
    public void Body_RuleCannotComputeItAnyMore_SaysWhatIsMissing()
    {
        _sample.Current = [_sample.Now(_sample.Figures[0], FuseHeadroom.Version + 1, Verdict.Unknown, null)];
        Assert.Contains("not computed, missing the rail the fuse sits in", Words(Body().Find(".since")), StringComparison.Ordinal);
    }

    [Fact]
    public void Body_Working_RedoesTheSumWithSources()
    {
        var working = Body().Find(".working");
        var text = Words(working);
        Assert.Matches(@"600.W / \(0.893 × 22.V\) = 30.5.A", text);
        Assert.Matches("35.A × 0.75 × 0.96 = 25.2.A", text);
        Assert.Contains($"fuse_headroom, version {FuseHeadroom.Version}", text, StringComparison.Ordinal);
        Assert.Contains("<var>I<sub>rated</sub></var>", working.InnerHtml, StringComparison.Ordinal);
        Assert.Contains("rail Pack rail: test 2", text, StringComparison.Ordinal);
        Assert.True(working.ParentElement!.HasAttribute("open"), "The first figure over a line stands open.");
    }

    [Fact]
    public void Body_Rail_HasItsVoltagesWithSourceAndWordsForTheUnknown()
    {
        var rail = Words(Body().Find("#" + TeardownView.RailAnchor(_sample.Rail)));
        Assert.Matches("Pack rail pack 22.V measured 21.8.V to 22.2.V; test 2 unknown unknown highest output power 600.W", rail);
    }

    [Fact]
    public void Body_DischargeReading_StandsWithTheCautionOfItsRailWhichStays()
    {
        AddBus();
        _sample.Readings = [Read(0.4, 0), Read(312, 1, "C2")];
        var frame = Body().Find(".cautions");
        var caution = frame.QuerySelectorAll("li").Single(item => Words(item).StartsWith("Charged capacitors", StringComparison.Ordinal));
        Assert.Contains("Treat it as live until measured", Words(caution), StringComparison.Ordinal);
        Assert.Matches("Read 312.V ?, charged, on 21 Oct 2025, 13:59 UTC, C2, with Pardel meter. ?Read 0.4.V on 21 Oct 2025, 13:58 UTC, C1, with Pardel meter.$", Words(caution));
        Assert.Contains(DischargeReading.Scope, frame.TextContent, StringComparison.Ordinal);
        Assert.Equal(["2025-10-21T13:59:00Z", "2025-10-21T13:58:00Z"], frame.QuerySelectorAll("time").Select(time => time.GetAttribute("datetime")));
        Assert.Equal(Cautions.Deferral, Words(frame.Children[^1]));
    }

    [Fact]
    public void Body_DischargeReading_SaysNoAgeSinceThePageIsKept()
    {
        AddBus();
        _sample.Readings = [Read(0.4, 0)];
        Assert.DoesNotContain(" ago", Body().Find(".cautions").TextContent, StringComparison.Ordinal);
    }

    [Fact]
    public void Body_DischargeReadingsOfOnePlace_ShowTheLast()
    {
        AddBus();
        _sample.Readings = [Read(312, 0), Read(0.4, 5)];
        Assert.DoesNotContain("312", Body().Find(".cautions").TextContent, StringComparison.Ordinal);
    }

    [Fact]
    public void Body_DischargeReadingOfARailWithoutACautionOfItsOwn_IsNamedByItsRailBelowAll()
    {
        var reading = Read(0.4, 0);
        reading.RailId = _sample.Rail.Id;
        _sample.Readings = [reading];
        var frame = Body().Find(".cautions");
        Assert.DoesNotContain(frame.QuerySelectorAll("li"), item => item.TextContent.Contains("13:58", StringComparison.Ordinal));
        Assert.StartsWith("Pack rail: read", frame.QuerySelector(".readings .discharge")!.TextContent, StringComparison.Ordinal);
    }

    [Fact]
    public void Body_IsolationNote_IsAnOrientationWithItsAssumptionsAndNoVerdict()
    {
        _sample.Paths = [Path(7.0), Path(5.5), Path(null)];
        var page = Body();
        Assert.Contains(page.FindAll(".contents a"), link => link.GetAttribute("href") == "#isolation");
        var section = page.Find("#isolation");
        var rows = section.QuerySelectorAll("tbody tr").Select(Words).ToList();
        Assert.Matches("^primary pads of U2 to secondary pads of U2 board A, main power board 7 / 7.2 / 7.4.mm creepage, caliper clearly above, compare with 5.mm", rows[0]);
        Assert.Contains("working voltage 240", rows[0], StringComparison.Ordinal);
        Assert.Contains("near or below: ask, compare with 5", rows[1], StringComparison.Ordinal);
        Assert.Contains("not measured", rows[2], StringComparison.Ordinal);
        Assert.Contains("not assessable, nothing to compare with", rows[2], StringComparison.Ordinal);
        Assert.Contains("No distance was measured.", rows[2], StringComparison.Ordinal);
        Assert.Contains(IsolationNote.Deferral, section.TextContent, StringComparison.Ordinal);
        Assert.DoesNotMatch("(?i)compl(y|ies)|pass(es|ed)|safe|fail", section.TextContent);
        Assert.Empty(section.QuerySelectorAll(".verdict"));
    }

    [Fact]
    public void Body_HostileWordsOfAPathOrAReading_AreText()
    {
        const string Hostile = "\"><img src=x onerror=alert(1)>";
        AddBus();
        _sample.Readings = [Read(0.4, 0, Hostile)];
        _sample.Paths = [Path(7.0)];
        (_sample.Paths[0].From, _sample.Paths[0].Remark) = (Hostile, Hostile);
        var page = Body();
        Assert.Empty(page.FindAll("img[src='x'], [onerror]"));
        Assert.Contains(Hostile, page.Find("#isolation").TextContent, StringComparison.Ordinal);
        Assert.Contains(Hostile, page.Find(".cautions").TextContent, StringComparison.Ordinal);
    }

    [Fact]
    public void Body_Citation_NamesTheRevisionsOwnAddress() =>
        Assert.Equal(
            "I. Sorrel, “Ferrowick Tor 600”, teardown T-041, revision 3, Tallow Lane Bench, 18 Nov 2025. https://bench.example/teardowns/ferrowick-tor-600/revisions/3",
            Words(Body().Find(".cite")));

    [Fact]
    public void Body_NothingButATitle_StillReads()
    {
        var whole = _sample.Build();
        var page = Render<TeardownBody>(parameters => parameters.Add(body => body.Settings, SampleTeardown.Settings).Add(body => body.SiteAddress, "https://bench.example").Add(body => body.Record, new TeardownRecord
        {
            FamilyRatings = [],
            Slug = whole.Slug,
            Id = whole.Id,
            Number = 1,
            Revision = new Revision
            {
                Id = whole.Revision.Id,
                TeardownId = whole.Id,
                Number = 1,
                State = RevisionState.Published,
                Title = "Ostrel Pebble 20",
                Brand = "Ostrel",
                ProductName = "Pebble 20",
                Model = "P20",
                Category = Domain.Products.ProductCategory.PowerBank,
                OpenedAt = whole.Revision.OpenedAt,
            },
            Boards = [],
            Components = [],
            Ratings = [],
            Rails = [],
            RailQuantities = [],
            DischargeReadings = [],
            IsolationPaths = [],
            Photos = [],
            Callouts = [],
            Ports = [],
            Claims = [],
            Tests = [],
            Steps = [],
            Findings = [],
            Figures = [],
            CurrentFigures = [],
            Families = whole.Families,
            Publications = [],
        }));
        Assert.Equal(["1Corrections", "2Cite, download"], page.FindAll(".contents a").Select(link => link.TextContent));
        Assert.Equal("No figure applies to what is recorded", Words(page.Find(".glance .note")));
        Assert.Contains(Cautions.Deferral, page.Find(".cautions").TextContent, StringComparison.Ordinal);
    }

    private void AddBus()
    {
        var revision = _sample.Rail.RevisionId;
        _sample.Facts = new RevisionFacts(
            _sample.Facts.Components,
            _sample.Facts.Ratings,
            [.. _sample.Facts.Rails, new Rail { RevisionId = revision, Id = _bus, Name = "HV bus", Kind = RailKind.DcBus }],
            [.. _sample.Facts.RailQuantities, new RailQuantity { RevisionId = revision, Id = RailQuantityId.New(), RailId = _bus, Kind = RailQuantityKind.MaxVoltage, Low = 372, Nominal = 372, High = 372 }]);
    }

    private DischargeReading Read(double volts, int minutes, string place = "C1") => new()
    {
        RevisionId = _sample.Rail.RevisionId,
        Id = DischargeReadingId.New(),
        RailId = _bus,
        Place = place,
        LowV = volts,
        NominalV = volts,
        HighV = volts,
        TakenAt = new DateTimeOffset(2025, 10, 21, 15, 58, 0, TimeSpan.FromHours(2)).AddMinutes(minutes),
        Instrument = "Pardel meter",
    };

    private MeasuredPath Path(double? lowMm) => new()
    {
        RevisionId = _sample.Rail.RevisionId,
        Id = MeasuredPathId.New(),
        BoardId = _sample.Board.Id,
        From = "primary pads of U2",
        To = "secondary pads of U2",
        PathKind = PathKind.Creepage,
        LowMm = lowMm,
        NominalMm = lowMm is null ? null : 7.2,
        HighMm = lowMm is null ? null : 7.4,
        Method = "caliper",
        WorkingVoltageV = 240,
        Insulation = InsulationKind.Reinforced,
        PollutionDegree = 2,
        MaterialGroup = MaterialGroup.ThreeA,
        IsCoated = false,
    };

    private IRenderedComponent<TeardownBody> Body() => Render<TeardownBody>(parameters => parameters
        .Add(body => body.Record, _sample.Build())
        .Add(body => body.Settings, SampleTeardown.Settings)
        .Add(body => body.SiteAddress, "https://bench.example"));

    // As a reader sees it: blanks folded, cells and blocks apart.
    private static string Words(IElement element)
    {
        var text = new System.Text.StringBuilder();
        foreach (var node in element.GetDescendants().OfType<IText>())
        {
            if (node.ParentElement is { LocalName: "td" or "th" or "small" or "b" or "p" or "dt" or "dd" or "div" or "li" or "h4" })
                text.Append(' ');
            text.Append(node.Data);
            if (node.ParentElement is { LocalName: "td" or "th" or "small" or "b" or "p" or "dt" or "dd" or "div" or "li" or "h4" } || new[] { "why", "hidden", "none" }.Any(name => node.ParentElement!.ClassList.Contains(name)))
                text.Append(' ');
        }

        return string.Join(' ', text.ToString().Split([' ', '\n', '\r', '\t'], StringSplitOptions.RemoveEmptyEntries)).Replace(" ,", ",", StringComparison.Ordinal).Replace(" .", ".", StringComparison.Ordinal);
    }
}
