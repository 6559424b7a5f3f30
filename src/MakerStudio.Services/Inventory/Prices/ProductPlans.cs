using MakerStudio.Core.Blending;
using MakerStudio.Core.Prices;
using MakerStudio.Core.Quantities;
using MakerStudio.Services.Formulation;
using MakerStudio.Services.Schema;
using Microsoft.EntityFrameworkCore;

namespace MakerStudio.Services.Inventory;

/// <summary>Turns fillings and formulas into batches that can be costed anew. Quantities are grams and pieces.</summary>
internal static class ProductPlans
{
    public static async Task<IReadOnlyList<ProductRow>> ReadAsync(
        StudioDb db, Schema.Studio studio, PriceRulesRow rules, IReadOnlyList<ChannelRow> channels, DateOnly today, CancellationToken cancel)
    {
        var sizes = await ProductsAsync(db, cancel);
        var fills = await LastFillsAsync(db, sizes, cancel);
        var tags = await TagsAsync(db, today, cancel);
        var floors = await FloorsAsync(db, cancel);
        var ids = sizes.SelectMany(s => s.Lines.Select(l => l.MaterialId).Concat(s.Parts.Select(p => p.MaterialId)))
            .Concat(fills.Values.SelectMany(f => f.Materials.Select(m => m.MaterialId).Concat(f.Parts.Select(p => p.MaterialId)))).ToArray();
        var materials = await LineMaterials.OfAsync(db, ids, today, cancel);
        return [.. sizes.Select(size =>
        {
            var fill = fills.GetValueOrDefault(size.SizeId);
            var asked = channels.SelectMany(c => tags[(size.SizeId, c.Id)].Take(1).Where(t => t.Amount is not null).Select(t => new TagRow(c.Id, t.Amount!.Value, t.FromDay))).ToList();
            var prices = asked.Select(t => new TagInChannel(channels.Single(c => c.Id == t.ChannelId).Is, t.Amount)).ToList();
            var own = floors.GetValueOrDefault(size.SizeId);
            var context = new PlanContext(size, studio, materials, prices, own ?? rules.MarginFloor);
            var (now, whyNot) = Today(context, fill);
            return new ProductRow(
                size.SizeId, size.FormulaId, size.Scent, size.ProductKind, size.Name, size.VersionNumber, size.Millilitres,
                fill?.BatchCode, fill?.Row.At, fill is null ? null : LastFill(context, fill), now, whyNot, fill is null,
                own ?? rules.MarginFloor, own is not null, asked);
        })];
    }

    private sealed record PlanContext(
        ProductSize Size, Schema.Studio Studio, IReadOnlyDictionary<Guid, LineMaterial> Materials, IReadOnlyList<TagInChannel> Prices, decimal? Floor);

    private sealed record ProductSize(
        Guid SizeId, Guid FormulaId, string Scent, string ProductKind, string Name, int VersionNumber, decimal ExpectedLossPercent, decimal? Density,
        decimal? Millilitres, long? Milligrams, long OverfillMilligrams, IReadOnlyList<SharedLine> Lines, IReadOnlyList<CountedPart> Parts)
    {
        /// <summary>Grams in one unit; null where a volume has no density.</summary>
        public decimal? FillGrams => Milligrams is { } mg ? Mass.FromMilligrams(mg + OverfillMilligrams).Grams
            : Millilitres is { } ml && Density is { } density
                ? FillMass.Of(Volume.FromMillilitres(ml), new Density(density), Mass.FromMilligrams(OverfillMilligrams)).Grams
            : null;
    }

    private sealed record SharedLine(Guid MaterialId, decimal Fraction);

    private sealed record CountedPart(Guid MaterialId, int Count);

    private sealed record UsedMaterial(Guid MaterialId, string Name, decimal Grams, decimal UnitCost);

    private sealed record UsedPart(Guid MaterialId, string Name, long Pieces, decimal Cost);

    private sealed record LastFilling(string BatchCode, Fill Row, IReadOnlyList<UsedMaterial> Materials, IReadOnlyList<UsedPart> Parts);

    /// <summary>Sizes in use of formulas that are released and sold.</summary>
    private static async Task<List<ProductSize>> ProductsAsync(StudioDb db, CancellationToken cancel)
    {
        var rows = await (
            from size in db.FormulaSizes
            join formula in db.Formulas on size.FormulaId equals formula.Id
            where size.RetiredAt == null && formula.ArchivedAt == null && formula.MakesMaterialId == null
            let version = db.FormulaVersions.Where(v => v.FormulaId == formula.Id && v.State == FormulaState.Released).OrderByDescending(v => v.Number).FirstOrDefault()
            where version != null
            orderby formula.Name, size.NominalMillilitres, size.NominalMilligrams, size.Name
            select new
            {
                Size = size, Formula = formula, version.Number, version.ExpectedLossPercent, version.MeasuredDensity,
                Lines = version.Lines.OrderBy(l => l.Position).Select(l => new LineRow(l.Id, l.MaterialId, l.Amount, l.Basis, l.Method, l.Fraction, l.DensityUsed)).ToList(),
                Parts = size.Parts.Select(p => new CountedPart(p.MaterialId, p.CountPerUnit)).ToList(),
            }).AsSplitQuery().ToListAsync(cancel);
        var facts = await AssessedMaterials.OfAsync(db, rows.SelectMany(r => r.Lines.Select(l => l.MaterialId)), cancel);
        return [.. rows.Select(r => new ProductSize(
            r.Size.Id, r.Formula.Id, r.Formula.Name, r.Formula.ProductKind, r.Size.Name, r.Number, r.ExpectedLossPercent,
            r.MeasuredDensity ?? DensityOf(r.Lines, facts), r.Size.NominalMillilitres, r.Size.NominalMilligrams, r.Size.OverfillMilligrams,
            [.. r.Lines.Select(l => new SharedLine(l.MaterialId, l.Fraction ?? 0m))], r.Parts))];
    }

    private static decimal? DensityOf(List<LineRow> lines, Formulation.MaterialFacts facts)
    {
        var shares = lines.Select(l => new NormalisedLine(l.LineId, l.Fraction ?? 0m, (l.Fraction ?? 0m) * 100m)).ToArray();
        return Worked.DensityOf(Assessed.Lines([.. lines], shares, facts), null) is DensityResult.Known known ? known.Density.GramsPerMillilitre : null;
    }

    private static async Task<Dictionary<Guid, LastFilling>> LastFillsAsync(StudioDb db, List<ProductSize> sizes, CancellationToken cancel)
    {
        var newest = await db.Fills.Where(f => f.Batch!.SizeName != null)
            .GroupBy(f => new { f.Batch!.FormulaVersion!.FormulaId, f.Batch.SizeName })
            .Select(g => new { g.Key.FormulaId, g.Key.SizeName, BatchId = g.OrderByDescending(f => f.At).First().BatchId }).ToListAsync(cancel);
        var sizeOf = newest.Join(sizes, n => (n.FormulaId, n.SizeName!), s => (s.FormulaId, s.Name), (n, s) => (n.BatchId, s.SizeId)).ToDictionary(n => n.BatchId, n => n.SizeId);
        var batches = sizeOf.Keys.ToArray();
        var fills = await db.Fills.Where(f => batches.Contains(f.BatchId)).Include(f => f.Batch).ToListAsync(cancel);
        var weighed = (await (
            from weighing in db.Weighings
            join line in db.BatchLines on weighing.BatchLineId equals line.Id
            where batches.Contains(weighing.BatchId) && weighing.ReversedAt == null
            orderby line.Position, weighing.At
            select new { weighing.BatchId, line.MaterialId, line.MaterialName, weighing.NetMilligrams, weighing.UnitCost }).ToListAsync(cancel)).ToLookup(w => w.BatchId);
        var packed = (await (
            from movement in db.Movements
            where movement.FillId != null && batches.Contains(movement.BatchId!.Value)
            select new { movement.BatchId, movement.Lot!.MaterialId, movement.Lot.Material!.Name, movement.Change, movement.UnitCost }).ToListAsync(cancel)).ToLookup(m => m.BatchId!.Value);
        var lost = await LossesAsync(db, batches, cancel);
        return fills.ToDictionary(f => sizeOf[f.BatchId], f =>
        {
            var kept = 1m - Fills.LostPart(weighed[f.BatchId].Sum(w => w.NetMilligrams), lost.GetValueOrDefault(f.BatchId), f.ToFillingMilligrams);
            return new LastFilling(
                f.Batch!.Code, f,
                [.. weighed[f.BatchId].GroupBy(w => (w.MaterialId, w.UnitCost)).Select(g =>
                    new UsedMaterial(g.Key.MaterialId, g.First().MaterialName, kept * Mass.FromMilligrams(g.Sum(w => w.NetMilligrams)).Grams, g.Key.UnitCost))],
                [.. packed[f.BatchId].GroupBy(p => p.MaterialId).Select(g => new UsedPart(g.Key, g.First().Name, -g.Sum(p => p.Change), g.Sum(p => -p.Change * p.UnitCost)))]);
        });
    }

    private static Task<Dictionary<Guid, long>> LossesAsync(StudioDb db, Guid[] batches, CancellationToken cancel) =>
        db.BatchLosses.Where(l => batches.Contains(l.BatchId)).GroupBy(l => l.BatchId).Select(g => new { g.Key, Lost = g.Sum(l => l.Milligrams) })
            .ToDictionaryAsync(g => g.Key, g => g.Lost, cancel);

    private static async Task<ILookup<(Guid Size, Guid Channel), PriceTag>> TagsAsync(StudioDb db, DateOnly today, CancellationToken cancel) =>
        (await db.PriceTags.Where(t => t.FromDay <= today).OrderByDescending(t => t.FromDay).ThenByDescending(t => t.Id).ToListAsync(cancel))
            .ToLookup(t => (t.FormulaSizeId, t.SalesChannelId));

    private static async Task<Dictionary<Guid, decimal?>> FloorsAsync(StudioDb db, CancellationToken cancel) =>
        (await db.MarginFloors.OrderBy(f => f.Id).ToListAsync(cancel)).GroupBy(f => f.FormulaSizeId).ToDictionary(g => g.Key, g => g.Last().Floor);

    private static ProductPlan LastFill(PlanContext context, LastFilling fill) => Plan(
        context, [.. fill.Materials.Select(m => (m.MaterialId, m.Name, m.Grams, m.UnitCost))],
        [.. fill.Parts.Select(p => new PlannedPart(p.MaterialId, p.Name, (int)(p.Pieces / fill.Row.Filled), p.Cost / (p.Pieces == 0 ? 1 : p.Pieces) * Over(p.Pieces, fill.Row.Filled)))],
        fill, fill.Row.LabourRatePerHour, fill.Row.OverheadPerBatch, fill.Row.OverheadPerUnit);

    /// <summary>Where pieces are no whole number a unit, the price of one makes up for it.</summary>
    private static decimal Over(long pieces, int filled) => pieces / filled == 0 ? 1m : (decimal)pieces / (pieces / filled * filled);

    /// <summary>The newest released version at the cost of the newest lots, with the work and the yield of the last filling.</summary>
    private static (ProductPlan? Plan, string? WhyNot) Today(PlanContext context, LastFilling? fill)
    {
        var size = context.Size;
        var unpriced = size.Lines.Select(l => l.MaterialId).Concat(size.Parts.Select(p => p.MaterialId)).Where(id => context.Materials[id].UnitCost is null).ToList();
        if (unpriced.Count > 0)
        {
            return (null, $"No price yet for {string.Join(", ", unpriced.Select(id => context.Materials[id].Name))}.");
        }

        var parts = size.Parts.Select(p => new PlannedPart(p.MaterialId, context.Materials[p.MaterialId].Name, p.Count, context.Materials[p.MaterialId].UnitCost!.Value)).ToList();
        (Guid, string, decimal, decimal) Line(SharedLine line, decimal batch) =>
            (line.MaterialId, context.Materials[line.MaterialId].Name, line.Fraction * batch, context.Materials[line.MaterialId].UnitCost!.Value);
        if (fill is not null)
        {
            var batch = fill.Materials.Sum(m => m.Grams);
            var studio = context.Studio;
            return (Plan(context, [.. size.Lines.Select(l => Line(l, batch))], parts, fill, studio.LabourRatePerHour, studio.OverheadPerBatch, studio.OverheadPerUnit), null);
        }

        return size.FillGrams is { } grams
            ? (OneUnit(context, [.. size.Lines.Select(l => Line(l, grams / (1m - size.ExpectedLossPercent / 100m)))], parts, grams), null)
            : (null, "No density yet, so its content cannot be weighed.");
    }

    private static ProductPlan Plan(
        PlanContext context, List<(Guid Id, string Name, decimal Grams, decimal UnitCost)> materials, IReadOnlyList<PlannedPart> parts, LastFilling fill,
        decimal labourRate, decimal overheadPerBatch, decimal overheadPerUnit)
    {
        var grams = Mass.FromMilligrams(fill.Row.FillMilligrams).Grams;
        return new ProductPlan(
            context.Size.SizeId, $"{context.Size.Scent}, {context.Size.Name}", Roles(context, materials), parts, grams,
            Math.Min(1m, grams * fill.Row.Filled / materials.Sum(m => m.Grams)), fill.Row.Rejected + fill.Row.Retained, fill.Row.LabourMinutes,
            labourRate, overheadPerBatch, overheadPerUnit, context.Prices, context.Floor);
    }

    private static ProductPlan OneUnit(PlanContext context, List<(Guid Id, string Name, decimal Grams, decimal UnitCost)> materials, IReadOnlyList<PlannedPart> parts, decimal grams) => new(
        context.Size.SizeId, $"{context.Size.Scent}, {context.Size.Name}", Roles(context, materials), parts, grams, grams / materials.Sum(m => m.Grams), 0, 0m, 0m, 0m, 0m,
        context.Prices, context.Floor);

    /// <summary>What holds scent is the load; of the rest, the material there is most of makes room for it.</summary>
    private static IReadOnlyList<PlannedMaterial> Roles(PlanContext context, List<(Guid Id, string Name, decimal Grams, decimal UnitCost)> materials)
    {
        bool IsScent(Guid id) => context.Materials[id].ScentShare > 0;
        var carrier = materials.Where(m => !IsScent(m.Id)).GroupBy(m => m.Id).OrderByDescending(g => g.Sum(m => m.Grams)).Select(g => (Guid?)g.Key).FirstOrDefault();
        return [.. materials.Select(m => new PlannedMaterial(
            m.Id, m.Name, m.Grams, m.UnitCost, IsScent(m.Id) ? LoadRole.Scent : m.Id == carrier ? LoadRole.Carrier : LoadRole.Other))];
    }
}
