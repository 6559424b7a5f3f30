using MakerStudio.Core.Blending;
using MakerStudio.Core.Materials;
using MakerStudio.Core.Quantities;
using MakerStudio.Services.Formulation;
using static MakerStudio.Services.Tests.Formulation.LibraryFixture;

namespace MakerStudio.Services.Tests.Formulation;

public class LibraryTests
{
    public static TheoryData<string> Kept => new("<script>alert(1)</script>", "<img src=x onerror=alert(1)>", "[x](javascript:alert(1))", "' OR 1=1--", "Figue d’été, 無花果", "ค่ำคืน", "  Fig & Smoke ");

    public static TheoryData<string> Refused => new("", "   ", "Fig\0", "Fig \u202Egnp.exe", "Z" + new string('\u0301', 200), new string('x', 10_000_000), "Fig\r\nSmoke");

    [Theory]
    [MemberData(nameof(Kept))]
    public async Task New_HostileButReadableName_IsKeptLetterByLetter(string name)
    {
        await using var studio = await TestStudio.NewAsync();
        var started = await studio.NewFormulaAsync(name);
        Assert.Equal(name.Trim(), (await studio.SheetAsync(started.FormulaId)).Formula.Name);
        Assert.Equal(name.Trim(), Assert.Single((await studio.Get<Formulas>().ListAsync(LibraryShelf.Drafts, name)).Rows).Name);
    }

    [Theory]
    [MemberData(nameof(Refused))]
    public async Task New_UnreadableName_IsRefusedInWordsAndNothingIsKept(string name)
    {
        await using var studio = await TestStudio.NewAsync();
        var outcome = await studio.Get<Formulas>().NewAsync(studio.Ana, new NewFormula { Name = name, ProductKind = "room-spray-alcohol" });
        var refusal = Assert.IsType<NotAcceptable>(outcome.Refusal);
        Assert.True(refusal.Happened.Length < 200);
        Assert.Equal(0, (await studio.Get<Formulas>().ListAsync(LibraryShelf.InUse)).Formulas);
    }

    [Theory]
    [InlineData("%")]
    [InlineData("_")]
    [InlineData("\\")]
    [InlineData("' OR 1=1--")]
    [InlineData("(a+)+$")]
    public async Task List_SearchOfSigns_FindsOnlyTheSignsThemselves(string text)
    {
        await using var studio = await TestStudio.NewAsync();
        await studio.NewFormulaAsync("Fig");
        var page = await studio.Get<Formulas>().ListAsync(LibraryShelf.InUse, text);
        Assert.Equal(1, page.Formulas);
        Assert.Equal(0, page.Found);
    }

    [Fact]
    public async Task List_SearchOfWhatCannotBeWritten_IsAsIfNothingWereTyped()
    {
        await using var studio = await TestStudio.NewAsync();
        await studio.NewFormulaAsync("Fig");
        foreach (var text in new[] { "\0", ((char)0xDC00).ToString(), new string('\0', 1_000_000) })
        {
            Assert.Equal(1, (await studio.Get<Formulas>().ListAsync(LibraryShelf.InUse, text)).Found);
        }
    }

    [Fact]
    public async Task New_LoneSurrogate_IsRefused()
    {
        // Not a theory: the test runner's own files cannot carry half a character.
        await using var studio = await TestStudio.NewAsync();
        var outcome = await studio.Get<Formulas>().NewAsync(studio.Ana, new NewFormula { Name = "Fig" + (char)0xD800, ProductKind = "room-spray-alcohol" });
        Assert.IsType<NotAcceptable>(outcome.Refusal);
    }

    [Fact]
    public async Task List_ShowsReleasedAndDraftWithLoadCostAndState()
    {
        await using var studio = await TestStudio.NewAsync();
        var (fig, dpg, ethanol) = await studio.FigMaterialsAsync();
        await studio.LotAsync(fig, "P-1", 100m, 0.067374m);
        await studio.LotAsync(dpg, "D-1", 100m, 0.0112m);
        await studio.LotAsync(ethanol, "E-1", 100m, 0.008644m);
        var sheet = await studio.ReleasedAsync("Fig", "room-spray-alcohol", Line(fig, 12), Line(dpg, 5), Line(ethanol, null));
        (await studio.Get<Versions>().StartDraftAsync(studio.Ana, new StartDraft { FromVersionId = sheet.Released!.Id })).Expect();
        await studio.KeepAsync(sheet.Formula.Id, Line(fig, 20), Line(ethanol, null));
        var formulas = studio.Get<Formulas>();

        var rows = (await formulas.ListAsync(LibraryShelf.InUse, "fragrance")).Rows;

        Assert.Equal([(1, FormulaState.Released), (2, FormulaState.Draft)], rows.Select(r => (r.Number, r.State)));
        Assert.Equal([0.12m, 0.20m], rows.Select(r => r.Load!.OfTotal));
        Assert.True(rows[0].Load!.IsUsual);
        Assert.False(rows[1].Load!.IsUsual);
        // (0.12 × 0.067374 + 0.05 × 0.0112 + 0.83 × 0.008644) × 100 × 0.81826 by volume addition.
        Assert.Equal(1.2944m, decimal.Round(rows[0].CostPerHundred!.Value, 4));
        Assert.Equal(2, Assert.Single((await formulas.ListAsync(LibraryShelf.Drafts)).Rows).Number);
    }

    [Fact]
    public async Task PutAway_AndRename_KeepEverythingAndGuardTheName()
    {
        await using var studio = await TestStudio.NewAsync();
        var formulas = studio.Get<Formulas>();
        var fig = await studio.NewFormulaAsync("Fig");
        Assert.IsType<FormulaNameTaken>((await formulas.NewAsync(studio.Bo, new NewFormula { Name = "fig", ProductKind = "room-spray-alcohol" })).Refusal);
        await studio.NewFormulaAsync("Fig", "container-candle");

        (await formulas.PutAwayAsync(studio.Bo, new PutAwayFormula { FormulaId = fig.FormulaId })).Expect();
        Assert.Equal(fig.FormulaId, Assert.Single((await formulas.ListAsync(LibraryShelf.PutAway)).Rows).FormulaId);
        var away = (await studio.SheetAsync(fig.FormulaId)).Draft!;
        Assert.IsType<PutAwayFirst>((await studio.Get<Versions>().KeepAsync(studio.Ana, Keep(away))).Refusal);

        await studio.NewFormulaAsync("Fig");
        Assert.IsType<FormulaNameTaken>((await formulas.PutAwayAsync(studio.Ana, new PutAwayFormula { FormulaId = fig.FormulaId, TakeOut = true })).Refusal);
        var sheet = await studio.SheetAsync(fig.FormulaId);
        (await formulas.RenameAsync(studio.Ana, new RenameFormula { FormulaId = fig.FormulaId, Name = "Old Fig", Version = sheet.Formula.Version })).Expect();
        Assert.IsType<Stale>((await formulas.RenameAsync(studio.Bo, new RenameFormula { FormulaId = fig.FormulaId, Name = "Older Fig", Version = sheet.Formula.Version })).Refusal);
        (await formulas.PutAwayAsync(studio.Ana, new PutAwayFormula { FormulaId = fig.FormulaId, TakeOut = true })).Expect();
        Assert.Equal(3, (await formulas.ListAsync(LibraryShelf.InUse)).Formulas);
    }

    [Fact]
    public async Task Switch_ThatComesOutEven_SaysTheSameFormulaInTheNewWay()
    {
        await using var studio = await TestStudio.NewAsync();
        var (fig, dpg, ethanol) = await studio.FigMaterialsAsync();
        var sheet = await studio.KeepAsync((await studio.NewFormulaAsync("Fig")).FormulaId, Line(fig, 11.10m), Line(dpg, 5), Line(ethanol, null));
        var lines = sheet.Draft!.Lines;

        var parts = Assert.IsType<BasisSwitch.Same>(BasisSwitch.To(LineBasis.PartsByWeight, lines, sheet.Materials));
        Assert.Equal([2.22m, 1m, 16.78m], parts.Lines.Select(l => l.Amount));
        var back = Assert.IsType<BasisSwitch.Same>(BasisSwitch.To(LineBasis.PercentByWeight, parts.Lines, sheet.Materials));
        Assert.Equal([11.10m, 5m, 83.90m], back.Lines.Select(l => l.Amount));
        var grams = Assert.IsType<BasisSwitch.Same>(BasisSwitch.To(LineBasis.Grams, lines, sheet.Materials));
        Assert.Equal([11.10m, 5m, 83.90m], grams.Lines.Select(l => l.Amount));
    }

    [Fact]
    public async Task Switch_ThatDoesNotComeOutEven_KeepsTheNumbersAndOffersTheNearest()
    {
        await using var studio = await TestStudio.NewAsync();
        var (fig, _, ethanol) = await studio.FigMaterialsAsync();
        var sheet = await studio.KeepAsync((await studio.NewFormulaAsync("Fig")).FormulaId,
            Line(ethanol, 1, LineBasis.PartsByVolume), Line(fig, 1.5m, LineBasis.PartsByVolume));

        var not = Assert.IsType<BasisSwitch.NotExact>(BasisSwitch.To(LineBasis.PercentByWeight, sheet.Draft!.Lines, sheet.Materials));

        Assert.Equal([34.96m, 65.04m], not.Nearest!.Select(l => l.Amount));
        Assert.Equal([1m, 1.5m], not.AsTyped.Select(l => l.Amount));
    }

    [Fact]
    public async Task Sizes_AddAndRetire_ByVolumeOrByWeightAsTheKindIsSold()
    {
        await using var studio = await TestStudio.NewAsync();
        var jar = await studio.MaterialAsync("Jar 200 mL", MaterialKind.Bottle, StockUnit.Each);
        var soy = await studio.MaterialAsync("Soy wax", MaterialKind.Wax);
        var candle = await studio.NewFormulaAsync("Hearth Fig", "container-candle");
        var sizes = studio.Get<Sizes>();
        var add = new AddSize { FormulaId = candle.FormulaId, Name = "180 g jar", Nominal = 180, OverfillGrams = 1, Parts = { new SizePart { MaterialId = jar } } };
        var added = (await sizes.AddAsync(studio.Ana, add)).Expect();

        Assert.IsType<Because>((await sizes.AddAsync(studio.Bo, add with { RequestId = Guid.CreateVersion7(), Name = "180 G JAR" })).Refusal);
        Assert.IsType<Because>((await sizes.AddAsync(studio.Bo, new AddSize { FormulaId = candle.FormulaId, Name = "Loose", Nominal = 1, Parts = { new SizePart { MaterialId = soy } } })).Refusal);
        Assert.IsType<NotAcceptable>((await sizes.AddAsync(studio.Bo, new AddSize { FormulaId = candle.FormulaId, Name = "0", Nominal = -0.0m })).Refusal);
        (await sizes.RetireAsync(studio.Bo, new RetireSize { SizeId = added.SizeId })).Expect();
        var size = Assert.Single((await studio.SheetAsync(candle.FormulaId)).Sizes);
        Assert.Equal((null, 180_000L, 1_000L), (size.NominalMillilitres, size.NominalMilligrams, size.OverfillMilligrams));
        Assert.NotNull(size.RetiredAt);
    }
}
