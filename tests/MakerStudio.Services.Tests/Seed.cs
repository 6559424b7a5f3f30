using MakerStudio.Core.Blending;
using MakerStudio.Core.Materials;
using MakerStudio.Core.Quantities;
using MakerStudio.Core.Stock;
using MakerStudio.Services.Formulation;
using MakerStudio.Services.Inventory;
using MakerStudio.Services.Schema;
using Microsoft.EntityFrameworkCore;

namespace MakerStudio.Services.Tests;

/// <summary>
/// Puts materials, lots and released formulas on the shelf for tests of what comes after them.
/// Rows are written straight, but a lot always starts with its receipt in the ledger.
/// </summary>
internal static class Seed
{
    public static async Task<Guid> MaterialAsync(
        this TestStudio studio, string name, MaterialKind kind, StockUnit unit = StockUnit.Gram, decimal? density = null)
    {
        await using var db = studio.Db();
        var material = new Material { Name = name, Kind = kind, StockedIn = unit, Density = density, DensityAtCelsius = density is null ? null : 20m, CreatedAt = studio.Clock.GetUtcNow() };
        db.Materials.Add(material);
        await db.SaveChangesAsync();
        return material.Id;
    }

    /// <param name="quantity">Grams or pieces.</param>
    /// <param name="unitCost">Of one gram or one piece.</param>
    public static async Task<Guid> LotAsync(
        this TestStudio studio, Guid materialId, string code, decimal quantity, decimal unitCost,
        DateOnly? expires = null, DateOnly? retest = null, DateOnly? opened = null, LotStatus status = LotStatus.Released)
    {
        await using var db = studio.Db();
        var material = await db.Materials.SingleAsync(m => m.Id == materialId);
        var units = material.StockedIn == StockUnit.Gram ? StockAmount.OfGrams(quantity).Units : (long)quantity;
        var lot = new Lot
        {
            Code = code, MaterialId = materialId, ReceivedOn = new DateOnly(2026, 9, 24), OpenedOn = opened, ExpiresOn = expires, RetestOn = retest,
            Status = status, UnitCost = unitCost, Balance = new LotBalance { OnHand = units },
        };
        db.Lots.Add(lot);
        db.Movements.Add(new Movement
        {
            LotId = lot.Id, Kind = MovementKind.Receipt, Change = units, OnHandAfter = units, UnitCost = unitCost,
            PersonId = studio.Ana.PersonId, At = studio.Clock.GetUtcNow(), RequestId = Guid.CreateVersion7(),
        });
        await db.SaveChangesAsync();
        return lot.Id;
    }

    /// <summary>A released version 1 with lines in percent by weight, in order of addition.</summary>
    public static async Task<Guid> ReleasedFormulaAsync(
        this TestStudio studio, string name, string productKind, params (Guid Material, decimal Percent)[] lines)
    {
        await using var db = studio.Db();
        var version = new FormulaVersion
        {
            Number = 1, State = FormulaState.Draft, CureMinHours = 48, CureIdealHours = 336, ExpectedLossPercent = 1.5m, MeasuredDensity = 0.815m,
            CreatedById = studio.Ana.PersonId, CreatedAt = studio.Clock.GetUtcNow(), KeptAt = studio.Clock.GetUtcNow(),
        };
        foreach (var (line, index) in lines.Select((line, index) => (line, index)))
        {
            version.Lines.Add(new FormulaLine
            {
                Position = index + 1, MaterialId = line.Material, Amount = line.Percent, Basis = LineBasis.PercentByWeight, Fraction = line.Percent / 100m,
            });
        }

        var formula = new Formula { Name = name, ProductKind = productKind, CreatedAt = studio.Clock.GetUtcNow(), Versions = { version } };
        db.Formulas.Add(formula);
        await db.SaveChangesAsync();
        version.State = FormulaState.Released;
        version.ReleasedAt = studio.Clock.GetUtcNow();
        version.ReleasedById = studio.Ana.PersonId;
        await db.SaveChangesAsync();
        return version.Id;
    }

    /// <summary>On hand against the sum of movements, for every lot: must be empty.</summary>
    public static async Task<List<string>> DifferencesAsync(this TestStudio studio)
    {
        await using var db = studio.Db();
        return await db.Lots.Where(l => l.Balance!.OnHand != db.Movements.Where(m => m.LotId == l.Id).Sum(m => m.Change)).Select(l => l.Code).ToListAsync();
    }
}
