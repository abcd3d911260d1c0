using System.Net;
using System.Text;
using System.Text.Json;
using Catalogue.Testing.Components.Lists;

namespace Catalogue.Web.Tests.Api;

/// <summary>Component lists in the forms that labs have them.</summary>
/// <param name="site">The site.</param>
public sealed class ImportListTests(SiteFixture site) : IClassFixture<SiteFixture>
{
    [Fact]
    public async Task Workbook_AllVisibleSheets_AreImportedAndWhatIsOpenIsSaid()
    {
        var (slug, address) = await OpenAsync();
        var book = Book().Bytes();

        var dry = await site.Writer.UploadAsync($"{address}?dry_run=true", book, "list.xlsx", HttpStatusCode.OK);
        var report = await site.Writer.UploadAsync(address, book, "list.xlsx", HttpStatusCode.OK);

        Assert.Equal((4, 3), (report.GetProperty("rows").GetInt32(), report.GetProperty("imported").GetInt32()));
        Assert.Equal(dry.GetProperty("imported").GetInt32(), report.GetProperty("imported").GetInt32());
        Assert.Equal((JsonValueKind.Null, JsonValueKind.Null), (report.GetProperty("encoding").ValueKind, report.GetProperty("delimiter").ValueKind));
        Assert.Equal(
            [("main", 3, false, true), ("fan", 1, false, true), ("old", 1, true, false), ("notes", 0, false, false)],
            report.Items("sheets").Select(sheet => (sheet.Text("name"), sheet.GetProperty("rows").GetInt32(), sheet.GetProperty("hidden").GetBoolean(), sheet.GetProperty("imported").GetBoolean())));
        var rejected = Assert.Single(report.Items("rejected"));
        Assert.Equal(("main", 4), (rejected.Text("sheet"), rejected.GetProperty("row").GetInt32()));
        var reading = Assert.Single(report.Items("readings"));
        Assert.Equal(("main", 3, "MPN", "SEP2"), (reading.Text("sheet"), reading.GetProperty("row").GetInt32(), reading.Text("column"), reading.Items("readings").First().GetString()));
        Assert.Contains(report.Items("warnings"), warning => warning.GetString()!.StartsWith("Row 3 of “main”: the part number is the date 2 September 2024", StringComparison.Ordinal));
        var components = (await site.Reader.GetJsonAsync($"/api/v1/teardowns/{slug}?draft=true")).Items("boards").Single().Items("components").ToList();
        Assert.Equal(["U1", "U2", "M1"], components.Select(row => row.Text("designators")));
        Assert.Equal("2024-09-02", components[1].GetProperty("imported_row").Text("MPN"));
    }

    [Fact]
    public async Task Workbook_OneSheetAskedFor_IsImportedAlone()
    {
        var (_, address) = await OpenAsync();

        var report = await site.Writer.UploadAsync($"{address}?sheet=old", Book().Bytes(), "list.xlsx", HttpStatusCode.OK);

        Assert.Equal(1, report.GetProperty("imported").GetInt32());
        var problem = await site.Writer.UploadAsync($"{address}?sheet=spare", Book().Bytes(), "list.xlsx", HttpStatusCode.UnprocessableEntity);
        Assert.Contains("“main”, “fan”, “old”, “notes”", problem.Text("detail"), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Workbook_ThatIsNone_IsRefusedWithWhatWouldBeRight()
    {
        var (_, address) = await OpenAsync();
        foreach (var content in new[]
        {
            WorkbookBuilder.Archive([("readme.txt", Encoding.UTF8.GetBytes("hello"))]),
            Book().Bytes()[..900],
            new WorkbookBuilder().Part("xl/workbook.xml", "<!DOCTYPE x><workbook/>").Bytes(),
            [0xD0, 0xCF, 0x11, 0xE0, 0xA1, 0xB1, 0x1A, 0xE1],
        })
        {
            var problem = await site.Writer.UploadAsync(address, content, "list.xlsx", HttpStatusCode.UnprocessableEntity);
            Assert.Matches("[Ss]ave it", problem.Text("detail"));
        }
    }

    [Theory]
    [InlineData("text/plain", "Ref\tQty\tValue\nR1\t1\t10k\nC1\t2\t1µ\n", "\t")]
    [InlineData("text/csv", "Ref;Qty;Value\nR1;1;10k\nC1;2;1µ\n", ";")]
    [InlineData("text/tab-separated-values", "Ref\tQty\tValue\nR1\t1\t10k\nC1\t2\t1µ\n", "\t")]
    [InlineData("text/markdown", "Taken down:\n\n| Ref | Qty | Value |\n|---|--:|---|\n| R1 | 1 | 10k |\n| C1 | 2 | 1µ |\n", "|")]
    public async Task Body_ThatIsText_IsAList(string type, string text, string delimiter)
    {
        var (slug, address) = await OpenAsync();
        using var response = await site.Writer.PostAsync(address, new StringContent(text, Encoding.Latin1, type));
        var report = await Requests.ReadAsync(response, HttpStatusCode.OK);

        Assert.Equal((2, delimiter, "ISO-8859-1"), (report.GetProperty("imported").GetInt32(), report.Text("delimiter"), report.Text("encoding")));
        Assert.Equal(["10k", "1µ"], (await site.Reader.GetJsonAsync($"/api/v1/teardowns/{slug}?draft=true")).Items("boards").Single().Items("components").Select(row => row.Text("value")));
    }

    [Fact]
    public async Task Body_EncodingAndDelimiter_CanBeGiven()
    {
        var (_, address) = await OpenAsync();
        var content = Encoding.GetEncoding("ISO-8859-1").GetBytes("Ref:Qty:Value\nC1:2:1µ\n");

        var report = await site.Writer.UploadAsync($"{address}?delimiter=:&encoding=iso-8859-1", content, "list.txt", HttpStatusCode.OK);
        Assert.Equal((":", "ISO-8859-1"), (report.Text("delimiter"), report.Text("encoding")));

        await site.Writer.UploadAsync($"{address}?delimiter=colon", content, "list.txt", HttpStatusCode.BadRequest);
        await site.Writer.UploadAsync($"{address}?encoding=no-such", content, "list.txt", HttpStatusCode.UnprocessableEntity);
        using var other = await site.Writer.PostAsync(address, new StringContent("<p>R1</p>", Encoding.UTF8, "text/html"));
        await Requests.ReadAsync(other, HttpStatusCode.UnsupportedMediaType);
    }

    private static WorkbookBuilder Book()
    {
        var book = new WorkbookBuilder();
        book.Sheet("main").Row("Ref", "Qty", "MPN").Row("U1", 1, "MWK-721-TR").Row("U2", 1, WorkbookCell.Shown("45537", "d-mmm")).Row(null, 7);
        book.Sheet("fan").Row("Ref", "Qty", "Value").Row("M1", 1, "12 V");
        book.Sheet("old", hidden: true).Row("Ref", "Qty", "Value").Row("R9", 1, "10k");
        book.Sheet("notes").Row("Bought at a fair.");
        return book;
    }

    private async Task<(string Slug, string Address)> OpenAsync()
    {
        var made = await site.Writer.PostAsync("/api/v1/teardowns", new { product = new { brand = "Ferrowick", name = "Tor 600", model = "TOR600-EU", category = "power_station" }, title = "A 600 W station" });
        var board = (await site.Writer.PostAsync($"/api/v1/teardowns/{made.Text("slug")}/boards", new { name = "Main power board" })).Text("id");
        return (made.Text("slug"), $"/api/v1/boards/{board}/components/import");
    }
}
