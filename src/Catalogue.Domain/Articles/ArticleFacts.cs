using System.Globalization;
using Catalogue.Domain.Photos;
using Catalogue.Domain.Products;
using Catalogue.Domain.Text;

namespace Catalogue.Domain.Articles;

/// <summary>What must be known to open a teardown, as far as an article or a person says it. Null is not said; nothing is guessed.</summary>
/// <param name="Title">The title of the record.</param>
/// <param name="Brand">The brand.</param>
/// <param name="Name">The product's name.</param>
/// <param name="Model">The model designation.</param>
/// <param name="Category">The category.</param>
/// <param name="Date">The day that the article gives; may be missing.</param>
public sealed record ArticleFacts(string? Title, string? Brand, string? Name, string? Model, ProductCategory? Category, DateOnly? Date)
{
    private static readonly string[] BrandKeys = ["brand", "maker", "manufacturer", "vendor", "marke", "hersteller", "marque", "fabricant", "marca", "fabricante", "品牌", "ブランド", "メーカー"];
    private static readonly string[] NameKeys = ["product", "name", "product_name", "device", "produkt", "gerät", "geraet", "produktname", "produit", "appareil", "producto", "aparato", "产品", "產品", "製品"];
    private static readonly string[] ModelKeys = ["model", "model_number", "modell", "modèle", "modele", "modelo", "typ", "型号", "型號", "型番"];
    private static readonly string[] CategoryKeys = ["category", "kind", "kategorie", "art", "catégorie", "categorie", "categoría", "categoria", "类别", "分类", "カテゴリ", "種類"];
    private static readonly string[] DateKeys = ["date", "datum", "fecha", "日期", "日付"];
    private static readonly string[] DateForms = ["yyyy-MM-dd", "yyyy/MM/dd", "yyyy.MM.dd", "d.M.yyyy", "yyyy年M月d日"];

    private static readonly (ProductCategory Category, string[] Words)[] CategoryWords =
    [
        (ProductCategory.Charger, ["charger", "chargers", "wall charger", "usb charger", "ladegerat", "ladegeraet", "chargeur", "cargador", "充电器", "充電器"]),
        (ProductCategory.PowerBank, ["power bank", "powerbank", "power banks", "batterie externe", "bateria externa", "移动电源", "行動電源", "充电宝", "モバイルバッテリー"]),
        (ProductCategory.PowerStation, ["power station", "portable power station", "powerstation", "station electrique portable", "estacion de energia", "户外电源", "ポータブル電源"]),
        (ProductCategory.Adapter, ["adapter", "power adapter", "netzteil", "adaptateur", "adaptateur secteur", "adaptador", "适配器", "電源アダプタ", "acアダプタ"]),
        (ProductCategory.Inverter, ["inverter", "wechselrichter", "onduleur", "inversor", "逆变器", "逆變器", "インバータ", "インバーター"]),
        (ProductCategory.Other, ["other", "sonstiges", "autre", "otro", "其他", "その他"]),
    ];

    /// <summary>The names of what is missing and must be asked for, by their codes: <c>brand</c>, <c>name</c>, <c>model</c>, <c>category</c>, <c>title</c>.</summary>
    public IReadOnlyList<string> Missing =>
    [
        .. new (string Code, bool IsThere)[] { ("brand", Brand is not null), ("name", Name is not null), ("model", Model is not null), ("category", Category is not null), ("title", Title is not null) }
            .Where(item => !item.IsThere).Select(item => item.Code),
    ];

    /// <summary>What front matter says.</summary>
    /// <param name="matter">The keys and values.</param>
    /// <param name="warnings">Gets what stands there and was not understood.</param>
    public static ArticleFacts Of(FrontMatter matter, ICollection<string> warnings)
    {
        ArgumentNullException.ThrowIfNull(matter);
        ArgumentNullException.ThrowIfNull(warnings);
        var category = First(matter, CategoryKeys);
        var known = CategoryOf(category);
        if (category is not null && known is null)
            warnings.Add($"“{Families.WellFormedText.Shorten(category, 80)}” is no category that is known; choose one.");
        var day = First(matter, DateKeys);
        var date = DayOf(day);
        if (day is not null && date is null)
            warnings.Add($"“{Families.WellFormedText.Shorten(day, 80)}” is no day that can be read for sure; write it as 2026-03-09.");
        return new ArticleFacts(First(matter, ["title", "titel", "titre", "título", "titulo", "标题", "標題", "タイトル"]), First(matter, BrandKeys), First(matter, NameKeys), First(matter, ModelKeys), known, date);
    }

    /// <summary>These facts where they are given, else those of another.</summary>
    public ArticleFacts Or(ArticleFacts other)
    {
        ArgumentNullException.ThrowIfNull(other);
        return new ArticleFacts(Title ?? other.Title, Brand ?? other.Brand, Name ?? other.Name, Model ?? other.Model, Category ?? other.Category, Date ?? other.Date);
    }

    /// <summary>The category that a code or a word in one of six languages names exactly, or null.</summary>
    public static ProductCategory? CategoryOf(string? text)
    {
        if (text is null)
            return null;
        var key = NameToken.Fold(NameToken.Compose(text)).Trim().Replace('_', ' ').Replace('-', ' ');
        return SnakeCase.TryParse<ProductCategory>(key.Replace(' ', '_'))
            ?? (Array.Find(CategoryWords, entry => entry.Words.Contains(key)) is { Words: not null } found ? found.Category : null);
    }

    /// <summary>A day written so that it can be read in one way only, or null. A time behind it is passed over.</summary>
    public static DateOnly? DayOf(string? text)
    {
        var day = text?.Split(['T', ' '], 2)[0];
        return DateOnly.TryParseExact(day, DateForms, CultureInfo.InvariantCulture, DateTimeStyles.None, out var read) && read.Year is >= 1950 and <= 2100 ? read : null;
    }

    private static string? First(FrontMatter matter, string[] keys) => keys.Select(matter.Value).FirstOrDefault(value => value is not null);
}
