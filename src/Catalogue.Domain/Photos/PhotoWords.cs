using System.Collections.Frozen;

namespace Catalogue.Domain.Photos;

/// <summary>
/// The words by which people name pictures of a teardown, in English, German, French, Spanish, Chinese and Japanese. Keys are folded as
/// <see cref="NameToken.Key"/> is; a key of several words has single blanks between them.
/// </summary>
internal static class PhotoWords
{
    /// <summary>The most words in one key.</summary>
    public const int LongestPhrase = 3;

    private static readonly (PhotoWordKind Kind, string Words)[] Lists =
    [
        (PhotoWordKind.Board,
            "board|boards|pcb|pcbs|pcba|pwb|circuit board|printed circuit board|module board|platine|leiterplatte|"
            + "板|基板|電路板|电路板|线路板|線路板|印刷电路板|プリント基板|ボード|回路板"),
        (PhotoWordKind.BoardBeforeName, "carte|circuit imprime|plaque|placa|tarjeta|placa de circuito|circuito impreso"),
        (PhotoWordKind.Top,
            "top|tops|topside|front|frontside|upper|component side|top side|front side|top view|front view|"
            + "oben|oberseite|vorne|vorderseite|bestuckungsseite|bestueckungsseite|bauteilseite|draufsicht|"
            + "dessus|avant|recto|face avant|face superieure|vue de dessus|cote composants|"
            + "arriba|frente|anverso|frontal|delantera|superior|cara superior|vista superior|lado componentes|"
            + "正面|顶面|頂面|上面|顶层|表|表面|表側|おもて|元件面|部品面|前面"),
        (PhotoWordKind.Bottom,
            "bottom|bottoms|bottomside|back|backside|rear|lower|underside|solder side|bottom side|back side|rear side|bottom view|rear view|back view|"
            + "unten|unterseite|hinten|ruckseite|rueckseite|lotseite|loetseite|"
            + "dessous|arriere|verso|dos|face arriere|face inferieure|vue de dessous|cote soudures|"
            + "abajo|reverso|trasera|posterior|inferior|cara inferior|vista inferior|lado soldaduras|"
            + "背面|底面|反面|下面|底层|裏|裏面|裏側|うら|はんだ面|半田面|焊接面|后面|後面"),
        (PhotoWordKind.Product,
            "product|label|labels|rating label|nameplate|box|boxed|package|packaging|packing|packshot|outside|exterior|outer|case|casing|enclosure|housing|shell|unit|device|"
            + "unboxing|ports|overview|"
            + "produkt|etikett|typenschild|aufkleber|verpackung|karton|schachtel|gehause|gehaeuse|aussen|aussenansicht|gerat|geraet|ansicht|lieferumfang|"
            + "produit|etiquette|plaque signaletique|boite|boitier|emballage|exterieur|appareil|"
            + "producto|etiqueta|placa de caracteristicas|caja|carcasa|embalaje|aspecto|aparato|"
            + "产品|產品|标签|標籤|铭牌|銘牌|包装|包裝|外观|外觀|外箱|外壳|外殼|盒|盒子|整机|开箱|"
            + "製品|本体|ラベル|銘板|箱|外観|筐体|ケース|パッケージ|開封"),
        (PhotoWordKind.Detail,
            "detail|details|closeup|close up|macro|zoom|zoomed|marking|markings|"
            + "nahaufnahme|ausschnitt|makro|beschriftung|"
            + "gros plan|marquage|detalle|detalles|primer plano|marcado|"
            + "细节|細節|特写|特寫|局部|丝印|放大|詳細|拡大|アップ|刻印"),
        (PhotoWordKind.Step, "step|steps|schritt|schritte|etape|etapes|paso|pasos|步|步骤|步驟|ステップ|手順|工程"),
        (PhotoWordKind.Filler,
            "img|image|images|imag|pic|pics|picture|pictures|photo|photos|dsc|dscn|dscf|dcim|pxl|mvimg|screenshot|scan|whatsapp|at|the|of|and|a|an|view|side|copy|final|new|edit|edited|small|large|raw|jpg|"
            + "bild|bilder|foto|fotos|aufnahme|aufnahmen|kopie|von|der|die|das|und|seite|teardown|"
            + "vue|de|du|des|la|le|les|et|cote|imagen|imagenes|vista|del|el|lado|copia|"
            + "照片|图片|圖片|图|圖|写真|画像|第|的|の|号|張|张"),
    ];

    // What distinguishes boards beside letters and numbers, brought to one word.
    private static readonly (string Word, string Words)[] Synonyms =
    [
        ("main", "main|mother|haupt|principal|principale|mere|madre|主|メイン|マザー"),
        ("sub", "sub|daughter|tochter|neben|zusatz|secondary|secundaria|secondaire|fille|hija|副|子|サブ"),
        ("power", "power|netzteil|leistungs|puissance|potencia|alimentation|fuente|电源|電源|功率"),
        ("control", "control|controller|steuer|steuerungs|commande|controle|mando|控制|制御"),
        ("charge", "charge|charger|charging|lade|carga|充电|充電"),
        ("display", "display|anzeige|affichage|pantalla|显示|顯示|表示"),
        ("inverter", "inverter|wechselrichter|onduleur|inversor|逆变|逆變|インバータ|インバーター"),
        ("battery", "battery|akku|batterie|bateria|电池|電池|バッテリー"),
    ];

    // “Cardboard” is no board.
    private static readonly FrozenSet<string> NoBoards = FrozenSet.ToFrozenSet(["cardboard", "dashboard", "keyboard", "clipboard", "onboard", "aboard", "inboard", "skateboard"]);

    private static readonly string[] BoardEndings = ["board", "platine", "leiterplatte", "基板", "板"];

    private static readonly FrozenDictionary<string, PhotoWordKind> Kinds =
        Lists.SelectMany(list => list.Words.Split('|').Select(word => KeyValuePair.Create(word, list.Kind))).ToFrozenDictionary(StringComparer.Ordinal);

    private static readonly FrozenDictionary<string, string> Meanings =
        Synonyms.SelectMany(entry => entry.Words.Split('|').Select(word => KeyValuePair.Create(word, entry.Word))).ToFrozenDictionary(StringComparer.Ordinal);

    /// <summary>The words of scripts without blanks, the longest first: they are cut out of a run of characters.</summary>
    public static IReadOnlyList<string> Unspaced { get; } =
        [.. Kinds.Keys.Where(word => !char.IsAscii(word[0])).OrderByDescending(word => word.Length).ThenBy(word => word, StringComparer.Ordinal)];

    /// <summary>What a word or a phrase says; null where it is not known. A word that ends as one for boards does is one: <c>hauptplatine</c>.</summary>
    public static PhotoWordKind? KindOf(string key) =>
        Kinds.TryGetValue(key, out var kind) ? kind
        : !key.Contains(' ', StringComparison.Ordinal) && BoardEnding(key) is not null ? PhotoWordKind.Board
        : null;

    /// <summary>What a compound word says before its ending for boards: <c>haupt</c> of <c>hauptplatine</c>; null where the word is no such compound.</summary>
    public static string? BeforeBoard(string key) => BoardEnding(key) is { } ending ? key[..^ending.Length] : null;

    /// <summary>The word that stands for all of one meaning: <c>main</c> for <c>haupt</c>, <c>principal</c> and <c>主</c>; else the word itself.</summary>
    public static string Meaning(string key) => Meanings.GetValueOrDefault(key, key);

    /// <summary>True for a word that says board and nothing else.</summary>
    public static bool IsBoardWord(string key) => Kinds.GetValueOrDefault(key) is PhotoWordKind.Board or PhotoWordKind.BoardBeforeName;

    private static string? BoardEnding(string key) =>
        NoBoards.Contains(key) ? null : Array.Find(BoardEndings, ending => key.Length > ending.Length && key.EndsWith(ending, StringComparison.Ordinal));
}
