using MakerStudio.Core.Assessing;
using MakerStudio.Core.Materials;
using MakerStudio.Services.Formulation;
using MakerStudio.Services.Inventory;
using MakerStudio.Services.Schema;
using Microsoft.EntityFrameworkCore;
using static MakerStudio.Services.Tests.Formulation.LibraryFixture;

namespace MakerStudio.Services.Tests.Formulation;

public class AssessedTests
{
    /// <summary>Water and ethanol half and half shrink: R 22 has 0.9138 g/mL at 50 % by weight and 20 °C, volumes added only 0.882.</summary>
    [Fact]
    public async Task Density_OfAlcoholAndWater_IsOneAndTheSameOnThePageInTheAssessmentAndInABatch()
    {
        await using var studio = await TestStudio.NewAsync();
        var ethanol = await StrongAsync(studio, 100m);
        var water = await studio.MaterialAsync("Water", MaterialKind.Water, density: 0.998m);
        var sheet = await studio.ReleasedAsync("Rinse", "room-spray-alcohol", Line(ethanol, 50), Line(water, 50));

        var worked = Worked.Of(sheet, sheet.Released!);
        var assessed = Assessment.Of(Assessed.Of(sheet, sheet.Released!)!, sheet.Choices)!;
        var planned = (await studio.Get<Batches>().PlanAsync(studio.Ana, new PlanBatch { FormulaVersionId = sheet.Released!.Id, TargetMilligrams = 1_000_000 })).Expect();

        Assert.Equal(0.9138m, decimal.Round(worked.Density!.Value.GramsPerMillilitre, 4));
        Assert.Equal(worked.Density, assessed.DensityAt20);
        await using var db = studio.Db();
        Assert.Equal(worked.Density.Value.GramsPerMillilitre, await db.Batches.Where(b => b.Id == planned.BatchId).Select(b => b.DensityUsed).SingleAsync());
    }

    [Fact]
    public async Task Parts_OfAPreBlendWithoutADensity_TakeThePreBlends()
    {
        await using var studio = await TestStudio.NewAsync();
        var fig = await studio.MaterialAsync("Fig fragrance oil", MaterialKind.FragranceOil, density: 0.98m);
        var resin = await studio.MaterialAsync("Resin", MaterialKind.Fixative);
        var accord = await studio.ReleasedAsync("Hearth accord", "pre-blend", Line(fig, 80), Line(resin, null));
        var made = accord.Formula.MakesMaterialId!.Value;
        await using (var db = studio.Db())
        {
            await db.Materials.Where(m => m.Id == made).ExecuteUpdateAsync(m => m.SetProperty(x => x.Density, 1.01m));
        }

        var started = await studio.NewFormulaAsync("Hearth");
        var sheet = await studio.KeepAsync(started.FormulaId, Line(made, 10), Line(await StrongAsync(studio, 99.5m), null));
        var parts = Assessed.Of(sheet, sheet.Draft!)!.Lines;

        Assert.Equal([0.98m, 1.01m], parts.Take(2).Select(p => p.Material.Density!.Value.GramsPerMillilitre));
        Assert.Equal([0.08m, 0.02m, 0.90m], parts.Select(p => p.Fraction));
        Assert.NotNull(Worked.Of(sheet, sheet.Draft!).Estimate);
    }

    /// <summary>A sheet is read once for each object: a material nothing was changed on must not be copied at every key.</summary>
    [Fact]
    public async Task Lines_OfADraft_AreTheMaterialsAsRead()
    {
        await using var studio = await TestStudio.NewAsync();
        var (fig, dpg, ethanol) = await studio.FigMaterialsAsync();
        var started = await studio.NewFormulaAsync("Fig");
        var sheet = await studio.KeepAsync(started.FormulaId, Line(fig, 12), Line(dpg, 5), Line(ethanol, null));

        Assert.All(Assessed.Of(sheet, sheet.Draft!)!.Lines, line => Assert.Same(sheet.Facts.Materials[line.Material.Id], line.Material));
    }

    [Fact]
    public async Task Of_LinesThatDoNotAddUp_IsNothing()
    {
        await using var studio = await TestStudio.NewAsync();
        var (fig, dpg, _) = await studio.FigMaterialsAsync();
        var started = await studio.NewFormulaAsync("Fig");

        var empty = await studio.SheetAsync(started.FormulaId);
        Assert.Null(Assessed.Of(empty, empty.Draft!));
        var off = await studio.KeepAsync(started.FormulaId, Line(fig, 12), Line(dpg, 5));
        Assert.Null(Assessed.Of(off, off.Draft!));
    }

    private static async Task<Guid> StrongAsync(TestStudio studio, decimal percentVolume)
    {
        var id = await studio.MaterialAsync("Ethanol", MaterialKind.Solvent, density: 0.79m);
        await using var db = studio.Db();
        await db.Materials.Where(m => m.Id == id).ExecuteUpdateAsync(m => m
            .SetProperty(x => x.AlcoholValue, percentVolume).SetProperty(x => x.AlcoholBasis, AlcoholBasis.PercentVolume));
        return id;
    }
}
