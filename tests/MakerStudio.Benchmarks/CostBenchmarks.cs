using BenchmarkDotNet.Attributes;
using MakerStudio.Core.Costing;
using MakerStudio.Core.Stock;

namespace MakerStudio.Benchmarks;

/// <summary>
/// Money sums of one screen. The baseline is a batch of 30 lines; landing an invoice of 30 lines shares freight in
/// whole numbers of any length, and a year's value walks 400 movements.
/// </summary>
[MemoryDiagnoser]
public class CostBenchmarks
{
    private static readonly CostedUse[] Uses =
        [.. Enumerable.Range(1, 30).Select(i => new CostedUse($"Line {i}", i / 10m, 8.644m + i))];

    private static readonly InvoiceLine[] Invoice =
        [.. Enumerable.Range(1, 30).Select(i => new InvoiceLine(12.50m * i, i / 7m, 0, 0, 0, i))];

    private static readonly DateTimeOffset NewYear = new(2026, 1, 1, 0, 0, 0, TimeSpan.Zero);
    private static readonly FinancialYears Calendar = new(1, 1, TimeZoneInfo.Utc);

    private static readonly ValuedMovement[] Year =
    [
        .. Enumerable.Range(0, 100).Select(i => new ValuedMovement(i, NewYear.AddDays(i * 3), $"P-{i}", 30, 30 * (8m + (i / 100m)))),
        .. Enumerable.Range(0, 300).Select(i => new ValuedMovement(1000 + i, NewYear.AddDays(i).AddHours(12), $"P-{i / 3}", -9)),
    ];

    [Benchmark(Baseline = true)]
    public BatchCostSheet BatchCost_30Lines() => BatchCost.Of(Uses, Uses, 130, 18m, 9m, 0.15m, 48, 1, 1);

    [Benchmark]
    public Landed LandedCost_30Lines() => LandedCost.Allocate(Invoice, 96.00m, FreightBasis.Weight);

    [Benchmark]
    public StockValue Fifo_400Movements() => ValueBy(ValuationMethod.Fifo);

    [Benchmark]
    public StockValue MovingAverage_400Movements() => ValueBy(ValuationMethod.MovingAverage);

    private static StockValue ValueBy(ValuationMethod method) => Valuation.Of(method, Year, NewYear.AddDays(365), Calendar);
}
