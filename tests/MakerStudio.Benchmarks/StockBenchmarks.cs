using BenchmarkDotNet.Attributes;
using MakerStudio.Core.Quantities;
using MakerStudio.Core.Stock;

namespace MakerStudio.Benchmarks;

/// <summary>
/// Choosing lots: a studio's usual shelf is the baseline. Twenty times as many lots should cost no more than about
/// twenty times as much; far more than that means that a lot is looked at more than once.
/// </summary>
[MemoryDiagnoser]
public class StockBenchmarks
{
    private static readonly DateOnly Today = new(2026, 11, 25);
    private static readonly LotOnShelf[] UsualShelf = Shelf(10);
    private static readonly LotOnShelf[] FullShelf = Shelf(200);

    [Benchmark(Baseline = true)]
    public PickPlan PickPlan_10Lots() => LotChoice.For(StockAmount.OfGrams(480), UsualShelf, Today);

    [Benchmark]
    public PickPlan PickPlan_200Lots() => LotChoice.For(StockAmount.OfGrams(480), FullShelf, Today);

    [Benchmark]
    public PickPlan PickPlan_200Lots_AllTaken() => LotChoice.For(StockAmount.OfGrams(1_000_000), FullShelf, Today);

    // Dates scattered by a step that shares no factor with the count, one lot in five not released.
    private static LotOnShelf[] Shelf(int count) =>
    [
        .. Enumerable.Range(0, count).Select(i => new LotOnShelf(
            new Guid(i, 0, 0, new byte[8]),
            $"P-{i}",
            i % 5 == 4 ? LotStatus.Quarantine : LotStatus.Released,
            StockAmount.OfGrams(100 + i),
            i % 7 == 6 ? null : Today.AddDays(i * 37 % 200),
            i % 3 == 0,
            Today.AddDays(-i))),
    ];
}
