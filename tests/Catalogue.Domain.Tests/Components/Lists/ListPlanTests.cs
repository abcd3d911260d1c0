using System.Text;
using Catalogue.Domain.Components;
using Catalogue.Domain.Components.Lists;
using Catalogue.Domain.Teardowns;
using CsCheck;

namespace Catalogue.Domain.Tests.Components.Lists;

public sealed class ListPlanTests
{
    private const string Header = "Ref;Qty;Value;Package;Maker;MPN;Price\n";
    private static readonly RevisionId Revision = RevisionId.New();
    private static readonly BoardId Board = BoardId.New();

    [Fact]
    public void Of_AnEmptyBoard_AddsEveryRowAfterTheOther()
    {
        var plan = Plan("C1, C2;2;47uF/63V;radial;Ondrel;OND-1;0.1\nR1;1;10k;0603;;;0.01\n", []);

        Assert.Equal([PlannedRowAction.Add, PlannedRowAction.Add], plan.Rows.Select(row => row.Action));
        Assert.Equal([0, 1], plan.Rows.Select(row => row.Component.Position));
        Assert.Equal(["C1", "C2"], plan.Rows[0].Component.DesignatorList);
        Assert.Equal(3, plan.Rows.Sum(row => row.Ratings.Count));
        Assert.Empty(plan.Missing);
    }

    [Fact]
    public void Of_TheSameListAgain_ChangesNothing()
    {
        const string List = "C1, C2;2;47uF/63V;radial;Ondrel;OND-1;0.1\n;4;M3 screw;;;;0.02\n;4;M3 screw;;;;0.02\n";
        var board = Apply(Plan(List, []));

        var again = Plan(List, board);

        Assert.All(again.Rows, row => Assert.Equal(PlannedRowAction.Same, row.Action));
        Assert.Equal(board.Components.Select(component => component.Id), again.Rows.Select(row => row.Component.Id));
    }

    [Fact]
    public void Of_ACorrectedRow_UpdatesItsComponentAndItsRating()
    {
        var board = Apply(Plan("C1, C2;2;47uF/63V;radial;Ondrel;OND-1;0.1\n", []));

        var row = Assert.Single(Plan("C1, C2;2;47uF/50V;radial;Ondrel;OND-2;0.1\n", board).Rows);

        Assert.Equal(PlannedRowAction.Update, row.Action);
        Assert.Equal(board.Components[0].Id, row.Component.Id);
        Assert.Equal([("PartNumber", "OND-1", "OND-2"), ("Value", "47uF/63V", "47uF/50V")], row.Changes.Select(change => (change.Field, change.From!, change.To!)));
        var rating = Assert.Single(row.Ratings);
        Assert.Equal((PlannedRatingAction.Update, 63.0, 50.0), (rating.Action, rating.There!.Nominal, rating.Now!.Value.Nominal));
        Assert.True(row.HasNewPartNumber);
    }

    [Fact]
    public void Of_ARowWhoseKeptCellAloneMoved_ChangesNoField()
    {
        var board = Apply(Plan("R1;1;10k;0603;;;0.01\n", []));

        var row = Assert.Single(Plan("R1;1;10k;0603;;;0.02\n", board).Rows);

        Assert.Equal(PlannedRowAction.Update, row.Action);
        Assert.Empty(row.Changes);
        Assert.Empty(row.Ratings);
        Assert.Contains(row.Component.ImportedRow, cell => cell is { Header: "Price", Text: "0.02" });
    }

    [Fact]
    public void Of_WhatAPersonWroteSince_StaysAndIsSaidWhereTheListChanged()
    {
        var board = Apply(Plan("C1;1;47uF/63V;radial;Ondrel;OND-1;0.1\nC2;1;1uF/50V;0805;;;0.1\n", []));
        board.Components[0].Package = "radial, 10 mm";
        board.Components[0].Role = "bus capacitor";
        board.Components[1].Package = "0805 as measured";
        board.Ratings[1].Nominal = board.Ratings[1].Low = board.Ratings[1].High = 80;

        var plan = Plan("C1;1;47uF/50V;radial 12;Ondrel;OND-1;0.1\nC2;1;1uF/50V;0805;;;0.2\n", board);

        Assert.Equal(("radial, 10 mm", "bus capacitor"), (plan.Rows[0].Component.Package, plan.Rows[0].Component.Role));
        Assert.Equal([("Package", "radial, 10 mm", "radial 12")], plan.Rows[0].Kept.Select(kept => (kept.Field, kept.From!, kept.To!)));
        Assert.Equal(PlannedRatingAction.Keep, Assert.Single(plan.Rows[0].Ratings).Action);
        // The list never said another package of C2: nothing is to be said.
        Assert.Equal("0805 as measured", plan.Rows[1].Component.Package);
        Assert.Empty(plan.Rows[1].Kept);
    }

    [Fact]
    public void Of_ARowThatGainedOrLostPlaces_IsStillTheSameRow()
    {
        var board = Apply(Plan("C1-C4;4;100n;0402;;;1\nC7;1;100n;0402;;;1\n", []));

        var plan = Plan("C1-C3,C5;4;100n;0402;;;1\nC7;1;100n;0402;;;1\n", board);

        Assert.Equal([PlannedRowAction.Update, PlannedRowAction.Same], plan.Rows.Select(row => row.Action));
        Assert.Equal(["C1", "C2", "C3", "C5"], plan.Rows[0].Component.DesignatorList);
    }

    [Fact]
    public void Of_ARowThatWasSplitUp_IsTheSameOnceAndNewOnce()
    {
        var board = Apply(Plan("C1-C4;4;100n;0402;;;1\n", []));

        var plan = Plan("C1,C2;2;100n;0402;;;1\nC3,C4;2;220n;0402;;;1\n", board);

        Assert.Equal([PlannedRowAction.Update, PlannedRowAction.Add], plan.Rows.Select(row => row.Action));
    }

    [Fact]
    public void Of_ARowThatIsGoneFromTheList_LeavesItsComponentAndSaysSo()
    {
        var board = Apply(Plan("R1;1;10k;0603;;;1\nR2;1;22k;0603;;;1\n", []));
        board.Components.Add(new BoardComponent { RevisionId = Revision, Id = ComponentId.New(), BoardId = Board, Position = 9, Designators = "X9", DesignatorList = ["X9"] });

        var plan = Plan("R1;1;10k;0603;;;1\n", board);

        Assert.Equal("R2", Assert.Single(plan.Missing).Designators);
    }

    [Fact]
    public void Of_AComponentEnteredByHandAtTheSamePlace_IsFilledUpAndNeverOverwritten()
    {
        var entered = new BoardComponent { RevisionId = Revision, Id = ComponentId.New(), BoardId = Board, Designators = "U1", DesignatorList = ["U1"], MarkingAsRead = "QV318", Package = "QFN-24" };

        var row = Assert.Single(Plan("U1;1;QV318;QFN-32;Kestrin;QV318-TR;1\n", ([entered], [])).Rows);

        Assert.Equal(("QV318", "QFN-24", "QV318-TR", "Kestrin"), (row.Component.MarkingAsRead, row.Component.Package, row.Component.PartNumber, row.Component.MakerAsRead));
        Assert.Equal("Package", Assert.Single(row.Kept).Field);
    }

    [Fact]
    public void Of_TheSamePlacesWrittenAnotherWay_IsNoDifferenceToSay()
    {
        var entered = new BoardComponent { RevisionId = Revision, Id = ComponentId.New(), BoardId = Board, Designators = "C1,C2", DesignatorList = ["C1", "C2"] };

        var row = Assert.Single(Plan("C1, C2;2;100n;;;;1\n", ([entered], [])).Rows);

        Assert.Empty(row.Kept);
        Assert.Equal(("C1,C2", "100n"), (row.Component.Designators, row.Component.Value));
    }

    [Fact]
    public void Of_AColumnThatWasMistaken_FollowsTheListOnceAPersonSaysWhatItHolds()
    {
        const string List = "Ref;Code;Note\nU1;QV318-TR;controller\n";
        var board = Apply(Plan(Read(List), ([], [])));
        Assert.Null(board.Components[0].PartNumber);

        var corrected = Read(List, new() { ["code"] = ColumnMeaning.PartNumber, ["Note"] = ColumnMeaning.Role });
        var row = Assert.Single(Plan(corrected, board).Rows);

        Assert.Equal(("QV318-TR", "controller"), (row.Component.PartNumber, row.Component.Role));
        Assert.Equal(PlannedRowAction.Update, row.Action);
    }

    [Fact]
    public void Of_AnyListTwice_IsAllTheSameTheSecondTime()
    {
        var cell = Gen.OneOf(new[] { "", "10k", "47uF/63V", "100n", "U1", "C1, C2", "C1-C4", "QV318-TR", "0603", "?", "DNP", "3", "0", "x" }.Select(text => Gen.Const(text)).ToArray());
        Gen.Select(cell, cell, cell, cell, cell, cell).Array[0, 12].Sample(rows =>
        {
            var list = Header + "R99;1;1k;0402;;;1\n" + string.Concat(rows.Select(row => $"{row.Item1};{row.Item2};{row.Item3};{row.Item4};{row.Item5};{row.Item6};1\n"));
            if (ComponentList.Read(Encoding.UTF8.GetBytes(list), null) is not ComponentListReading.Read read)
                return;
            var plan = Plan(read, ([], []));
            var again = Plan(read, Apply(plan));
            Assert.Equal(plan.Rows.Count, again.Rows.Count(row => row.Action is PlannedRowAction.Same));
            Assert.Empty(again.Missing);
        });
    }

    private static ListPlan Plan(string rows, (List<BoardComponent> Components, List<Rating> Ratings) there) => Plan(Read(Header + rows), there);

    private static ListPlan Plan(string rows, List<BoardComponent> components) => Plan(Read(Header + rows), (components, []));

    private static ListPlan Plan(ComponentListReading.Read read, (List<BoardComponent> Components, List<Rating> Ratings) there) =>
        ListPlan.Of(Revision, Board, read.Rows, there.Components, there.Ratings.ToLookup(rating => rating.ComponentId));

    private static ComponentListReading.Read Read(string list, Dictionary<string, ColumnMeaning?>? columns = null) =>
        Assert.IsType<ComponentListReading.Read>(ComponentList.Read(Encoding.UTF8.GetBytes(list), null, new ComponentListOptions(Columns: columns)));

    private static (List<BoardComponent> Components, List<Rating> Ratings) Apply(ListPlan plan) =>
        ([.. plan.Rows.Select(row => row.Component)], [.. plan.Rows.SelectMany(row => row.Ratings.Select(rating => rating.Now!.Of(row.Component, "component list")))]);
}
