using MakerStudio.Core.Stock;
using MakerStudio.Services.Inventory;
using MakerStudio.Services.Schema;
using MakerStudio.Services.Tests.Inventory.Prices;
using Microsoft.EntityFrameworkCore;
using Xunit.Abstractions;

namespace MakerStudio.Services.Tests.Inventory.Books;

using Books = Services.Inventory.Books;

/// <summary>
/// Received = stock + work in progress + finished + cost of sales + expensed, after any acts through the services on a
/// real database, under every method; the ten thousand of the pure model are in Core.
/// </summary>
public class ConservationTests(ITestOutputHelper output)
{
    private const int Acts = 200;

    [Fact]
    public async Task Books_AfterRandomActs_LoseNothingUnderAnyMethod()
    {
        var start = int.TryParse(Environment.GetEnvironmentVariable("STUDIO_RANDOM_START"), System.Globalization.CultureInfo.InvariantCulture, out var given) ? given : Random.Shared.Next();
        output.WriteLine($"Random start {start}; run again with STUDIO_RANDOM_START={start}");
        await using var studio = await TestStudio.NewAsync();
        var walk = await LedgerWalk.NewAsync(studio, new Random(start));
        await walk.OpenShopAsync();
        for (var n = 1; n <= Acts; n++)
        {
            await walk.StepAsync();
        }

        await using var db = studio.Db();
        var differences = (await BooksCheck.OfAsync(db, studio.Clock, CancellationToken.None)).SelectMany(c => c.Differences).ToList();
        Assert.True(differences.Count == 0, $"start {start}: {string.Join(' ', differences)}");
        var view = await studio.Get<Books>().ReadAsync();
        Assert.True(view.Check.Holds && view.Parts.Received > 0, $"start {start}");
        // As it stood half-way, seen from now: earlier moments add up too.
        var half = (await db.Movements.OrderBy(m => m.Id).Select(m => m.At).ToListAsync()) is { Count: > 0 } times ? times[times.Count / 2] : studio.Clock.GetUtcNow();
        var basis = await Books.BasisAsync(db, studio.Clock, CancellationToken.None);
        var then = BookValue.Of(await BookRows.FactsAsync(db, CancellationToken.None), await BookRows.ProductOfAsync(db, CancellationToken.None), ValuationMethod.Fifo, half, basis.Years);
        Assert.True(Conservation.Check(then.Parts).Holds, $"start {start}, half-way");
    }

    /// <summary>10 of 46 sold, one given away, two broken: 4.5079 of each under specific lot.</summary>
    [Fact]
    public async Task Books_SaleGiftAndBreakage_MoveTheBatchesCost()
    {
        await using var scene = await PriceScene.NewAsync();
        var studio = scene.Studio;
        (await studio.Get<Books>().ChooseMethodAsync(studio.Ana, new ChooseMethod { YearOf = new DateOnly(2026, 1, 1), Method = ValuationMethod.SpecificLot })).Expect();
        var sale = new RecordSale { PlaceId = Places.StudioShelf, Channel = "Stall", TaxPercent = 20, Lines = [new() { BatchId = scene.Batch, Quantity = 10, Tag = 22m }] };
        (await studio.Get<Sales>().RecordAsync(studio.Bo, sale)).Expect();

        var view = await studio.Get<Books>().ReadAsync();

        Assert.Equal((36, 207.36268m * 10 / 46), (view.Finished.Single().Units, Math.Round(view.Parts.CostOfSales, 20)), new Close());
        Assert.True(view.Check.Holds);
        Assert.Empty((await studio.Get<Verify>().RunAsync()).Differences);
    }

    private sealed class Close : IEqualityComparer<(int Units, decimal Money)>
    {
        public bool Equals((int Units, decimal Money) x, (int Units, decimal Money) y) => x.Units == y.Units && Math.Abs(x.Money - y.Money) < 0.00000001m;

        public int GetHashCode((int Units, decimal Money) obj) => obj.Units;
    }
}
