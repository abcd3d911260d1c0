using Catalogue.Data.Components;
using Catalogue.Domain.Components;
using Catalogue.Lab.Workbench;

namespace Catalogue.Lab.Tests.Workbench;

public sealed class RowInHandTests
{
    [Fact]
    public void Saved_WhileMoreWasTyped_KeepsWhatIsInTheFields()
    {
        var component = Records.Fuse();
        var row = RowInHand.Of(component, Records.NoFamilies);
        row.Form.Note = "first";
        row.Edited();
        var edits = row.Edits;
        row.Form.Note = "second";
        row.Edited();

        row.Saved(edits, Records.Fuse(component.Id, version: 8, note: "first"), Records.NoFamilies);

        Assert.Equal("second", row.Form.Note);
        Assert.Equal(8u, row.Version);
        Assert.True(row.IsDue);
    }

    [Fact]
    public void Identified_WhileMoreWasTyped_KeepsTheFieldsAndTakesTheClass()
    {
        var component = Records.Fuse();
        component.FunctionClass = null;
        var row = RowInHand.Of(component, Records.NoFamilies);
        row.Form.Note = "typed meanwhile";
        row.Edited();

        row.Identified(Records.Fuse(component.Id, version: 8), Records.NoFamilies);

        Assert.Equal(("typed meanwhile", FunctionClass.BladeFuse, 8u), (row.Form.Note, row.Form.FunctionClass!.Value, row.Version));
        Assert.True(row.IsDue);
    }

    [Fact]
    public void Clashed_NothingIsDue_UntilItIsDecided()
    {
        var component = Records.Fuse();
        var row = RowInHand.Of(component, Records.NoFamilies);
        row.Form.Note = "mine";
        row.Edited();

        row.Clashed(Records.Fuse(component.Id, version: 9, note: "theirs"));

        Assert.False(row.IsDue);
        Assert.False(row.IsSettled);
        Assert.Equal([new RowInHand.Difference("Note", "mine", "theirs")], row.Differences([Records.Pack]));
    }

    [Fact]
    public void TakeTheirs_AfterClash_ShowsTheirsAndOwesNothing()
    {
        var component = Records.Fuse();
        var row = RowInHand.Of(component, Records.NoFamilies);
        row.Form.Note = "mine";
        row.Edited();
        row.Clashed(Records.Fuse(component.Id, version: 9, note: "theirs"));

        row.TakeTheirs(Records.NoFamilies);

        Assert.Equal("theirs", row.Form.Note);
        Assert.Equal(9u, row.Version);
        Assert.True(row.IsSettled);
    }

    [Fact]
    public void KeepMine_AfterClash_SavesOverTheVersionThatWasSeen()
    {
        var component = Records.Fuse();
        var row = RowInHand.Of(component, Records.NoFamilies);
        row.Form.Note = "mine";
        row.Edited();
        row.Clashed(Records.Fuse(component.Id, version: 9, note: "theirs"));

        row.KeepMine();

        Assert.True(row.IsDue);
        Assert.Equal(9u, row.Version);
        Assert.Equal("mine", row.Form.Note);
    }

    [Fact]
    public void Into_FieldsTheRowDoesNotShow_AreLeftAlone()
    {
        var row = RowInHand.Of(Records.Fuse(), Records.NoFamilies);
        row.Form.MarkingAsRead = "36";

        var written = row.Into(new ComponentForm { Description = "from the list", Family = "ab-12", MarkingAsRead = "35", FunctionClass = FunctionClass.Fuse });

        Assert.Equal("from the list", written.Description);
        Assert.Equal("ab-12", written.Family);
        Assert.Equal("36", written.MarkingAsRead);
        Assert.Equal(FunctionClass.BladeFuse, written.FunctionClass);
    }
}
