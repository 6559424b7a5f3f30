using MakerStudio.Core.Blending;
using MakerStudio.Core.Materials;
using MakerStudio.Core.Quantities;
using MakerStudio.Core.Stock;
using MakerStudio.Services.Formulation;
using MakerStudio.Services.Inventory;
using MakerStudio.Services.Schema;
using static MakerStudio.Services.Tests.Formulation.LibraryFixture;

namespace MakerStudio.Services.Tests.Formulation;

public class ScaleTests
{
    [Fact]
    public async Task Scale_48BottlesOf100Millilitres_Makes4000Grams()
    {
        await using var studio = await TestStudio.NewAsync();
        var (sheet, size) = await FigOnTheShelfAsync(studio, ethanol: 5_000m);

        var scaled = (await studio.Get<Versions>().ScaleAsync(
            new ScaleWish { VersionId = sheet.Released!.Id, By = ScaleBy.Bottles, SizeId = size, Bottles = 48 })).Expect();

        // 48 × 82.0 / 0.985 = 3,995.94 → 4,000 g.
        Assert.Equal(Mass.FromGrams(82.0m), scaled.Fill);
        Assert.Equal(3_996m, decimal.Ceiling(scaled.Needed.Grams));
        Assert.Equal(Mass.FromGrams(4_000m), scaled.Total);
        Assert.Equal([480.0m, 200.0m, 3_320.0m], scaled.Lines.Select(l => l.Target.Grams));
        Assert.False(scaled.HasShortage);
        // 480 × 0.067374 + 200 × 0.0112 + 3,320 × 0.008644.
        Assert.Equal(63.2776m, scaled.MaterialsCost);
    }

    [Fact]
    public async Task Scale_WithLittleOnTheShelf_ListsWhatIsShortAndTheLargestBatch()
    {
        await using var studio = await TestStudio.NewAsync();
        var (sheet, size) = await FigOnTheShelfAsync(studio, ethanol: 1_660m, sprayers: 40);

        var scaled = (await studio.Get<Versions>().ScaleAsync(
            new ScaleWish { VersionId = sheet.Released!.Id, By = ScaleBy.Bottles, SizeId = size, Bottles = 48 })).Expect();

        Assert.True(scaled.HasShortage);
        Assert.Equal([0m, 0m, 1_660m], scaled.Lines.Select(l => l.Missing.Grams));
        Assert.Equal([(48L, 8L)], scaled.Parts.Select(p => (p.Needed, p.Missing)));
        Assert.Equal((Mass.FromGrams(2_000m), scaled.Lines[2].Material.Id), (scaled.Largest!.Total, scaled.Largest.LimitingMaterialId));
        // 2,000 × 0.985 / 82.0 = 24.02.
        Assert.Equal((24, 40L), (scaled.LargestBottles, scaled.PackagingFor));
    }

    [Fact]
    public async Task Scale_ToAMassAndToAllOfALot_SumsExactly()
    {
        await using var studio = await TestStudio.NewAsync();
        var (sheet, size) = await FigOnTheShelfAsync(studio, ethanol: 5_000m);
        var versions = studio.Get<Versions>();
        var mass = (await versions.ScaleAsync(new ScaleWish { VersionId = sheet.Released!.Id, By = ScaleBy.Mass, Grams = 33.333m, SizeId = size })).Expect();
        Assert.Equal(33.333m, mass.Lines.Sum(l => l.Target.Grams));
        Assert.Equal(0, mass.Bottles);

        var lots = await versions.LotsForAsync(sheet.Released.Id);
        var fig = lots.Single(l => l.Code == "P-1");
        var lot = (await versions.ScaleAsync(new ScaleWish { VersionId = sheet.Released.Id, By = ScaleBy.Lot, LotId = fig.LotId, SizeId = size })).Expect();

        // 600 g at 12 %: the lot is used up whole.
        Assert.Equal(Mass.FromGrams(5_000m), lot.Total);
        Assert.Equal(600m, lot.Lines[0].Target.Grams);
        Assert.Equal(60, lot.Bottles);
    }

    [Fact]
    public async Task Scale_LotsThatMayNotBeWeighedAndWhatOthersReserved_AreNotAvailable()
    {
        await using var studio = await TestStudio.NewAsync();
        var (sheet, _) = await FigOnTheShelfAsync(studio, ethanol: 4_000m);
        var version = sheet.Released!;
        var ethanol = version.Lines[2].MaterialId;
        await studio.LotAsync(ethanol, "E-8", 900m, 0.008m, status: LotStatus.Quarantine);
        await studio.LotAsync(ethanol, "E-9", 900m, 0.008m, expires: new DateOnly(2026, 10, 25));
        await PlannedAsync(studio, version, 1_000_000);

        var scaled = (await studio.Get<Versions>().ScaleAsync(new ScaleWish { VersionId = version.Id, By = ScaleBy.Mass, Grams = 4_000 })).Expect();

        var line = scaled.Lines[2];
        // 4,000 on hand less 830 of the planned batch.
        Assert.Equal((4_000_000, 3_170_000), (line.Material.OnHand, line.Material.Available));
        Assert.Equal(150m, line.Missing.Grams);
        Assert.Equal("E-1", line.Material.FirstLot);
    }

    [Fact]
    public async Task Scale_AskedTheWrongWay_IsRefusedInWords()
    {
        await using var studio = await TestStudio.NewAsync();
        var (sheet, size) = await FigOnTheShelfAsync(studio, ethanol: 100m);
        var id = sheet.Released!.Id;
        var versions = studio.Get<Versions>();

        Assert.IsType<NotAcceptable>((await versions.ScaleAsync(new ScaleWish { VersionId = id, By = ScaleBy.Bottles, SizeId = size, Bottles = 0 })).Refusal);
        Assert.IsType<NotAcceptable>((await versions.ScaleAsync(new ScaleWish { VersionId = id, By = ScaleBy.Mass, Grams = 0.0001m })).Refusal);
        Assert.IsType<NotAcceptable>((await versions.ScaleAsync(new ScaleWish { VersionId = id, By = ScaleBy.Mass, Grams = decimal.MaxValue })).Refusal);
        Assert.IsType<Because>((await versions.ScaleAsync(new ScaleWish { VersionId = id, By = ScaleBy.Lot, LotId = Guid.NewGuid() })).Refusal);
        Assert.IsType<NotFound>((await versions.ScaleAsync(new ScaleWish { VersionId = Guid.NewGuid(), By = ScaleBy.Mass, Grams = 1 })).Refusal);
        var unfinished = await studio.NewFormulaAsync("Empty");
        Assert.IsType<DoesNotAddUp>((await versions.ScaleAsync(new ScaleWish { VersionId = unfinished.VersionId, By = ScaleBy.Mass, Grams = 1 })).Refusal);
    }

    /// <summary>Fig v1 as in the worked example, measured at 0.815 g/mL, with 600 g fragrance and 1,000 g DPG.</summary>
    private static async Task<(FormulaSheet Sheet, Guid Size)> FigOnTheShelfAsync(TestStudio studio, decimal ethanol, int sprayers = 100)
    {
        var (fig, dpg, alcohol) = await studio.FigMaterialsAsync();
        var sprayer = await studio.MaterialAsync("Sprayer 18 mm", MaterialKind.Sprayer, StockUnit.Each);
        await studio.LotAsync(fig, "P-1", 600m, 0.067374m);
        await studio.LotAsync(dpg, "D-1", 1_000m, 0.0112m);
        await studio.LotAsync(alcohol, "E-1", ethanol, 0.008644m);
        await studio.LotAsync(sprayer, "S-1", sprayers, 0.42m);
        var sheet = await studio.ReleasedAsync("Fig", "room-spray-alcohol", Line(fig, 12), Line(dpg, 5), Line(alcohol, null));
        (await studio.Get<Versions>().MeasureAsync(studio.Ana, new MeasureVersion
        {
            VersionId = sheet.Released!.Id, Version = sheet.Released.Version, GramsPerMillilitre = 0.815m,
        })).Expect();
        var size = (await studio.Get<Sizes>().AddAsync(studio.Ana, new AddSize
        {
            FormulaId = sheet.Formula.Id, Name = "100 mL bottle", Nominal = 100, OverfillGrams = 0.5m, Parts = { new SizePart { MaterialId = sprayer } },
        })).Expect();
        return (await studio.SheetAsync(sheet.Formula.Id), size.SizeId);
    }

    private static async Task PlannedAsync(TestStudio studio, VersionRow version, long milligrams)
    {
        await using var db = studio.Db();
        var batch = new Batch
        {
            Code = "RS-1", FormulaVersionId = version.Id, ScentName = "Fig", VersionNumber = 1, ProductKind = "room-spray-alcohol",
            State = BatchState.Planned, TargetMilligrams = milligrams, PlannedById = studio.Bo.PersonId, PlannedAt = studio.Clock.GetUtcNow(),
        };
        batch.Lines.AddRange(version.Lines.Select((l, i) => new BatchLine
        {
            Position = i + 1, MaterialId = l.MaterialId, MaterialName = "m", Fraction = l.Fraction!.Value,
            PlannedMilligrams = (long)(milligrams * l.Fraction.Value), TargetMilligrams = (long)(milligrams * l.Fraction.Value),
        }));
        db.Batches.Add(batch);
        await db.SaveChangesAsync();
    }
}
