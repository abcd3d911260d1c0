using Catalogue.Domain.Photos;
using Catalogue.Domain.Teardowns;
using CsCheck;

namespace Catalogue.Domain.Tests.Photos;

public sealed class PhotoNamesTests
{
    private static readonly KnownBoard MainBoard = new(BoardId.New(), 0, "Main power board");
    private static readonly KnownBoard OutputBoard = new(BoardId.New(), 1, "USB output board");
    private static readonly KnownBoard DisplayBoard = new(BoardId.New(), 2, "Display");

    [Theory]
    [InlineData("board-a_front_03.jpg", "Board A", PhotoSubject.BoardTop, null, null)]
    [InlineData("board-b_back.jpg", "Board B", PhotoSubject.BoardBottom, null, null)]
    [InlineData("Mainboard/TOP (2).JPG", "Mainboard", PhotoSubject.BoardTop, null, null)]
    [InlineData("Platine 2 Rückseite.png", "Platine 2", PhotoSubject.BoardBottom, null, null)]
    [InlineData("Hauptplatine_Lötseite.jpg", "Hauptplatine", PhotoSubject.BoardBottom, null, null)]
    [InlineData("main_pcb_bottom_2.jpeg", "Main pcb", PhotoSubject.BoardBottom, null, null)]
    [InlineData("MainBoardTop.jpg", "MainBoard", PhotoSubject.BoardTop, null, null)]
    [InlineData("carte mère dessus.jpg", "Carte mère", PhotoSubject.BoardTop, null, null)]
    [InlineData("carte de charge verso.jpg", "Carte de charge", PhotoSubject.BoardBottom, null, null)]
    [InlineData("placa principal trasera 01.jpg", "Placa principal", PhotoSubject.BoardBottom, null, null)]
    [InlineData("主板正面.jpg", "主板", PhotoSubject.BoardTop, null, null)]
    [InlineData("电源板背面2.jpg", "电源板", PhotoSubject.BoardBottom, null, null)]
    [InlineData("制御基板_裏.jpg", "制御基板", PhotoSubject.BoardBottom, null, null)]
    [InlineData("メイン基板表面.jpg", "メイン基板", PhotoSubject.BoardTop, null, null)]
    [InlineData("board-a detail U3.jpg", "Board A", PhotoSubject.Detail, null, "U3")]
    [InlineData("mainboard_top_heatsink_removed.jpg", "Mainboard", PhotoSubject.BoardTop, null, "Heatsink removed")]
    [InlineData("label.jpg", null, PhotoSubject.Product, null, "Label")]
    [InlineData("Verpackung_hinten.png", null, PhotoSubject.Product, null, "Verpackung hinten")]
    [InlineData("étiquette.jpg", null, PhotoSubject.Product, null, "Étiquette")]
    [InlineData("铭牌.jpg", null, PhotoSubject.Product, null, "铭牌")]
    [InlineData("外観01.jpg", null, PhotoSubject.Product, null, "外観")]
    [InlineData("step-04-open-case.jpg", null, PhotoSubject.Step, 4, "Open case")]
    [InlineData("Schritt 12 Deckel lösen.jpg", null, PhotoSubject.Step, 12, "Deckel lösen")]
    [InlineData("étape 3 - retirer le capot.jpg", null, PhotoSubject.Step, 3, "Retirer le capot")]
    [InlineData("paso_2_abrir_la_caja.jpg", null, PhotoSubject.Step, 2, "Abrir la caja")]
    [InlineData("第3步 拆壳.jpg", null, PhotoSubject.Step, 3, "拆壳")]
    [InlineData("手順5.jpg", null, PhotoSubject.Step, 5, null)]
    [InlineData("steps/02 lift board.jpg", null, PhotoSubject.Step, 2, "Lift board")]
    public void Propose_NamesThatSayIt_AreSure(string path, string? board, PhotoSubject subject, int? step, string? caption)
    {
        var proposal = Assert.Single(PhotoNames.Propose([path], []));

        Assert.Equal(path, proposal.Path);
        Assert.Equal(new PhotoPlace(subject, null, board, step, caption), proposal.Place);
        Assert.True(proposal.IsSure, string.Join(' ', proposal.Doubts));
        Assert.NotEmpty(proposal.Reasons);
    }

    [Theory]
    [InlineData("DC-DC bottom.webp", "DC-DC", PhotoSubject.BoardBottom, null)]
    [InlineData("Mainboard/IMG_2031.jpg", "Mainboard", PhotoSubject.Detail, null)]
    [InlineData("Mainboard/label.jpg", "Mainboard", PhotoSubject.Detail, "Label")]
    [InlineData("IMG_2031.jpg", null, PhotoSubject.Detail, null)]
    [InlineData("20240503_101112.jpg", null, PhotoSubject.Detail, null)]
    [InlineData("heatsink.jpg", null, PhotoSubject.Detail, "Heatsink")]
    [InlineData("front.jpg", null, PhotoSubject.Product, "Front")]
    [InlineData("board-a top and bottom.jpg", "Board A", PhotoSubject.BoardBottom, null)]
    [InlineData("", null, PhotoSubject.Detail, null)]
    [InlineData("///", null, PhotoSubject.Detail, null)]
    [InlineData("\ud83d.jpg", null, PhotoSubject.Detail, null)]
    public void Propose_NamesThatLeaveItOpen_SayWhatIsUnsure(string path, string? board, PhotoSubject subject, string? caption)
    {
        var proposal = Assert.Single(PhotoNames.Propose([path], []));

        Assert.Equal((subject, board), (proposal.Place.Subject, proposal.Place.NewBoard));
        if (path is not "\ud83d.jpg")
            Assert.Equal(caption, proposal.Place.Caption);
        Assert.False(proposal.IsSure);
    }

    [Theory]
    [InlineData("main power board top.jpg", 0, true)]
    [InlineData("Board A top.jpg", 0, true)]
    [InlineData("pcb_b_front.jpg", 1, true)]
    [InlineData("USB-output-board bottom.jpg", 1, true)]
    [InlineData("display front.jpg", 2, true)]
    [InlineData("display/IMG_0003.jpg", 2, false)]
    [InlineData("Platine 2 Rückseite.png", 1, false)]
    [InlineData("Mainboard/TOP (2).JPG", 0, false)]
    [InlineData("power board top.jpg", 0, false)]
    [InlineData("ouput board top.jpg", 1, false)]
    public void Propose_NameOfABoardThatIsThere_IsThatBoard(string path, int position, bool isSure)
    {
        KnownBoard[] boards = [MainBoard, OutputBoard, DisplayBoard];

        var proposal = Assert.Single(PhotoNames.Propose([path], boards));

        Assert.Equal((boards[position].Id, null), (proposal.Place.BoardId, proposal.Place.NewBoard));
        Assert.Equal(isSure, proposal.IsSure);
    }

    [Fact]
    public void Propose_NameLikeNoBoard_IsANewOne()
    {
        var proposal = Assert.Single(PhotoNames.Propose(["inverter board top.jpg"], [MainBoard, OutputBoard]));

        Assert.Equal(new PhotoPlace(PhotoSubject.BoardTop, null, "Inverter board"), proposal.Place);
    }

    [Fact]
    public void Propose_SideWithoutBoard_GoesToTheOnlyOne()
    {
        Assert.Equal(MainBoard.Id, PhotoNames.Propose(["top.jpg"], [MainBoard])[0].Place.BoardId);
        Assert.Null(PhotoNames.Propose(["top.jpg"], [MainBoard, OutputBoard])[0].Place.BoardId);
    }

    [Fact]
    public void Propose_SpellingsOfOneBoard_AreOneNewBoard()
    {
        var proposals = PhotoNames.Propose(["Hauptplatine/oben.jpg", "main_board_bottom.jpg", "placa principal detalle.jpg", "主板/IMG_1.jpg"], []);

        Assert.Single(proposals.Select(proposal => proposal.Place.NewBoard).Distinct());
    }

    [Fact]
    public void Propose_FolderThatHoldsEverything_NamesNoBoard()
    {
        var proposals = PhotoNames.Propose(["Tor 600 photos/label.jpg", "Tor 600 photos/IMG_1.jpg", "Tor 600 photos/DC-DC/IMG_2.jpg"], []);

        Assert.Equal([null, "DC-DC", null], proposals.Select(proposal => proposal.Place.NewBoard));
    }

    [Fact]
    public void Propose_Batch_IsOrderedAsItWouldBeAdded()
    {
        var proposals = PhotoNames.Propose(
            ["step 10.jpg", "IMG_1.jpg", "board b top.jpg", "board a bottom.jpg", "board a top 10.jpg", "board a top 9.jpg", "step 2.jpg", "box.jpg"], []);

        Assert.Equal(
            ["box.jpg", "board a top 9.jpg", "board a top 10.jpg", "board a bottom.jpg", "board b top.jpg", "step 2.jpg", "step 10.jpg", "IMG_1.jpg"],
            proposals.Select(proposal => proposal.Path));
    }

    [Fact]
    public void Propose_AnyPaths_GivesEachAPlaceThatTheRecordTakes() =>
        Gen.String[Gen.OneOf(Gen.Char, Gen.Char["board_- /\\.()12a板面表ü"]), 0, 40].Array[0, 12].Sample(paths =>
        {
            var proposals = PhotoNames.Propose(paths, [MainBoard, DisplayBoard]);

            Assert.Equal(paths.Order(StringComparer.Ordinal), proposals.Select(proposal => proposal.Path).Order(StringComparer.Ordinal));
            Assert.All(proposals, proposal =>
            {
                Assert.False(proposal.Place.BoardId is not null && proposal.Place.NewBoard is not null);
                Assert.True(proposal.Place.NewBoard is null or { Length: > 0 and <= Board.MaxNameLength });
                Assert.True(proposal.Place.Caption is null or { Length: > 0 and <= Photo.MaxCaptionLength });
                Assert.True(proposal.Place.Step is null || proposal.Place.Subject == PhotoSubject.Step);
                Assert.True(proposal.IsSure || proposal.Doubts.All(doubt => doubt.Length > 0));
            });
        });

    [Fact]
    public void Propose_LongNames_TakeTimeInStep()
    {
        var paths = Enumerable.Range(0, 2000).Select(i => $"{new string('板', 200)}/{new string('a', 2000)} {i}.jpg").ToList();

        Assert.Equal(2000, PhotoNames.Propose(paths, [MainBoard]).Count);
    }
}
