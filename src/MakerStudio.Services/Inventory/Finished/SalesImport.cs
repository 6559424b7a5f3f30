using MakerStudio.Core.Finished;
using MakerStudio.Services.Schema;
using Microsoft.EntityFrameworkCore;

namespace MakerStudio.Services.Inventory;

/// <summary>One line of a file and what it would do, or why it is rejected.</summary>
/// <param name="Does">"RS-1 × 2 at 22.00"; empty for a rejected line.</param>
public sealed record ImportRow(long Line, string? Channel, string? Order, string? Customer, int Quantity, string Does, string? Rejected);

/// <summary>
/// Goes through the lines in their order beside what is on the studio's shelf: what one line takes the next cannot have.
/// The same lines give the same picks, so that what was previewed is what is posted.
/// </summary>
internal sealed class SalesImport
{
    private const int LinesAtOnce = 1000;
    private readonly DateOnly _today;

    /// <summary>The file that is being posted: its own sales are no repeats.</summary>
    private readonly Guid? _posting;
    private readonly Dictionary<string, List<Guid>> _byProduct = new(StringComparer.OrdinalIgnoreCase);
    private readonly Dictionary<string, Guid> _byCode = new(StringComparer.OrdinalIgnoreCase);
    private readonly Dictionary<Guid, BatchOnShelf> _left;

    private SalesImport(IReadOnlyList<GoodsRow> goods, DateOnly today, Guid? posting)
    {
        _today = today;
        _posting = posting;
        _left = goods.ToDictionary(g => g.BatchId, g => g.OnShelf());
        foreach (var row in goods)
        {
            _byCode[row.Code] = row.BatchId;
            foreach (var name in new[] { Key(row.Product.ScentName, row.Product.SizeName), Key(row.Product.ScentName, null) }.Distinct())
            {
                _byProduct.TryAdd(name, []);
                _byProduct[name].Add(row.BatchId);
            }
        }
    }

    /// <summary>Batches with saleable units on the studio's shelf; lock them before posting.</summary>
    public static async Task<SalesImport> OfAsync(StudioDb db, DateOnly today, CancellationToken cancel, Guid? posting = null) => new(
        await FinishedGoods.RowsAsync(db, db.UnitBalances.Where(b => b.PlaceId == Place.StudioId && b.Status == UnitStatus.Saleable), cancel), today, posting);

    /// <summary>Lines with their picks, some hundreds at a time; orders recorded before are rejected.</summary>
    public async IAsyncEnumerable<List<(CsvSale Sale, IReadOnlyList<(Guid BatchId, string Code, int Count)> Picks)>> RunAsync(
        StudioDb db, IAsyncEnumerable<CsvSale> lines, [System.Runtime.CompilerServices.EnumeratorCancellation] CancellationToken cancel)
    {
        await foreach (var some in lines.Chunk(LinesAtOnce).WithCancellation(cancel))
        {
            var orders = some.Select(s => s.Order).OfType<string>().Distinct().ToArray();
            var known = (await db.Sales.Where(s => s.Kind == SaleKind.Sale && orders.Contains(s.Reference!)
                    && !db.Sales.Any(r => r.OfSaleId == s.Id && r.Kind == SaleKind.Reversal))
                .Select(s => new { s.Channel, s.Reference, s.SalesFileId }).ToListAsync(cancel)).Where(s => _posting is null || s.SalesFileId != _posting).Select(s => (s.Channel, s.Reference)).ToHashSet();
            yield return [.. some.Select(s => Take(s, known.Contains((s.Channel, s.Order))))];
        }
    }

    private (CsvSale, IReadOnlyList<(Guid, string, int)>) Take(CsvSale sale, bool isKnown)
    {
        (CsvSale, IReadOnlyList<(Guid, string, int)>) No(string problem) => (sale with { Problem = problem }, []);
        if (sale.Problem is not null)
        {
            return (sale, []);
        }

        if (isKnown)
        {
            return No($"Order {sale.Order} of {sale.Channel} is recorded already.");
        }

        if (sale.SoldOn > _today)
        {
            return No($"{AmountWords.Day(sale.SoldOn)} is still to come.");
        }

        List<Guid>? batches = sale.Batch is { } code
            ? _byCode.TryGetValue(code, out var id) ? [id] : null
            : _byProduct.GetValueOrDefault(Key(sale.Product!, sale.Size));
        if (batches is null)
        {
            return No(sale.Batch is not null ? $"Batch {sale.Batch} has nothing on the studio's shelf." : $"“{sale.Product}{(sale.Size is null ? "" : $", {sale.Size}")}” is not on the studio's shelf.");
        }

        var plan = UnitChoice.For(sale.Quantity, batches.Select(b => _left[b]), _today);
        if (!plan.IsMet)
        {
            return No($"{sale.Quantity - plan.Missing} of {sale.Quantity} can be sold; earlier lines and other sales took the rest.");
        }

        foreach (var (batch, _, count) in plan.Picks)
        {
            _left[batch] = _left[batch] with { Count = _left[batch].Count - count };
        }

        return (sale, plan.Picks);
    }

    private static string Key(string product, string? size) => size is null ? product.Trim() : $"{product.Trim()}\u001f{size.Trim()}";
}
