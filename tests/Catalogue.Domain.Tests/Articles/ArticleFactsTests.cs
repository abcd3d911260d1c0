using Catalogue.Domain.Articles;
using Catalogue.Domain.Products;

namespace Catalogue.Domain.Tests.Articles;

public sealed class ArticleFactsTests
{
    [Theory]
    [InlineData("title: T\nbrand: B\nproduct: P\nmodel: M\ncategory: power_bank\ndate: 2024-05-03")]
    [InlineData("Titel: T\nMarke: B\nProdukt: P\nModell: M\nKategorie: Powerbank\nDatum: 3.5.2024")]
    [InlineData("titre: T\nmarque: B\nproduit: P\nmodèle: M\ncatégorie: Batterie externe\ndate: 2024-05-03T10:15:00Z")]
    [InlineData("título: T\nmarca: B\nproducto: P\nmodelo: M\ncategoría: Batería externa\nfecha: 2024/05/03")]
    [InlineData("标题: T\n品牌: B\n产品: P\n型号: M\n类别: 充电宝\n日期: 2024年5月3日")]
    [InlineData("タイトル: T\nメーカー: B\n製品: P\n型番: M\nカテゴリ: モバイルバッテリー\n日付: 2024-05-03")]
    public void Of_KeysInSixLanguages_SayTheSame(string keys)
    {
        var warnings = new List<string>();

        var facts = ArticleFacts.Of(FrontMatter.Of($"---\n{keys}\n---\n"), warnings);

        Assert.Equal(new ArticleFacts("T", "B", "P", "M", ProductCategory.PowerBank, new DateOnly(2024, 5, 3)), facts);
        Assert.Empty(facts.Missing);
        Assert.Empty(warnings);
    }

    [Fact]
    public void Of_WhatIsNotKnownForSure_IsAskedAndNotGuessed()
    {
        var warnings = new List<string>();

        var facts = ArticleFacts.Of(FrontMatter.Of("---\ncategory: gadget\ndate: 03/05/2024\n---\n"), warnings);

        Assert.Equal((null, null), (facts.Category, facts.Date));
        Assert.Equal(["brand", "name", "model", "category", "title"], facts.Missing);
        Assert.Equal(2, warnings.Count);
    }

    [Fact]
    public void Or_GivenFacts_CountMore()
    {
        var said = new ArticleFacts("T", "B", null, null, ProductCategory.Other, null);
        var given = new ArticleFacts(null, "C", "P", null, null, new DateOnly(2020, 1, 2));

        Assert.Equal(new ArticleFacts("T", "C", "P", null, ProductCategory.Other, new DateOnly(2020, 1, 2)), given.Or(said));
    }
}
