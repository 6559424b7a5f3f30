using MakerStudio.Core.Materials;
using MakerStudio.Services.Formulation;
using MakerStudio.Services.Labels;
using MakerStudio.Services.Schema;
using Microsoft.EntityFrameworkCore;

namespace MakerStudio.Services.Tests;

/// <summary>RS-1 with what a label needs: the studio's address, sheets of its materials, its size and labels in the drawer.</summary>
internal static class SeedLabels
{
    public const string Address = "https://studio.example/";

    public static async Task<Guid> LabelledBatchAsync(this TestStudio studio)
    {
        var batch = await studio.WorkedBatchAsync();
        await using var db = studio.Db();
        var house = await db.Studio.SingleAsync();
        (house.Address, house.Phone) = ("4 Quince Yard\n00000 Anytown", "000 000 0000");
        var materials = await db.Materials.ToDictionaryAsync(m => m.Name);
        var ethanol = materials["Ethanol 99.5 % vol, denatured"];
        (ethanol.Cas, ethanol.AlcoholValue, ethanol.AlcoholBasis, ethanol.FlashPointCelsius) = ("64-17-5", 99.5m, AlcoholBasis.PercentVolume, 13m);
        db.MaterialSafety.Add(Safety(ethanol, "Flam. Liq. 2 H225; Eye Irrit. 2 H319"));
        db.MaterialSafety.Add(Safety(materials["DPG"], "not classified"));
        var fig = Safety(materials["Fig fragrance oil"], "Skin Sens. 1 H317; Eye Irrit. 2 H319");
        fig.Composition.Add(new MaterialSubstance { MaterialId = fig.MaterialId, Position = 1, Name = "linalool", Cas = "78-70-6", LowPercent = 3m, HighPercent = 5m, Hazards = { Classes = "Skin Sens. 1B H317" } });
        db.MaterialSafety.Add(fig);
        var formula = await db.Formulas.SingleAsync(f => f.Name == "Fig");
        db.FormulaSizes.Add(new FormulaSize { FormulaId = formula.Id, Name = "100 mL", NominalMillilitres = 100m, OverfillMilligrams = 500 });
        await db.SaveChangesAsync();
        (await studio.Get<LabelStocks>().AddAsync(studio.Ana, NineOnA4())).Expect();
        return batch;
    }

    public static AddLabelStock NineOnA4() => new() { Name = "60 × 80 mm, 9 on A4", Width = 60m, Height = 80m, Columns = 3m, Rows = 3m, MarginLeft = 15m, MarginTop = 28.5m };

    public static async Task<Guid> FigAsync(this TestStudio studio)
    {
        await using var db = studio.Db();
        return await db.Formulas.Where(f => f.Name == "Fig").Select(f => f.Id).SingleAsync();
    }

    public static async Task<FormulaLabel> FigLabelAsync(this TestStudio studio, int? version = null) =>
        (await studio.Get<FormulaLabels>().FindAsync(await studio.FigAsync(), version))!;

    /// <summary>What a person sends who looked at the label just now and finds it right.</summary>
    public static KeepLabel Confirming(this FormulaLabel seen) => new()
    {
        FormulaVersionId = seen.Chosen!.Id, FormulaSizeId = seen.Size!.Id, StockId = seen.StockId, Ufi = "N1QV-R02N-J00M-WQD5", Confirms = true, Seen = seen.Mark, Version = seen.Version,
    };

    public static async Task<LabelKept> ConfirmFigAsync(this TestStudio studio) =>
        (await studio.Get<FormulaLabels>().KeepAsync(studio.Ana, (await studio.FigLabelAsync()).Confirming())).Expect();

    public static async Task ReplaceSheetAsync(this TestStudio studio, string material, string classes)
    {
        await using var db = studio.Db();
        var row = await db.MaterialSafety.SingleAsync(s => db.Materials.Any(m => m.Id == s.MaterialId && m.Name == material));
        row.Hazards.Classes = classes;
        await db.SaveChangesAsync();
    }

    /// <summary>Fig v2 with the lines of v1, released.</summary>
    public static async Task<Guid> SecondVersionAsync(this TestStudio studio)
    {
        await using var db = studio.Db();
        var first = await db.FormulaVersions.Include(v => v.Lines).SingleAsync(v => v.Formula!.Name == "Fig");
        var second = new FormulaVersion
        {
            FormulaId = first.FormulaId, Number = 2, State = FormulaState.Draft, CureMinHours = 48, CureIdealHours = 336, ExpectedLossPercent = 1.5m,
            CreatedById = first.CreatedById, CreatedAt = first.CreatedAt, KeptAt = first.KeptAt,
        };
        second.Lines.AddRange(first.Lines.Select(l => new FormulaLine { Position = l.Position, MaterialId = l.MaterialId, Amount = l.Amount, Basis = l.Basis, Fraction = l.Fraction }));
        db.FormulaVersions.Add(second);
        await db.SaveChangesAsync();
        (second.State, second.ReleasedAt, second.ReleasedById) = (FormulaState.Released, first.ReleasedAt, first.ReleasedById);
        await db.SaveChangesAsync();
        return second.Id;
    }

    private static MaterialSafety Safety(Material material, string classes) => new() { MaterialId = material.Id, Hazards = { Classes = classes } };
}
