using System.Globalization;
using Catalogue.Domain.Teardowns;
using Catalogue.Domain.Text;

namespace Catalogue.Domain.Photos;

/// <summary>
/// Proposes where pictures belong in a teardown, by their names and those of their folders: <c>board-a_front_03.jpg</c>, <c>Mainboard/TOP (2).JPG</c>,
/// <c>step-04-open-case.jpg</c>, <c>Platine 2 Rückseite.png</c>, <c>主板正面.jpg</c>.
/// </summary>
/// <remarks>
/// The innermost name counts most. Boards that are there already are found by name, by the letter they are printed with and by likeness; other
/// names become new boards, once for all pictures that mean the same. Names are only read, never used as paths. House rule; docs/photo-folders.md.
/// </remarks>
public static class PhotoNames
{
    /// <summary>The longest path that is read, in UTF-16 code units; of a longer one the end counts.</summary>
    public const int MaxPathCharacters = 1000;

    private static readonly char[] Separators = ['/', '\\'];

    /// <summary>Proposes a place for each picture.</summary>
    /// <param name="paths">Paths as they came, folders parted by slashes of either kind. The file's ending is passed over.</param>
    /// <param name="boards">The boards that the teardown has.</param>
    /// <returns>
    /// One proposal a path, in the order in which the pictures would be added: the product, then each board with its top, bottom and details, then
    /// the steps, then what stays open; among equals in natural order.
    /// </returns>
    public static IReadOnlyList<PhotoProposal> Propose(IReadOnlyList<string> paths, IReadOnlyList<KnownBoard> boards)
    {
        ArgumentNullException.ThrowIfNull(paths);
        ArgumentNullException.ThrowIfNull(boards);
        var batch = new Batch(boards);
        var split = paths.Select(path => (Path: path, Parts: Split(path))).OrderBy(item => item.Path, NaturalOrder.Instance).ToList();
        var shared = SharedFolder(split.Select(item => item.Parts));
        return
        [
            .. split.Select(item => (Proposal: batch.Propose(item.Path, item.Parts, shared), item.Path))
                .OrderBy(item => batch.RankOf(item.Proposal.Place))
                .ThenBy(item => item.Proposal.Place.Subject)
                .ThenBy(item => item.Proposal.Place.Step ?? int.MaxValue)
                .ThenBy(item => item.Path, NaturalOrder.Instance)
                .Select(item => item.Proposal),
        ];
    }

    /// <summary>The name of the board that words speak of, such as a heading; null where they say no word for a board.</summary>
    public static string? BoardIn(string? words) => words is null ? null : NameReading.Of(words.Length <= MaxPathCharacters ? words : words[..MaxPathCharacters]).Board;

    private static string[] Split(string path)
    {
        var read = path.Length <= MaxPathCharacters ? path : path[^MaxPathCharacters..];
        var parts = read.Split(Separators, StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries);
        if (parts is not [.., var name])
            return [""];
        var dot = name.LastIndexOf('.');
        // A short ending only: in “DC-DC 5.1 V output” the dot ends nothing.
        if (dot > 0 && name.Length - dot <= 6 && !name.AsSpan(dot + 1).ContainsAny(" _-"))
            parts[^1] = name[..dot];
        return parts;
    }

    // The folder that all pictures lie in names the batch, not a board.
    private static string? SharedFolder(IEnumerable<string[]> all)
    {
        string? shared = null;
        foreach (var parts in all)
        {
            if (parts.Length < 2 || (shared is not null && shared != parts[0]))
                return null;
            shared = parts[0];
        }

        return shared;
    }

    private static string Quote(string? text) => $"“{Families.WellFormedText.Shorten(text ?? "", 80)}”";

    /// <summary>The boards as they are known while a batch of names is read.</summary>
    private sealed class Batch(IReadOnlyList<KnownBoard> boards)
    {
        private readonly List<(KnownBoard Board, BoardKey Key)> _known = [.. boards.OrderBy(board => board.Position).Select(board => (board, BoardKey.Of(board.Name)))];
        private readonly List<(string Name, BoardKey Key)> _new = [];

        /// <summary>Product first, then boards in their order, then steps, then what stays open.</summary>
        public int RankOf(PhotoPlace place) => place switch
        {
            { BoardId: { } id } => 1 + _known.FindIndex(known => known.Board.Id == id),
            { NewBoard: { } name } => 1 + _known.Count + _new.FindIndex(made => made.Name == name),
            { Subject: PhotoSubject.Product } => 0,
            { Subject: PhotoSubject.Step } => int.MaxValue - 1,
            _ => int.MaxValue,
        };

        public PhotoProposal Propose(string path, string[] parts, string? sharedFolder)
        {
            var found = new Found(this);
            for (var i = 0; i < parts.Length; i++)
                found.Take(NameReading.Of(parts[i]), isFolder: i < parts.Length - 1, isShared: i == 0 && parts.Length > 1 && parts[0] == sharedFolder);
            return new PhotoProposal(path, found.Place(), found.Reasons, found.Doubts);
        }

        /// <summary>The board that a name means, of those that are there.</summary>
        public (KnownBoard Board, string Why, string? Doubt)? Find(BoardKey key, string name, bool onlyByName)
        {
            if (key.IsEmpty)
            {
                return onlyByName || _known.Count == 0 ? null
                    : (_known[0].Board, $"says a board and not which: board {LetterOf(_known[0].Board)} is {(_known.Count == 1 ? "the only one" : "the first")}",
                        _known.Count == 1 ? null : "The name does not say which board.");
            }

            if (_known.Find(known => known.Key.Equals(key)).Board is { } same)
                return (same, $"is board {LetterOf(same)}, {same.Name}", null);
            if (onlyByName)
                return null;
            if (key.Place is { } place && _known.Find(known => known.Board.Position == place).Board is { } counted)
            {
                return key.IsLetter
                    ? (counted, $"is board {LetterOf(counted)}, {counted.Name}", null)
                    : (counted, $"is board {LetterOf(counted)}, the {Ordinal(place + 1)} of the record", $"{Quote(name)} is taken for {counted.Name} because of its number.");
            }

            var likeness = _known.Select(known => known.Key.Likeness(key)).DefaultIfEmpty(0).Max();
            var likely = _known.Where(known => known.Key.IsLike(key) && known.Key.Likeness(key) >= likeness).ToList();
            return likely is [var one]
                ? (one.Board, $"is like the name of board {LetterOf(one.Board)}, {one.Board.Name}", $"{Quote(name)} is only like {Quote(one.Board.Name)}.")
                : null;
        }

        /// <summary>The name under which a board is added that is not there yet.</summary>
        public string Add(BoardKey key, string name)
        {
            if (_new.Find(made => made.Key.Equals(key)).Name is { } there)
                return there;
            _new.Add((name, key));
            return name;
        }

        /// <summary>The one board there is, counting those to be added; null where there are none or several.</summary>
        public KnownBoard? OnlyKnown => _known is [var one] && _new.Count == 0 ? one.Board : null;

        public static string LetterOf(KnownBoard board) => Board.Letter(board.Position);

        private static string Ordinal(int number) => string.Create(CultureInfo.InvariantCulture, $"{number}{(number % 100 is 11 or 12 or 13 ? "th" : (number % 10) switch { 1 => "st", 2 => "nd", 3 => "rd", _ => "th" })}");
    }

    /// <summary>What the parts of one path say, from the outermost folder to the file; each aspect is that of the innermost part that speaks of it.</summary>
    private sealed class Found(Batch batch)
    {
        private KnownBoard? _board;
        private string? _newBoard;
        private string? _boardDoubt;
        private bool _isProduct;
        private bool _isStep;
        private int? _step;
        private bool? _isTop;
        private bool _isDetail;
        private bool _bothSides;
        private string? _caption;
        private string? _strayProductWord;

        public List<string> Reasons { get; } = [];

        public List<string> Doubts { get; } = [];

        public void Take(NameReading reading, bool isFolder, bool isShared)
        {
            var where = isFolder ? "The folder's name: " : "";
            // In a folder of steps the file's name says what is done, to boards too.
            var isOfStep = _isStep && !isFolder;
            var hasBoard = reading.Board is not null && !isOfStep;
            if (hasBoard)
            {
                SetBoard(reading.BoardKey, reading.Board!, where, onlyByName: false, isPlain: false, mayAdd: true);
            }
            else if (reading.PlainName is { } plain && !isOfStep)
            {
                // Of a plain word the file's own name makes a board only beside a side; a folder makes one of its own, unless it holds the whole batch.
                var mayAdd = isFolder ? !isShared : reading.IsNameBeforeSide && _board is null && _newBoard is null;
                hasBoard = SetBoard(reading.BoardKey, plain, where, onlyByName: !mayAdd, isPlain: true, mayAdd);
            }

            if (reading.StepWord is { } stepWord)
            {
                (_isStep, _isProduct) = (true, false);
                _step = reading.Step ?? _step;
                Reasons.Add($"{where}{Quote(stepWord)} says a step{(reading.Step is { } number ? string.Create(CultureInfo.InvariantCulture, $", number {number}") : "")}.");
            }
            else if (reading.ProductWord is { } productWord && !hasBoard)
            {
                if (isFolder || (_board is null && _newBoard is null && !_isStep))
                {
                    (_isProduct, _board, _newBoard, _boardDoubt) = (true, null, null, null);
                    Reasons.Add($"{where}{Quote(productWord)} says the product from outside.");
                }
                else if (!_isStep)
                {
                    _strayProductWord = productWord;
                }
            }

            if (reading.SideWord is { } side && reading.StepWord is null && (!_isStep || isFolder))
            {
                (_isTop, _bothSides) = (reading.IsTop, reading.HasBothSides);
                if (!_isProduct)
                    Reasons.Add($"{where}{Quote(side)} says the {(reading.IsTop ? "top" : "bottom")}.");
            }

            if (reading.DetailWord is { } detail && !_isStep)
            {
                _isDetail = true;
                Reasons.Add($"{where}{Quote(detail)} says a detail.");
            }

            if (isFolder)
                return;
            _caption = _isStep ? reading.WholeCaption : hasBoard && reading.PlainName is not null ? reading.CaptionWithoutName : reading.Caption;
            if (!_isStep)
                return;
            if (reading.StepWord is null && reading.LeadingNumber is { } counted)
            {
                _step = counted;
                Reasons.Add(string.Create(CultureInfo.InvariantCulture, $"The number at the start counts the steps: {counted}."));
            }

            if (_step is null)
                Doubts.Add("The name does not say which step.");
        }

        public PhotoPlace Place()
        {
            if (_boardDoubt is not null && !_isProduct)
                Doubts.Add(_boardDoubt);
            if (_isStep)
                return new PhotoPlace(PhotoSubject.Step, _board?.Id, _newBoard, _step, _caption);
            if (_bothSides)
                Doubts.Add("The name speaks of both sides.");
            if (_strayProductWord is { } stray && _isTop is null && !_isDetail)
                Doubts.Add($"{Quote(stray)} may mean the product, not the board.");
            if (_board is not null || _newBoard is not null)
                return new PhotoPlace(SubjectOnBoard(), _board?.Id, _newBoard, null, _caption);
            if (_isProduct)
                return new PhotoPlace(PhotoSubject.Product, null, null, null, _caption);
            if (_isTop is { } top)
                return WithoutBoard(top);
            if (!_isDetail || Reasons.Count == 0)
                Doubts.Add(_caption is null ? "The name says nothing of what the picture shows." : "The name does not say whether the picture shows the product, a board or a step.");
            return new PhotoPlace(PhotoSubject.Detail, null, null, null, _caption);
        }

        private PhotoSubject SubjectOnBoard()
        {
            // “Detail of the bottom” is a detail.
            if (_isDetail)
                return PhotoSubject.Detail;
            if (_isTop is { } top)
                return top ? PhotoSubject.BoardTop : PhotoSubject.BoardBottom;
            Doubts.Add("No side is named: proposed as a detail.");
            return PhotoSubject.Detail;
        }

        private PhotoPlace WithoutBoard(bool top)
        {
            if (batch.OnlyKnown is { } only)
            {
                Doubts.Add($"No board is named; board {Batch.LetterOf(only)}, {only.Name}, is the only one there is.");
                return new PhotoPlace(_isDetail ? PhotoSubject.Detail : top ? PhotoSubject.BoardTop : PhotoSubject.BoardBottom, only.Id, null, null, _caption);
            }

            Doubts.Add("A side is named and no board: taken for the product from outside.");
            return new PhotoPlace(PhotoSubject.Product, null, null, null, _caption ?? (top ? "Front" : "Back"));
        }

        private bool SetBoard(BoardKey key, string name, string where, bool onlyByName, bool isPlain, bool mayAdd)
        {
            if (batch.Find(key, name, onlyByName) is var (board, why, doubt))
            {
                (_board, _newBoard, _boardDoubt, _isProduct) = (board, null, doubt, false);
                Reasons.Add($"{where}{Quote(name)} {why}.");
                return true;
            }

            if (!mayAdd)
                return false;
            (_board, _newBoard, _isProduct) = (null, batch.Add(key, name), false);
            _boardDoubt = isPlain ? $"{Quote(name)} is taken for the name of a board." : null;
            Reasons.Add($"{where}{Quote(name)} {(isPlain ? "is no word that is known, so it may name a board" : "names a board that is not there yet")}.");
            return true;
        }
    }
}
