using Catalogue.Domain.Articles;
using CsCheck;

namespace Catalogue.Domain.Tests.Articles;

public sealed class ArticlePictureTests
{
    [Theory]
    [InlineData("photos/top%20side.jpg", "photos/top side.jpg")]
    [InlineData("./top.jpg", "top.jpg")]
    [InlineData("photos\\top.jpg", "photos/top.jpg")]
    [InlineData("top.jpg?size=2#x", "top.jpg")]
    [InlineData("a//b.png", "a/b.png")]
    [InlineData("100%.png", "100%.png")]
    public void Locate_AddressBesideTheArticle_IsAPath(string address, string path) => Assert.Equal((path, null), ArticlePicture.Locate(address));

    [Theory]
    [InlineData("../up.png", "leads out")]
    [InlineData("a/../../up.png", "leads out")]
    [InlineData("%2e%2e/up.png", "leads out")]
    [InlineData("..%2fup.png", "leads out")]
    [InlineData("..\\up.png", "leads out")]
    [InlineData("/etc/a.png", "root")]
    [InlineData("%2fetc/a.png", "root")]
    [InlineData("C:\\a.png", "root")]
    [InlineData("http://lab.example/a.png", "fetched")]
    [InlineData("HTTPS://lab.example/a.png", "fetched")]
    [InlineData("//lab.example/a.png", "fetched")]
    [InlineData("\\\\host\\a.png", "fetched")]
    [InlineData("data:image/png;base64,AAAA", "no file")]
    [InlineData("javascript:alert(1)", "no file")]
    [InlineData("file:///etc/a.png", "no file")]
    [InlineData("a%00.png", "no file")]
    [InlineData("", "no address")]
    [InlineData(null, "no address")]
    [InlineData("./", "no file")]
    public void Locate_AddressElsewhere_IsRefused(string? address, string why)
    {
        var (path, refusal) = ArticlePicture.Locate(address);

        Assert.Null(path);
        Assert.Contains(why, refusal, StringComparison.Ordinal);
    }

    [Fact]
    public void Locate_AnyAddress_NeverLeadsOut() => Gen.String[Gen.Char["./\\%2eEfF5cC:ab?#"], 0, 16].Sample(address =>
    {
        if (ArticlePicture.Locate(address).Path is { } path)
            Assert.DoesNotContain(path.Split('/'), part => part is ".." or "." or "");
    });
}
