using System.Collections.Frozen;
using System.Text;
using Catalogue.Domain.Families;

namespace Catalogue.Domain.Components.Lists;

/// <summary>What the words in a header mean, in English, German, French, Spanish, Chinese and Japanese.</summary>
internal static class HeaderWords
{
    private const int LongestHeader = 80;

    // Rank: among several columns of one meaning the highest is taken. Loose words (“Part”, “Item”) may mean a running number, a name or
    // designators: the cells below decide.
    private static readonly FrozenDictionary<string, HeaderWord> Words = Build();

    private static readonly FrozenSet<string> MakerWords = FrozenSet.ToFrozenSet(
        ["manufacturer", "manufacturers", "mfr", "mfg", "mfgr", "mfct", "manf", "manuf", "manufactured", "maker", "makers", "hersteller", "herst", "fabrikat",
        "produzent", "fabricant", "fabriquant", "constructeur", "manufacturier", "fabricante", "fabricantes", "productor", "producer", "brand", "marke", "marque",
        "marca", "fab"]);

    private static readonly FrozenSet<string> SellerWords = FrozenSet.ToFrozenSet(
        ["supplier", "suppliers", "vendor", "vendors", "distributor", "shop", "store", "seller", "lieferant", "lieferanten", "handler", "fournisseur",
        "distributeur",
        "proveedor", "prov", "distribuidor", "order", "ordering", "bestell", "best", "commande", "pedido", "catalog", "catalogue", "internal", "stock"]);

    private static readonly FrozenSet<string> NumberWords = FrozenSet.ToFrozenSet(
        ["part", "parts", "pn", "p", "no", "nr", "num", "number", "code", "partnumber", "partno", "ref", "reference", "referenz", "nummer", "teilenummer",
        "teil",
        "typ", "numero", "sku", "id", "article", "artikel", "artikelnummer", "codigo", "referencia", "#", "n", "teilenr", "art"]);

    private static readonly FrozenSet<string> QuantityWords = FrozenSet.ToFrozenSet(
        ["quantity", "qty", "qnty", "menge", "anzahl", "stuckzahl", "quantite", "quantites", "qte", "nbre", "cantidad", "cantidades", "cant", "cdad", "uds"]);

    // A quantity of another thing than this board.
    private static readonly FrozenSet<string> OtherQuantityWords = FrozenSet.ToFrozenSet(
        ["min", "minimum", "moq", "order", "ordered", "stock", "available", "reel", "spare", "spares", "price", "lager", "verfugbar", "commande", "pedido"]);

    private static readonly FrozenSet<string> ReferenceWords = FrozenSet.ToFrozenSet(
        ["ref", "refs", "reference", "references", "referenz", "referencia", "referencias", "repere", "reperes"]);

    private static readonly FrozenSet<string> BesideReferences = FrozenSet.ToFrozenSet(
        ["des", "no", "nr", "num", "number", "board", "circuit", "component", "composant", "componente", "schema", "schematic", "esquema", "pcb", "topologique", "list"]);

    private static readonly FrozenSet<string> DesignatorWords = FrozenSet.ToFrozenSet(
        ["designator", "designators", "refdes", "designador", "designadores", "designateur", "designateurs"]);

    private static readonly FrozenSet<string> PackageWords = FrozenSet.ToFrozenSet(
        ["package", "pkg", "case", "footprint", "gehause", "bauform", "boitier", "empreinte", "encapsulado", "huella"]);

    private static readonly FrozenSet<string> BesidePackages = FrozenSet.ToFrozenSet(
        ["pcb", "type", "typ", "tipo", "size", "style", "code", "body", "mounting", "name", "form", "dimensions", "smd", "library", "lib"]);

    // Words that only join others.
    private static readonly FrozenSet<string> Joints = FrozenSet.ToFrozenSet(["de", "du", "des", "del", "la", "le", "el", "of", "the", "d", "l", "by", "der"]);

    /// <summary>What a header cell means; null where it is not known.</summary>
    public static HeaderWord? Find(string header)
    {
        if (string.IsNullOrWhiteSpace(header) || header.Length > LongestHeader)
        {
            return null;
        }
        var key = Key(header);
        if (Words.TryGetValue(key, out var word))
        {
            return word;
        }
        return key.Contains(' ', StringComparison.Ordinal) ? Find(key.Split(' ').Where(part => !Joints.Contains(part)).ToArray()) : Find([key]) ?? HeaderCompounds.Find(key);
    }

    private static HeaderWord? Find(string[] words)
    {
        bool Has(FrozenSet<string> set) => Array.Exists(words, set.Contains);
        bool Only(FrozenSet<string> set, FrozenSet<string> beside) => Has(set) && Array.TrueForAll(words, word => set.Contains(word) || beside.Contains(word));
        if (words.Length == 0)
        {
            return null;
        }
        if (Array.Exists(words, word => word is "price" or "cost" or "preis" or "prix" or "precio" or "url" or "link") || words is [.., "stock"])
        {
            return null;
        }
        if (words is [.., "description" or "beschreibung" or "descripcion" or "descriptif"])
        {
            return new HeaderWord(ColumnMeaning.Description, 1);
        }
        if (Has(SellerWords) && Has(NumberWords))
        {
            return new HeaderWord(ColumnMeaning.SupplierPartNumber, 1);
        }
        if (Array.TrueForAll(words, word => SellerWords.Contains(word) || word is "name" or "nom" or "nombre"))
        {
            return new HeaderWord(ColumnMeaning.Supplier, 1);
        }
        if (Has(MakerWords) && Has(NumberWords))
        {
            return new HeaderWord(ColumnMeaning.PartNumber, 3);
        }
        if (Array.TrueForAll(words, word => MakerWords.Contains(word) || word is "name" or "nom" or "nombre"))
        {
            return new HeaderWord(ColumnMeaning.Maker, 1);
        }
        if (Has(QuantityWords) && !Has(OtherQuantityWords))
        {
            return new HeaderWord(ColumnMeaning.Quantity, QuantityWords.Contains(words[0]) ? 1 : 0);
        }
        if (Has(DesignatorWords))
        {
            return new HeaderWord(ColumnMeaning.Designators, 2);
        }
        if (Only(ReferenceWords, BesideReferences))
        {
            return new HeaderWord(ColumnMeaning.Designators, 1);
        }
        return words.Contains("footprint") || Only(PackageWords, BesidePackages) ? new HeaderWord(ColumnMeaning.Package, 1) : null;
    }

    /// <summary>Lower case, accents and punctuation gone, words apart (also <c>PartNumber</c>), what is in brackets and a number at the end left out.</summary>
    private static string Key(string header)
    {
        var text = WithoutBrackets(WellFormedText.Of(header).Normalize(NormalizationForm.FormKC).Trim());
        var apart = new StringBuilder(text.Length + 8);
        for (var i = 0; i < text.Length; i++)
        {
            if (i > 0 && char.IsUpper(text[i]) && char.IsLower(text[i - 1]))
            {
                apart.Append(' ');
            }
            apart.Append(char.IsLetterOrDigit(text[i]) || text[i] == '#' ? text[i] : ' ');
        }
        var plain = new StringBuilder(apart.Length);
        foreach (var character in apart.ToString().ToLowerInvariant().Normalize(NormalizationForm.FormD))
        {
            // Latin accents only: kana carry their voicing as combining marks too.
            if (character is not (>= '\u0300' and <= '\u036F'))
            {
                plain.Append(character);
            }
        }
        var words = plain.ToString().Normalize(NormalizationForm.FormC).Split(' ', StringSplitOptions.RemoveEmptyEntries).ToList();
        if (words.Count > 1 && words[^1].All(char.IsAsciiDigit))
        {
            words.RemoveAt(words.Count - 1);
        }
        if (words.Count > 0)
        {
            words[^1] = words[^1].Length > 3 ? words[^1].TrimEnd('0', '1', '2', '3', '4', '5', '6', '7', '8', '9') : words[^1];
        }
        return string.Join(' ', words);
    }

    private static string WithoutBrackets(string text)
    {
        var open = text.IndexOf('(', StringComparison.Ordinal);
        return open > 0 && text.EndsWith(')') ? text[..open] : text;
    }

    private static FrozenDictionary<string, HeaderWord> Build()
    {
        var words = new Dictionary<string, HeaderWord>(StringComparer.Ordinal);
        void Add(ColumnMeaning meaning, int rank, params ReadOnlySpan<string> keys) => AddAll(words, new HeaderWord(meaning, rank), keys);
        void AddLoose(ColumnMeaning meaning, int rank, params ReadOnlySpan<string> keys) => AddAll(words, new HeaderWord(meaning, rank, true), keys);

        Add(ColumnMeaning.Designators, 2, "designator", "designators", "refdes", "ref des", "reference designator", "reference designators", "part reference",
            "schematic reference", "schematic references", "component reference", "repere", "reperes", "位号", "元件位号", "标号", "位置号", "部品記号", "回路記号", "回路番号");
        Add(ColumnMeaning.Designators, 1, "reference", "references", "refs", "ref", "referenz", "referenzen", "bezeichner", "referencia", "referencias",
            "referencia esquema",
            "位置", "参考", "参照", "参照番号", "リファレンス", "記号");
        AddLoose(ColumnMeaning.Designators, 0, "designation", "designations", "bauteilbezeichnung", "kennung", "location", "kennzeichen", "positionsbezeichnung",
            "bauteil nr", "identificador", "ubicacion", "reperage", "位置编号", "参考编号", "実装位置", "配置番号", "シンボル", "ロケーション", "位置番号", "リファレンス番号", "部品位置");

        Add(ColumnMeaning.Quantity, 2, "# per board", "quantity per pcb", "qty per pcb", "quantity per board", "qty per board", "per board");
        Add(ColumnMeaning.Quantity, 1, "quantity", "qty", "qnty", "quant", "count", "pcs", "pieces", "amount", "menge", "anzahl", "anz", "stk", "stuck",
            "stuckzahl",
            "quantite", "qte", "nombre", "cantidad", "cant", "ctd", "uds", "unidades", "数量", "用量", "个数", "数目", "個数", "員数", "使用数", "数", "q ty", "units", "usage", "no of parts", "st", "bedarf", "nb", "numero de piezas", "ctdad", "点数");

        Add(ColumnMeaning.Value, 3, "value", "values", "val", "wert", "werte", "valeur", "valeurs", "valor", "valores", "值", "数值", "参数", "参数值", "値", "定数");
        Add(ColumnMeaning.Value, 1, "rating", "nominal", "marking", "nenngroße", "nenngrosse", "kennwert", "wert typ", "aufdruck", "valeur nominale",
            "caracteristiques", "caracteristique", "marquage", "valor nominal", "especificacion", "especificaciones", "caracteristicas", "marcado", "定格", "定格値", "公称値",
            "容量", "特性");
        Add(ColumnMeaning.Value, 2, "comment", "part value", "component value", "spec", "specs", "specification", "bauteilwert", "nennwert", "规格", "規格", "仕様");
        AddLoose(ColumnMeaning.Value, 1, "part", "parts", "component", "components", "name", "part name", "component name", "item name", "bauteil",
            "bauteile", "bauelement", "teil",
            "benennung", "composant", "composants", "piece", "nom", "componente", "componentes", "pieza", "nombre pieza", "元件", "元器件", "器件", "名称", "元件名称",
            "品名", "部品", "部品名");

        AddLoose(ColumnMeaning.Value, 0, "type", "typ", "tipo", "类型", "種類");

        Add(ColumnMeaning.PartNumber, 3, "mpn", "mfpn", "mfrpn", "mfgpn", "manufacturer part", "manufacturer pn", "manufacturer part number",
            "herstellernummer",
            "herstellerteilenummer", "hersteller typ", "制造商型号", "制造商料号", "制造商零件编号", "厂家型号", "厂商型号", "厂商料号", "メーカー型番", "メーカー品番", "メーカ型番");
        Add(ColumnMeaning.PartNumber, 2, "part number", "partnumber", "part no", "partno", "part nr", "part num", "part #", "part code", "pn", "p n",
            "component part number",
            "teilenummer", "teile nr", "teilenr", "typenbezeichnung", "numero de piece", "numero de pieza", "numero de parte", "型号", "型番", "型式", "品番",
            "部品番号", "部品型番", "零件编号");
        Add(ColumnMeaning.PartNumber, 1, "model", "model number", "n de piece", "no de parte", "n o de parte", "num de parte", "no de pieza", "料号", "物料编号", "物料编码", "device part number");

        Add(ColumnMeaning.Maker, 2, "manufacturer", "manufacturers", "manufacturer name", "mfr", "mfg", "mfgr", "maker", "hersteller", "fabricant",
            "fabricante", "制造商",
            "厂家", "厂商", "生产商", "生产厂家", "メーカー", "メーカ", "製造元", "製造者", "製造会社");
        Add(ColumnMeaning.Maker, 1, "brand", "make", "marke", "marque", "marca", "品牌", "ブランド", "原厂", "品牌 厂家", "hersteller marke");

        Add(ColumnMeaning.Package, 2, "package", "pkg", "case", "case package", "package case", "housing", "gehause", "bauform", "boitier", "encapsulado",
            "封装", "封装形式",
            "封装规格", "パッケージ", "外形", "形状");
        Add(ColumnMeaning.Package, 1, "footprint", "foot", "land pattern", "pattern", "size", "body size", "form factor", "empreinte", "huella", "gehaeuse", "baugroße",
            "baugrosse", "abmessung", "abmessungen", "taille", "encombrement", "format", "formato", "tamano", "paquete", "empaque", "empaquetado", "capsula", "carcasa",
            "尺寸", "サイズ", "ケース", "寸法", "フットプリント");

        Add(ColumnMeaning.Description, 2, "description", "desc", "descr", "part description", "beschreibung", "descripcion", "描述", "说明", "説明", "内容");
        Add(ColumnMeaning.Description, 1, "details", "bezeichnung", "artikelbezeichnung", "erlauterung", "libelle", "denomination", "intitule",
            "descriptif", "detalle", "detalles", "denominacion", "concepto", "詳細", "概要", "品名仕様");

        Add(ColumnMeaning.Role, 1, "category", "part type", "component type", "kategorie", "categorie", "categoria", "类别", "分类", "種別");
        Add(ColumnMeaning.Role, 2, "role", "function", "purpose", "circuit function", "used for", "use", "application", "verwendung", "verwendungszweck", "einsatz",
            "utilisation", "emploi", "uso", "proposito", "papel", "aplicacion", "作用", "电路功能", "役割", "目的", "回路機能", "rolle", "funktion", "aufgabe", "zweck", "fonction", "funcion", "功能",
            "用途", "機能");

        Add(ColumnMeaning.Fitted, 1, "assembly", "fitted", "fit", "populate", "populated", "mount", "mounted", "placed", "placement", "bestuckt",
            "bestuckung", "monte", "montado",
            "montaje", "贴装", "是否贴装", "实装", "実装");
        Add(ColumnMeaning.NotFitted, 1, "dnp", "dnf", "dni", "dnm", "nf", "do not populate", "do not fit", "do not place", "do not mount", "not fitted",
            "not populated",
            "exclude from board", "nicht bestuckt", "n b", "non monte", "no montar", "no montado", "不贴", "不装", "未実装", "do not install", "no pop", "nopop", "unpopulated", "unbestuckt", "nicht bestucken",
            "ne pas monter", "non cable", "non implante", "sin montar", "no poblar", "no colocar", "不焊", "空贴", "不安装", "未贴", "実装しない", "非実装", "不実装");

        Add(ColumnMeaning.Remarks, 1, "remark", "remarks", "note", "notes", "bemerkung", "bemerkungen", "anmerkung", "hinweis", "remarque", "remarques",
            "commentaire", "kommentar", "hinweise", "notiz", "notizen", "commentaires", "observation", "observations", "comentario", "comentarios",
            "observacion", "注释", "附注", "注意事项", "コメント", "メモ", "摘要", "注意",
            "observaciones", "notas", "nota", "备注", "備考", "注記");
        Add(ColumnMeaning.Variant, 1, "config", "configuration", "variant", "variants", "variante", "option", "配置", "バリアント");
        Add(ColumnMeaning.Supplier, 1, "supplier", "vendor", "distributor", "lieferant", "fournisseur", "proveedor", "供应商", "供货商", "仕入先", "購入先", "サプライヤー");
        Add(ColumnMeaning.SupplierPartNumber, 1, "sku", "supplier part", "order code", "order number", "order no", "stock code", "art nr", "bestellcode", "code article", "codigo de articulo", "pn prov", "bestellnr",
            "bestell nr", "bestellnummer",
            "artikelnummer", "artikel nr", "artikelnr", "reference fournisseur", "供应商编号", "供应商料号", "供应商型号", "商品编号", "订货号", "注文番号", "注文コード", "発注コード");
        AddLoose(ColumnMeaning.RunningNumber, 1, "id", "item", "items", "#", "no", "nr", "num", "number", "line", "row", "index", "pos", "position", "posicion", "s no",
            "sl no", "lfd nr",
            "laufende nummer", "zeile", "ligne", "linea", "序号", "项次", "编号", "项", "項番", "番号", "項目");
        Add(ColumnMeaning.Link, 1, "url", "link", "datasheet", "data sheet", "datenblatt", "fiche technique", "hoja de datos", "数据手册", "データシート");
        return words.ToFrozenDictionary(StringComparer.Ordinal);
    }

    private static void AddAll(Dictionary<string, HeaderWord> words, HeaderWord word, ReadOnlySpan<string> keys)
    {
        foreach (var key in keys)
        {
            words.Add(key, word);
        }
    }
}
