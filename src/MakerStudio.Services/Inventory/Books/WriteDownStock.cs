using FluentValidation;
using MakerStudio.Core.Quantities;
using MakerStudio.Core.Stock;
using MakerStudio.Services.Schema;
using Microsoft.EntityFrameworkCore;

namespace MakerStudio.Services.Inventory;

/// <summary>
/// Carries stock at what it will bring, if that is below its cost: one lot of a material, one batch of a product, one lot
/// of kits, or each lot there is of one. A later estimate that is higher takes some of it back.
/// </summary>
public sealed record WriteDownStock : StudioRequest
{
    /// <summary>One of the two: a material…</summary>
    public Guid? MaterialId { get; set; }

    /// <summary>…or a product or kit, by <see cref="ProductBookRow.Key"/>.</summary>
    public string? Product { get; set; }

    /// <summary>One lot of it, by <see cref="LotBookRow.Lot"/>; null for each there is.</summary>
    public string? Lot { get; set; }

    /// <summary>Net, of one kilogram or piece of a material, of one unit of a product.</summary>
    public decimal? SellingPrice { get; set; }
    public decimal? ToComplete { get; set; }
    public decimal? ToSell { get; set; }
    public string Reason { get; set; } = "";
}

public sealed class WriteDownStockValidator : AbstractValidator<WriteDownStock>
{
    private const decimal Most = 1_000_000m;

    public WriteDownStockValidator()
    {
        RuleFor(r => r).Must(r => r.MaterialId is null != string.IsNullOrEmpty(r.Product)).WithName(nameof(WriteDownStock.Product)).WithMessage("Choose what is written down.");
        RuleFor(r => r.Lot).MaximumLength(40).WithMessage("No lot has a code that long.");
        RuleFor(r => r.SellingPrice).NotNull().WithMessage("Say what one will bring, 0 if nothing.").InclusiveBetween(0, Most).WithMessage("A price is from 0 to 1,000,000.");
        RuleFor(r => r.ToComplete).InclusiveBetween(0, Most).WithMessage("A cost is from 0 to 1,000,000.");
        RuleFor(r => r.ToSell).InclusiveBetween(0, Most).WithMessage("A cost is from 0 to 1,000,000.");
        RuleFor(r => r.Reason).OneLine("The reason", 200);
        RuleFor(r => r.Reason).NotEmpty().WithMessage("Say why, for whoever reads the books.");
    }
}

/// <param name="What">With its lot, where one was named.</param>
/// <param name="Amount">What it is written down by in all now.</param>
/// <param name="Change">Against before: above 0 an expense, below 0 taken back.</param>
public sealed record WrittenDown(string What, decimal Amount, decimal Change);

public sealed partial class Books
{
    private const int GramsPerKilogram = 1000;
    private static readonly WriteDownStockValidator WriteDownShape = new();

    public Task<Outcome<WrittenDown>> WriteDownAsync(Actor actor, WriteDownStock request, CancellationToken cancel = default) =>
        store.RunAsync<WriteDownStock, WrittenDown>(actor, request, WriteDownShape, async command =>
        {
            await LockAsync(command, cancel);
            var basis = await BasisAsync(command.Db, store.Clock, cancel);
            var facts = await BookRows.FactsAsync(command.Db, cancel);
            var value = BookValue.Of(facts, await BookRows.ProductOfAsync(command.Db, cancel), basis.MethodAt(command.Now), command.Now, basis.Years);
            if (await ItemAsync(command.Db, value, request, cancel) is not { Lots.Count: > 0 } item)
            {
                return new NotFound("Stock of this");
            }

            var estimate = new RealisableEstimate(request.SellingPrice!.Value, request.ToComplete ?? 0m, request.ToSell ?? 0m);
            var carried = item.Lots.Select(l => (Lot: l, Is: NetRealisable.Of(item.Shown(l.Quantity), l.Cost, estimate, l.WrittenDown))).ToList();
            var (cost, down, change) = (carried.Sum(c => c.Is.Cost), carried.Sum(c => c.Is.WriteDown), carried.Sum(c => c.Is.Change));
            if (carried.All(c => c.Is.Change == 0))
            {
                return down > 0
                    ? new Because($"{item.Name} is carried at that already, {AmountWords.Money(cost - down)}.")
                    : new Because($"{item.Name} will bring at least what it cost, {AmountWords.Money(cost)}, so nothing is written down.");
            }

            foreach (var (lot, isNow) in carried.Where(c => c.Is.Change != 0))
            {
                command.Db.WriteDowns.Add(new WriteDown
                {
                    MaterialId = item.Of.MaterialId, FormulaId = item.Of.FormulaId, SizeName = item.Of.SizeName, KitId = item.Of.KitId,
                    LotId = item.Of.MaterialId is null ? null : item.Ids[lot.Lot], BatchId = item.Of.FormulaId is null ? null : item.Ids[lot.Lot], KitLotId = item.Of.KitId is null ? null : item.Ids[lot.Lot],
                    Quantity = lot.Quantity, Cost = lot.Cost, SellingPrice = estimate.SellingPrice, ToComplete = estimate.ToComplete, ToSell = estimate.ToSell,
                    Amount = isNow.WriteDown, Reason = request.Reason.Trim(), PersonId = command.PersonId, At = command.Now, RequestId = command.RequestId,
                });
            }

            command.Record("books", request.MaterialId, $"{item.Name}: carried at {AmountWords.Money(cost - down)}, cost {AmountWords.Money(cost)}", Topics.Books);
            return new WrittenDown(item.Name, down, change);
        }, cancel: cancel);

    /// <param name="Name">With its lot, where one was named.</param>
    /// <param name="Lots">Those with something there.</param>
    /// <param name="Ids">Of each lot, by what the books call it.</param>
    /// <param name="IsWeighed">A price is then for a kilogram.</param>
    private sealed record Item(string Name, bool IsWeighed, IReadOnlyList<BookItemLot> Lots, IReadOnlyDictionary<string, Guid> Ids, ItemOf Of)
    {
        /// <summary>In the unit a price is for.</summary>
        public decimal Shown(decimal quantity) => IsWeighed ? Mass.FromMilligrams((long)quantity).Grams / GramsPerKilogram : quantity;
    }

    private sealed record ItemOf(Guid? MaterialId = null, Guid? FormulaId = null, string? SizeName = null, Guid? KitId = null);

    private static async Task<Item?> ItemAsync(StudioDb db, BookValue value, WriteDownStock request, CancellationToken cancel)
    {
        List<BookItemLot> Asked(BookItem? item) => [.. (item?.Lots ?? []).Where(l => l.Quantity > 0 && (request.Lot ?? l.Lot) == l.Lot)];
        if (request.MaterialId is { } id)
        {
            var material = await db.Materials.AsNoTracking().SingleOrDefaultAsync(m => m.Id == id, cancel);
            var ids = await db.Lots.Where(l => l.MaterialId == id).ToDictionaryAsync(l => l.Code, l => l.Id, cancel);
            return material is null ? null : new Item(
                request.Lot is null ? material.Name : $"{material.Name} {request.Lot}", material.StockedIn == StockUnit.Gram, Asked(value.Materials.GetValueOrDefault(id)), ids, new(MaterialId: id));
        }

        if (!(await BookRows.ProductsAsync(db, cancel)).TryGetValue(request.Product!, out var name))
        {
            return null;
        }

        var lots = Asked(value.Products.GetValueOrDefault(request.Product!));
        var code = request.Lot is null ? null : (await BookRows.CodesAsync(db, cancel)).GetValueOrDefault(request.Lot);
        return new Item(
            $"{name.Scent}, {name.SizeName}{(code is null ? "" : $" {code}")}", false, lots, lots.ToDictionary(l => l.Lot, l => Guid.ParseExact(l.Lot, "n")),
            name.KitId is { } kit ? new(KitId: kit) : new(FormulaId: name.FormulaId, SizeName: name.Stored));
    }
}
