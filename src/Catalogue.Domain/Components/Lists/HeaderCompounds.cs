namespace Catalogue.Domain.Components.Lists;

/// <summary>
/// Headers that languages without blanks between words are free to make: German by joining words, Chinese and Japanese by writing on. The end
/// of such a word says what it is, its beginning whose it is.
/// </summary>
internal static class HeaderCompounds
{
    private const int Longest = 40;

    private static readonly string[] NotThisBoards =
        ["mindest", "lager", "bestell", "verfugbar", "gebinde", "库存", "最小", "最低", "起订", "采购数", "订购数", "订货数", "在庫", "発注数", "注文数", "購入数", "価格", "单价"];

    private static readonly string[] Sellers =
        ["lieferant", "handler", "bestell", "lager", "供应商", "供货商", "经销商", "采购", "订购", "订货", "商品", "仕入", "購入", "発注", "注文", "サプライヤ"];

    private static readonly string[] Makers = ["herst", "制造", "生产", "厂", "原厂", "品牌", "メーカ", "製造"];

    private static readonly (ColumnMeaning Meaning, string[] Ends)[] Ends =
    [
        (ColumnMeaning.Designators, ["bezeichner", "referenz", "referenzen", "bauteilkennung", "betriebsmittelkennzeichen", "位号", "位号列表", "标号", "参照記号", "部品番地"]),
        (ColumnMeaning.Quantity, ["menge", "anzahl", "stuckzahl", "数量", "用量", "个数", "件数", "総数", "总数", "個数", "員数", "所要数", "必要数", "使用数"]),
        (ColumnMeaning.PartNumber,
            ["teilenummer", "teilenr", "typnummer", "型号", "型号规格", "料号", "部件号", "零件号", "零件编号", "型番", "品番", "型式", "型名", "形名", "部品番号"]),
        (ColumnMeaning.Maker, ["herstellername", "制造商", "制造商名称", "厂家", "厂商", "生产商", "メーカー", "メーカ", "メーカー名", "メーカ名", "製造業者", "製造元"]),
        (ColumnMeaning.Package, ["gehause", "gehauseform", "gehausetyp", "gehausebauform", "bauform", "封装", "封装类型", "封装尺寸", "パッケージ", "パッケージ名", "形状", "外形寸法"]),
        (ColumnMeaning.Remarks, ["bemerkung", "bemerkungen", "备注", "备注说明", "備考", "備考欄"]),
        (ColumnMeaning.Description, ["beschreibung", "描述", "描述信息", "说明", "説明"]),
        (ColumnMeaning.Value, ["wert", "规格参数", "技术参数", "标称值", "阻值", "容值", "元件值", "器件值", "値", "定数"]),
    ];

    // What ends so is a number, and a seller's or a maker's where its beginning says so.
    private static readonly string[] NumberEnds =
        ["nummer", "nr", "bezeichnung", "code", "编号", "编码", "货号", "料号", "型号", "订货号", "番号", "品番", "型番", "コード"];

    /// <summary>What a single word means by its beginning and its end; null where they say nothing.</summary>
    /// <param name="key">The header's key, without blanks.</param>
    public static HeaderWord? Find(string key)
    {
        if (key.Length is < 2 or > Longest || StartsWith(key, NotThisBoards) && EndsWith(key, Ends[1].Ends) || key.Contains("库存", StringComparison.Ordinal) || key.Contains("在庫", StringComparison.Ordinal))
        {
            return null;
        }
        var isNumber = EndsWith(key, NumberEnds);
        if (isNumber && StartsWith(key, Sellers))
        {
            return new HeaderWord(ColumnMeaning.SupplierPartNumber, 0);
        }
        if (isNumber && StartsWith(key, Makers))
        {
            return new HeaderWord(ColumnMeaning.PartNumber, 3);
        }
        foreach (var (meaning, ends) in Ends)
        {
            if (EndsWith(key, ends))
            {
                return new HeaderWord(meaning, 0);
            }
        }
        return null;
    }

    private static bool StartsWith(string key, string[] starts) => Array.Exists(starts, start => key.StartsWith(start, StringComparison.Ordinal));

    private static bool EndsWith(string key, string[] ends) => Array.Exists(ends, end => key.EndsWith(end, StringComparison.Ordinal));
}
