using FluentValidation;
using MakerStudio.Core.Quantities;
using MakerStudio.Core.Stock;
using MakerStudio.Services.Schema;
using Microsoft.EntityFrameworkCore;

namespace MakerStudio.Services.Inventory;

/// <summary>
/// Carries all there is of a material or a finished product at what it will bring, if that is below its cost. A later
/// estimate that is higher takes some of it back.
/// </summary>
public sealed record WriteDownStock : StudioRequest
{
    /// <summary>One of the two: a material…</summary>
    public Guid? MaterialId { get; set; }

    /// <summary>…or a product, by <see cref="ProductBookRow.Key"/>.</summary>
    public string? Product { get; set; }

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
        RuleFor(r => r.SellingPrice).NotNull().WithMessage("Say what one will bring, 0 if nothing.").InclusiveBetween(0, Most).WithMessage("A price is from 0 to 1,000,000.");
        RuleFor(r => r.ToComplete).InclusiveBetween(0, Most).WithMessage("A cost is from 0 to 1,000,000.");
        RuleFor(r => r.ToSell).InclusiveBetween(0, Most).WithMessage("A cost is from 0 to 1,000,000.");
        RuleFor(r => r.Reason).OneLine("The reason", 200);
        RuleFor(r => r.Reason).NotEmpty().WithMessage("Say why, for whoever reads the books.");
    }
}

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
            if (await ItemAsync(command.Db, BookValue.Of(facts, await BookRows.ProductOfAsync(command.Db, cancel), basis.MethodAt(command.Now), command.Now, basis.Years), request, cancel) is not { } item)
            {
                return new NotFound("Stock of this");
            }

            var estimate = new RealisableEstimate(request.SellingPrice!.Value, request.ToComplete ?? 0m, request.ToSell ?? 0m);
            var carried = NetRealisable.Of(item.Shown, item.Cost, estimate, item.WrittenDown);
            if (carried.Change == 0)
            {
                return new Because($"{item.Name} will bring at least what it cost, {AmountWords.Money(item.Cost)}, so nothing is written down.");
            }

            command.Db.WriteDowns.Add(new WriteDown
            {
                MaterialId = request.MaterialId, FormulaId = item.FormulaId, SizeName = item.SizeName, Quantity = item.Quantity, Cost = item.Cost,
                SellingPrice = estimate.SellingPrice, ToComplete = estimate.ToComplete, ToSell = estimate.ToSell, Amount = carried.WriteDown,
                Reason = request.Reason.Trim(), PersonId = command.PersonId, At = command.Now, RequestId = command.RequestId,
            });
            command.Record("books", request.MaterialId, $"{item.Name}: carried at {AmountWords.Money(carried.CarriedAt)}, cost {AmountWords.Money(item.Cost)}", Topics.Books);
            return new WrittenDown(item.Name, carried.WriteDown, carried.Change);
        }, cancel: cancel);

    /// <param name="Quantity">In the finest unit kept.</param>
    /// <param name="Shown">In the unit a price is for.</param>
    private sealed record Item(string Name, decimal Quantity, decimal Shown, decimal Cost, decimal WrittenDown, Guid? FormulaId, string? SizeName);

    private static async Task<Item?> ItemAsync(StudioDb db, BookValue value, WriteDownStock request, CancellationToken cancel)
    {
        if (request.MaterialId is { } id)
        {
            var row = value.Materials.GetValueOrDefault(id);
            var material = await db.Materials.AsNoTracking().SingleOrDefaultAsync(m => m.Id == id, cancel);
            return row is null || material is null || row.Quantity <= 0 ? null : new Item(
                material.Name, row.Quantity, material.StockedIn == StockUnit.Gram ? Mass.FromMilligrams((long)row.Quantity).Grams / GramsPerKilogram : row.Quantity,
                row.Cost, row.WrittenDown, null, null);
        }

        var product = value.Products.GetValueOrDefault(request.Product!);
        return product is null || product.Quantity <= 0 || !(await BookRows.ProductsAsync(db, cancel)).TryGetValue(request.Product!, out var name) || name.FormulaId is null
            ? null
            : new Item($"{name.Scent}, {name.SizeName}", product.Quantity, product.Quantity, product.Cost, product.WrittenDown, name.FormulaId, name.SizeName);
    }
}
