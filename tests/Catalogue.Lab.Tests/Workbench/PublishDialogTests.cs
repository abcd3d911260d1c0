using Catalogue.Lab.Workbench;

namespace Catalogue.Lab.Tests.Workbench;

public sealed class PublishDialogTests
{
    [Fact]
    public void MissingOf_BareRecord_NamesEachThingOnce()
    {
        var fuse = Records.Fuse();

        var missing = PublishDialog.MissingOf(Records.Record([fuse], [Records.UnknownHeadroom(fuse.Id)])).ToList();

        Assert.Contains("Board A, main power board: no photo.", missing);
        Assert.Contains("F1: the fuse's rated current; blocks a figure.", missing);
        Assert.Contains("No finding.", missing);
        Assert.Equal(missing.Count, missing.Distinct().Count());
    }

    [Fact]
    public void MissingOf_CalloutWithoutComponent_IsNamedByItsNumber()
    {
        var photo = Records.Photo();

        var missing = PublishDialog.MissingOf(Records.Record([], photos: [photo], callouts: [Records.Pin(photo.Id, 15, null)]));

        Assert.Contains("Callout 15: no component yet.", missing);
    }
}
