using MakerStudio.Core.Assessing;
using MakerStudio.Core.Blending;
using MakerStudio.Core.FlashPoints;
using MakerStudio.Core.Materials;
using MakerStudio.Core.Products;
using MakerStudio.Core.Quantities;
using MakerStudio.Core.Stock;
using MakerStudio.Core.Workings;
using MakerStudio.Services.Accounts;
using MakerStudio.Services.Formulation;
using MakerStudio.Services.Schema;
using Microsoft.EntityFrameworkCore;

namespace MakerStudio.Services.Inventory;

/// <summary>A liquid in the house: a material on the shelf, a batch that rests, bottles filled with it.</summary>
/// <param name="Where">Its page.</param>
/// <param name="Category">Null where it is not known.</param>
/// <param name="Millilitres">Null where no density is known.</param>
/// <param name="Why">What its category is from.</param>
public sealed record FlammableHolding(string Name, string Where, FlammableCategory? Category, long Milligrams, decimal? Millilitres, string Why);

/// <param name="Millilitres">Of those whose density is known.</param>
public sealed record FlammableTotal(FlammableCategory? Category, long Milligrams, decimal Millilitres, IReadOnlyList<string> WithoutDensity);

/// <summary>How the stock stands against one limit of the studio's.</summary>
/// <param name="Share">Of the limit; above 1 is over it.</param>
/// <param name="Litres">The limit, when it is stated by volume; else <paramref name="Kilograms"/>.</param>
/// <param name="LeftOut">What may count and could not be counted.</param>
public sealed record FlammableStanding(
    string Name, IReadOnlyList<FlammableCategory> Counts, decimal? Litres, decimal? Kilograms, decimal Share, IReadOnlyList<string> LeftOut, Source? From)
{
    public bool IsOver => Share > 1;

    public bool IsSurelyWithin => !IsOver && LeftOut.Count == 0;
}

/// <summary>Flammable liquid over the whole storeroom and the finished stock.</summary>
public sealed record FlammableStore(IReadOnlyList<FlammableHolding> Holdings, IReadOnlyList<FlammableTotal> Totals, IReadOnlyList<FlammableStanding> Standings)
{
    public IEnumerable<FlammableStanding> Over => Standings.Where(s => s.IsOver);
}

public sealed partial class Stock
{
    private const decimal MillilitresPerLitre = 1000m;
    private const decimal GramsPerKilogram = 1000m;
    private static readonly MaterialKind[] NoLiquids = [MaterialKind.Wax, MaterialKind.DryBotanical];

    /// <summary>Grams and litres of liquid by class, against the limits the studio entered.</summary>
    public async Task<FlammableStore> FlammableAsync(CancellationToken cancel = default)
    {
        await using var db = await store.ReadAsync(cancel);
        var limits = (await Markets.ReadAsync(db, await StudioDay.TodayAsync(db, store.Clock, cancel), cancel)).FlammableLimits;
        var holdings = (await OnTheShelfAsync(db, cancel)).Concat(await MixedAsync(db, cancel))
            .OrderBy(h => h.Holding.Category ?? (FlammableCategory)int.MaxValue).ThenByDescending(h => h.Holding.Milligrams).ToList();
        var found = FlammableOnHand.Of([.. holdings.Select(h => h.Liquid)], limits);
        return new(
            [.. holdings.Select(h => h.Holding)],
            [.. found.Sums.Select(s => new FlammableTotal(s.Category, s.Mass.Milligrams, s.Volume.Millilitres, s.WithoutDensity))],
            [.. found.Standings.Select(s => new FlammableStanding(
                s.Limit.Name, s.Limit.Counts, s.Limit.Volume?.Millilitres / MillilitresPerLitre, s.Limit.Mass?.Grams / GramsPerKilogram, s.Share, s.LeftOut, s.Limit.Source))]);
    }

    /// <summary>Lots of liquids, whatever their status: a lot on hold burns too.</summary>
    private static async Task<List<Held>> OnTheShelfAsync(StudioDb db, CancellationToken cancel)
    {
        var lots = await db.Lots.Where(l => l.Balance!.OnHand > 0 && l.Material!.StockedIn == StockUnit.Gram && !NoLiquids.Contains(l.Material.Kind))
            .GroupBy(l => l.MaterialId).Select(g => new { g.Key, OnHand = g.Sum(l => l.Balance!.OnHand) }).ToListAsync(cancel);
        var facts = await AssessedMaterials.OfAsync(db, lots.Select(l => l.Key), cancel);
        return [.. lots.Select(l =>
        {
            var material = facts.Materials[l.Key];
            var flammable = facts.Inside.ContainsKey(l.Key)
                ? FlammableClass.Of(new AssessedFormula(ProductKinds.Get(PreBlendKey), [.. facts.Lines(l.Key, l.Key, 1m, LineBasis.PercentByWeight)], MeasuredFacts.None))
                : FlammableClass.Of(material);
            return Held.Of(material.Name, $"/storeroom/materials/{l.Key}", flammable, Mass.FromMilligrams(l.OnHand), material.Density);
        })];
    }

    /// <summary>
    /// Batches of liquids that are not filled yet, and the bottles of those that are: on the studio's own shelf, alone or in
    /// a kit. What stands with a shop or at a stall is not in the house.
    /// </summary>
    private static async Task<List<Held>> MixedAsync(StudioDb db, CancellationToken cancel)
    {
        var batches = await db.Batches
            .Where(b => b.DiscardedAt == null && b.State != BatchState.Planned)
            .Select(b => new
            {
                b.Id, b.Code, b.ScentName, b.ProductKind, b.FillMilligrams, b.DensityUsed, b.FilledAt, Flash = b.FormulaVersion!.MeasuredFlashPoint,
                Lines = b.Lines.OrderBy(l => l.Position).Select(l => new { l.Id, l.MaterialId, l.Fraction }).ToList(),
                Mixed = db.Weighings.Where(w => w.BatchId == b.Id && w.ReversedAt == null).Sum(w => (long?)w.NetMilligrams) ?? 0,
                Units = (db.UnitBalances.Where(u => u.BatchId == b.Id && u.PlaceId == Place.StudioId).Sum(u => (int?)u.Count) ?? 0)
                    + (db.KitLots.SelectMany(k => k.Contents.Where(c => c.BatchId == b.Id).Select(c => (int?)(c.Count * k.Left))).Sum() ?? 0),
            })
            .Where(b => b.FilledAt == null ? b.Mixed > 0 : b.Units > 0).ToListAsync(cancel);
        var liquid = batches.Where(b => IsLiquid(ProductKinds.Get(b.ProductKind)) && (b.FilledAt is null || ProductKinds.Get(b.ProductKind).IsSold)).ToList();
        var facts = await AssessedMaterials.OfAsync(db, liquid.SelectMany(b => b.Lines.Select(l => l.MaterialId)), cancel);
        return [.. liquid.Select(b =>
        {
            var formula = new AssessedFormula(
                ProductKinds.Get(b.ProductKind), [.. b.Lines.SelectMany(l => facts.Lines(l.Id, l.MaterialId, l.Fraction, LineBasis.PercentByWeight))],
                new MeasuredFacts(FlashPoint: b.Flash is { } flash ? new Celsius(flash) : null));
            var mass = b.FilledAt is null ? Mass.FromMilligrams(b.Mixed) : Mass.FromMilligrams(b.Units * (b.FillMilligrams ?? 0));
            var what = b.FilledAt is null ? $"{b.Code} {b.ScentName}, not filled yet" : $"{b.Code} {b.ScentName}, {AmountWords.Amount(b.Units, StockUnit.Each)} filled, on the studio’s shelf";
            return Held.Of(what, b.FilledAt is null ? $"/bench/{b.Code}" : $"/finished/{b.Code}", FlammableClass.Of(formula), mass,
                Density.WherePossible(b.DensityUsed));
        }).Where(h => h.Holding.Milligrams > 0)];
    }

    /// <summary>Sold by volume, or a pre-blend; candles, melts and sachets are not.</summary>
    private static bool IsLiquid(ProductKind kind) => kind.NominalUnit == AmountUnit.Millilitre || !kind.IsSold;

    private const string PreBlendKey = "pre-blend";

    private sealed record Held(FlammableHolding Holding, LiquidHolding Liquid)
    {
        public static Held Of(string name, string where, FlammableClass flammable, Mass mass, Density? density) => new(
            new(name, where, flammable.Category, mass.Milligrams, density?.VolumeOf(mass).Millilitres, flammable.Why),
            new(name, mass, flammable.Category, density));
    }
}
