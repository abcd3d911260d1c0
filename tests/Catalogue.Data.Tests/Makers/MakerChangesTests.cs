using Catalogue.Data.Components;
using Catalogue.Data.Families;
using Catalogue.Data.Makers;
using Catalogue.Data.Teardowns;
using Catalogue.Domain.Makers;
using Catalogue.Testing;

namespace Catalogue.Data.Tests.Makers;

public sealed class MakerChangesTests : DatabaseTests
{
    private MakerChanges Changes => Database.Get<MakerChanges>();

    [Fact]
    public async Task Rename_ThereAndBack_KeepsTheAddressAndSwapsTheNames()
    {
        await FamilyOfAsync("Marnholt");
        Bench.Done(await Changes.RenameAsync("marnholt", "Marnholt Power", Bench.Reviewer));
        Assert.Equal("marnholt: Marnholt Power (Marnholt)", await NamesAsync());
        Bench.Done(await Changes.RenameAsync("marnholt", "MARNHOLT", Bench.Reviewer));
        Assert.Equal("marnholt: MARNHOLT (Marnholt Power)", await NamesAsync());
        // Another spelling of the same name is no former name.
        Bench.Done(await Changes.RenameAsync("marnholt", "Marnholt", Bench.Reviewer));
        Assert.Equal("marnholt: Marnholt (Marnholt Power)", await NamesAsync());
    }

    [Fact]
    public async Task Alias_ThatWasAdded_LeadsToTheMaker()
    {
        await FamilyOfAsync("Marnholt");
        Bench.Done(await Changes.AddAliasAsync("marnholt", "Марнхольт", Bench.Reviewer));
        Bench.Done(await Database.Get<FamilyChanges>().AddMakerAsync("qx1", "МАРНХОЛЬТ", Bench.Reviewer));
        Assert.Equal("marnholt: Marnholt (Марнхольт)", await NamesAsync());
        Bench.Done(await Changes.RemoveAliasAsync("marnholt", "марнхольт", Bench.Reviewer));
        Assert.Equal("marnholt: Marnholt ()", await NamesAsync());
    }

    [Theory]
    [InlineData("marnholt", "")]
    [InlineData("marnholt", "---")]
    [InlineData("marnholt", "N/A")]
    [InlineData("marnholt", "ulbrecken")]
    [InlineData("marnholt", "Ulb Recken Semi")]
    [InlineData("marnholt", "marn-holt")]
    public async Task Alias_ThatNamesNobodyOrSomebodyElse_IsRefused(string slug, string name)
    {
        await FamilyOfAsync("Marnholt");
        Bench.Done(await Database.Get<FamilyChanges>().AddMakerAsync("qx1", "Ulbrecken", Bench.Reviewer));
        Bench.Done(await Changes.AddAliasAsync("ulbrecken", "Ulbrecken Semi", Bench.Reviewer));
        Assert.Equal("name", Assert.IsType<ChangeOutcome<MakerId>.Refused>(await Changes.AddAliasAsync(slug, name, Bench.Reviewer)).Field);
    }

    [Fact]
    public async Task Alias_OfNoMaker_IsNotFound() => Assert.IsType<ChangeOutcome<MakerId>.NotFound>(await Changes.AddAliasAsync("nobody", "Nobody Ltd", Bench.Reviewer));

    private async Task FamilyOfAsync(string maker)
    {
        await Bench.ComponentAsync(await Bench.BoardAsync((await Bench.TeardownAsync()).Id), new ComponentForm { PartNumber = "QX1" });
        Bench.Done(await Database.Get<FamilyChanges>().AddMakerAsync("qx1", maker, Bench.Reviewer));
    }

    private Task<string> NamesAsync() => Database.ScalarAsync<string>("""
        select string_agg(m.slug || ': ' || m.name || ' (' || coalesce((select string_agg(a.name, ', ' order by a.name) from maker_aliases a where a.maker_id = m.id), '') || ')', '; ' order by m.slug)
        from makers m where m.slug <> 'ferrowick'
        """);
}
