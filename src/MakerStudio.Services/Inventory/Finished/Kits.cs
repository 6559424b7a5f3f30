using FluentValidation;
using MakerStudio.Core.Finished;
using MakerStudio.Core.Quantities;
using MakerStudio.Services.Schema;
using Microsoft.EntityFrameworkCore;

namespace MakerStudio.Services.Inventory;

/// <summary>Says what a gift set is made of. A change counts for kits assembled from then on.</summary>
public sealed record DefineKit : StudioRequest
{
    /// <summary>Null for a new one.</summary>
    public Guid? KitId { get; set; }
    public string Name { get; set; } = "";
    public string? Note { get; set; }
    public List<KitItemTyped> Items { get; set; } = [];
    public List<KitPartTyped> Parts { get; set; } = [];
    public uint Version { get; set; }
}

public sealed record KitItemTyped
{
    public Guid FormulaId { get; set; }
    public string? SizeName { get; set; }
    public int? Count { get; set; }
}

public sealed record KitPartTyped
{
    public Guid MaterialId { get; set; }
    public int? Count { get; set; }
}

public sealed record PutAwayKit : StudioRequest
{
    public Guid KitId { get; set; }
}

public sealed class DefineKitValidator : AbstractValidator<DefineKit>
{
    /// <summary>Most of one thing in a kit; own bound.</summary>
    private const int MostOfOne = 1000;

    public DefineKitValidator()
    {
        RuleFor(r => r.Name).NotEmpty().WithMessage("The kit needs a name.");
        RuleFor(r => r.Name).OneLine("The name", 80);
        RuleFor(r => r.Note).OneLine("The note", 400);
        RuleFor(r => r.Items).NotEmpty().WithMessage("Say what is in it.").Must(i => i.Count <= 50).WithMessage("At most 50 different goods.");
        RuleFor(r => r.Items).Must(i => i.Select(x => (x.FormulaId, x.SizeName)).Distinct().Count() == i.Count).WithMessage("One of the goods stands in two lines; put them together.");
        RuleFor(r => r.Parts).Must(p => p.Count <= 20).WithMessage("At most 20 different parts.");
        RuleFor(r => r.Parts).Must(p => p.Select(x => x.MaterialId).Distinct().Count() == p.Count).WithMessage("A part stands in two lines; put them together.");
        RuleForEach(r => r.Items).ChildRules(i => i.RuleFor(x => x.Count).NotNull().WithMessage("Say how many are in one kit.").InclusiveBetween(1, MostOfOne).WithMessage("Between 1 and 1,000 in one kit."));
        RuleForEach(r => r.Parts).ChildRules(p => p.RuleFor(x => x.Count).NotNull().WithMessage("Say how many one kit takes.").InclusiveBetween(1, MostOfOne).WithMessage("Between 1 and 1,000 for one kit."));
    }
}

public sealed record KitDefined(Guid KitId, string Name);

/// <param name="Possible">Kits that could be assembled now.</param>
/// <param name="Scarcest">What limits them.</param>
public sealed record KitRow(Guid Id, string Name, string? Note, uint Version, IReadOnlyList<KitItemRow> Items, IReadOnlyList<KitPartRow> Parts, int Possible, string? Scarcest);

public sealed record KitItemRow(Product Product, int Count, long Available);

public sealed record KitPartRow(Guid MaterialId, string Name, int Count, long Available);

public sealed record KitContentRow(string Code, string Name, bool IsPackaging, int Count, decimal UnitCost);

public sealed record KitLotRow(Guid Id, string Code, string Name, DateOnly MadeOn, int Made, int Sold, int Undone, int Left, decimal UnitCost, IReadOnlyList<KitContentRow> Contents);

/// <summary>Everything the page of kits shows.</summary>
/// <param name="Products">What a kit could hold.</param>
/// <param name="Packaging">Materials a kit could be packed in.</param>
public sealed record KitsView(IReadOnlyList<KitRow> Kits, IReadOnlyList<KitLotRow> Lots, IReadOnlyList<Product> Products, IReadOnlyList<PackagingChoice> Packaging);

public sealed record PackagingChoice(Guid MaterialId, string Name);

public sealed partial class Kits(StudioStore store)
{
    internal const string CodePrefix = "KT";
    private static readonly DefineKitValidator DefineShape = new();

    public async Task<KitsView> ViewAsync(CancellationToken cancel = default)
    {
        await using var db = await store.ReadAsync(cancel);
        var today = await StudioDay.TodayAsync(db, store.Clock, cancel);
        var kits = await db.Kits.Include(k => k.Items).ThenInclude(i => i.Formula).Include(k => k.Parts).ThenInclude(p => p.Material)
            .Where(k => k.PutAwayAt == null).OrderBy(k => k.Name).AsSplitQuery().ToListAsync(cancel);
        var rows = new List<KitRow>();
        foreach (var kit in kits)
        {
            var needs = await KitNeeds.OfAsync(db, kit, today, cancel);
            var plan = KitPlan.For(1, needs);
            var items = kit.Items.OrderBy(i => i.Position).ToList();
            rows.Add(new KitRow(
                kit.Id, kit.Name, kit.Note, kit.Version,
                [.. items.Select((i, n) => new KitItemRow(new Product(i.FormulaId, i.Formula!.Name, i.Formula.ProductKind, i.SizeName), i.Count, needs[n].Available))],
                [.. kit.Parts.OrderBy(p => p.Position).Select((p, n) => new KitPartRow(p.MaterialId, p.Material!.Name, p.Count, needs[items.Count + n].Available))],
                plan.Possible, plan.Scarcest?.Name));
        }

        return new KitsView(rows, await LotsAsync(db, db.KitLots.OrderByDescending(l => l.At).ThenByDescending(l => l.Code).Take(100), cancel), await ProductsAsync(db, cancel), await PackagingAsync(db, cancel));
    }

    public Task<Outcome<KitDefined>> DefineAsync(Actor actor, DefineKit request, CancellationToken cancel = default) =>
        store.RunAsync<DefineKit, KitDefined>(actor, request, DefineShape, async command =>
        {
            var kit = request.KitId is null ? new Kit { Name = "" }
                : await command.Db.Kits.Include(k => k.Items).Include(k => k.Parts).SingleOrDefaultAsync(k => k.Id == request.KitId, cancel);
            if (kit is null)
            {
                return new NotFound("This kit");
            }

            if (request.KitId is null)
            {
                command.Db.Kits.Add(kit);
            }
            else
            {
                command.ExpectVersion(kit, request.Version);
                command.Db.RemoveRange(kit.Items);
                command.Db.RemoveRange(kit.Parts);
            }

            kit.Name = request.Name.Trim();
            kit.Note = string.IsNullOrWhiteSpace(request.Note) ? null : request.Note.Trim();
            command.Db.AddRange(request.Items.Select((i, n) => new KitItem { KitId = kit.Id, Position = n + 1, FormulaId = i.FormulaId, SizeName = i.SizeName, Count = i.Count!.Value }));
            command.Db.AddRange(request.Parts.Select((p, n) => new KitPart { KitId = kit.Id, Position = n + 1, MaterialId = p.MaterialId, Count = p.Count!.Value }));
            command.Record("kit", kit.Id, $"{(request.KitId is null ? "Defined" : "Changed")} the kit {kit.Name}", Topics.Finished);
            return await command.TrySaveAsync() ? new KitDefined(kit.Id, kit.Name) : (Outcome<KitDefined>)new Stale(kit.Name, "Somebody");
        }, cancel: cancel);

    public Task<Outcome<Nothing>> PutAwayAsync(Actor actor, PutAwayKit request, CancellationToken cancel = default) =>
        store.RunAsync<PutAwayKit, Nothing>(actor, request, null, async command =>
        {
            var kit = await command.Db.Kits.SingleOrDefaultAsync(k => k.Id == request.KitId, cancel);
            if (kit is null)
            {
                return new NotFound("This kit");
            }

            kit.PutAwayAt ??= command.Now;
            command.Record("kit", kit.Id, $"Put away the kit {kit.Name}", Topics.Finished);
            return Nothing.Value;
        }, cancel: cancel);

    internal static async Task<KitLot> LockLotAsync(Command command, Guid id, CancellationToken cancel) =>
        (await command.Db.KitLots.FromSql($"select * from kit_lots where id = {id} for update").ToListAsync(cancel)).Single();

    internal static Task<IReadOnlyList<KitLotRow>> LeftAsync(StudioDb db, CancellationToken cancel) =>
        LotsAsync(db, db.KitLots.Where(l => l.Left > 0).OrderBy(l => l.At), cancel);

    private static async Task<IReadOnlyList<KitLotRow>> LotsAsync(StudioDb db, IQueryable<KitLot> lots, CancellationToken cancel) => await lots.Select(l => new KitLotRow(
        l.Id, l.Code, l.Name, l.MadeOn, l.Made, l.Sold, l.Undone, l.Left, l.UnitCost,
        l.Contents.OrderBy(c => c.Position).Select(c => new KitContentRow(c.BatchId != null ? c.Batch!.Code : c.Lot!.Code, c.Name, c.LotId != null, c.Count, c.UnitCost)).ToList())).ToListAsync(cancel);

    private static async Task<IReadOnlyList<Product>> ProductsAsync(StudioDb db, CancellationToken cancel)
    {
        var rows = await (
            from batch in db.Batches
            join version in db.FormulaVersions on batch.FormulaVersionId equals version.Id
            where db.Fills.Any(f => f.BatchId == batch.Id)
            select new { version.FormulaId, batch.ScentName, batch.ProductKind, batch.SizeName }).Distinct().ToListAsync(cancel);
        return [.. rows.Select(r => new Product(r.FormulaId, r.ScentName, r.ProductKind, r.SizeName)).OrderBy(p => p.Name, StringComparer.Ordinal)];
    }

    private static async Task<IReadOnlyList<PackagingChoice>> PackagingAsync(StudioDb db, CancellationToken cancel) =>
        await db.Materials.Where(m => m.StockedIn == StockUnit.Each && m.ArchivedAt == null).OrderBy(m => m.Name)
            .Select(m => new PackagingChoice(m.Id, m.Name)).ToListAsync(cancel);
}

/// <summary>What a kit needs beside what there is on the studio's shelf, in the order in which it would be taken.</summary>
internal static class KitNeeds
{
    public static async Task<IReadOnlyList<KitNeed>> OfAsync(StudioDb db, Kit kit, DateOnly today, CancellationToken cancel)
    {
        var formulas = kit.Items.Select(i => i.FormulaId).Distinct().ToArray();
        var goods = await FinishedGoods.RowsAsync(
            db, db.UnitBalances.Where(b => b.PlaceId == Place.StudioId && b.Status == UnitStatus.Saleable
                && db.Batches.Any(x => x.Id == b.BatchId && formulas.Contains(x.FormulaVersion!.FormulaId))), cancel);
        var lots = await Shelf.LotsOfAsync(db, kit.Parts.Select(p => p.MaterialId), cancel);
        return
        [
            .. kit.Items.OrderBy(i => i.Position).Select(i => ItemNeed(i, goods, today)),
            .. kit.Parts.OrderBy(p => p.Position).Select(p => PartNeed(p, lots, today)),
        ];
    }

    private static KitNeed ItemNeed(KitItem item, List<GoodsRow> goods, DateOnly today)
    {
        var mine = goods.Where(g => g.Product.FormulaId == item.FormulaId && g.Product.SizeName == item.SizeName).ToList();
        var costs = mine.ToDictionary(g => g.BatchId, g => g.UnitCost ?? 0m);
        var usable = UnitChoice.For(mine.Sum(g => g.Count), mine.Select(g => g.OnShelf()), today).Picks;
        var name = item.SizeName is null ? item.Formula!.Name : $"{item.Formula!.Name}, {item.SizeName}";
        return new KitNeed(name, item.Count, [.. usable.Select(u => new KitOffer(u.BatchId, u.Code, u.Count, costs[u.BatchId]))]);
    }

    private static KitNeed PartNeed(KitPart part, List<ShelfLot> lots, DateOnly today)
    {
        var mine = lots.Where(l => l.MaterialId == part.MaterialId).ToList();
        var costs = mine.ToDictionary(l => l.Lot.LotId, l => l.UnitCost);
        var usable = Shelf.Usable(mine.Select(l => l.Lot), today);
        return new KitNeed(part.Material!.Name, part.Count, [.. usable.Select(l => new KitOffer(l.LotId, l.Code, (int)Math.Min(l.OnHand.Units, int.MaxValue), costs[l.LotId]))]);
    }
}
