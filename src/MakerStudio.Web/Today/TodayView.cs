using MakerStudio.Core.Materials;
using MakerStudio.Core.Quantities;
using MakerStudio.Core.Stock;
using MakerStudio.Services.Inventory;

namespace MakerStudio.Web.Today;

/// <summary>What the first page shows, read from the rooms it points into.</summary>
/// <param name="Curing">Batches due for check, on hold or ready, most urgent first.</param>
/// <param name="Weighing">Batches on the scale, and who is at it.</param>
/// <param name="Lacking">Planned batches that lack something.</param>
/// <param name="HasStock">Something is on hand.</param>
/// <param name="NextDue">The next batch that will be due, when none is.</param>
public sealed record TodayView(
    DateTimeOffset Now, IReadOnlyList<CureRow> Curing, CureRow? NextDue, IReadOnlyList<BenchRow> Weighing, IReadOnlyList<BenchRow> Lacking,
    bool HasStock, IReadOnlyList<LowRow> Low, IReadOnlyList<DatedLot> Lots, IReadOnlyList<PendingReceiptRow> ToFollow)
{
    /// <summary>Limits of flammable liquid that the stock is over.</summary>
    public IReadOnlyList<FlammableStanding> Over { get; init; } = [];

    /// <summary>Nothing has been received and nothing made: the page says how to begin.</summary>
    public bool IsFirstDay => !HasStock && AsksNothing && NextDue is null;

    public bool AsksNothing => Curing.Count + Weighing.Count + Lacking.Count == 0;
}

/// <param name="Available">Milligrams or pieces.</param>
/// <param name="CoverDays">Days it lasts; null when nothing is being used.</param>
/// <param name="OrderNow">With what is on its way it does not last until an order placed today arrives, or is down to the point to order at.</param>
public sealed record LowRow(
    Guid MaterialId, string Name, StockUnit Unit, long Available, long OnHand, long Reserved, decimal? CoverDays, int? LeadDays, DateOnly? OrderBy, bool OrderNow,
    OnItsWay? OnItsWay, bool IsMadeHere);

/// <summary>A lot that waits for a paper or a decision, or whose date is near or past.</summary>
public sealed record DatedLot(string Code, string Material, StockUnit Unit, long OnHand, LotStatus Status, string Why, string ToDo);

/// <summary>Reads the first page from the services of the rooms.</summary>
public sealed class TodayRead(CureShelf curing, Batches batches, Stock stock, Lots lots, TimeProvider clock)
{
    /// <summary>Lots whose use ends within this many days are shown; the house's own span.</summary>
    private const int NearDays = 30;

    /// <summary>Materials that last no longer than lead time and this are shown; the house's own margin.</summary>
    private const int MarginDays = 7;

    public async Task<TodayView> ReadAsync()
    {
        var resting = await curing.RowsAsync();
        var rows = await stock.ListAsync();
        var bench = await batches.OnTheBenchAsync();
        return new TodayView(
            clock.GetUtcNow(),
            [.. resting.Where(r => r.State != CureState.Resting)],
            resting.Where(r => r.State == CureState.Resting).MinBy(r => r.DueAt),
            [.. bench.Where(b => b.State == BatchState.Weighing)],
            [.. bench.Where(b => b.State == BatchState.Planned && b.Shortages.Count > 0)],
            rows.Any(r => r.OnHand > 0),
            [.. rows.Where(IsLow).OrderBy(r => r.OrderNow ? r.Today : r.OrderBy ?? r.Today).ThenBy(r => r.CoverDays ?? decimal.MaxValue).ThenBy(r => r.Name, StringComparer.CurrentCulture).Select(LowOf)],
            [.. (await lots.OnShelfAsync()).Select(DatedOf).OfType<DatedLot>()],
            await stock.PendingAsync())
        {
            Over = [.. (await stock.FlammableAsync()).Over],
        };
    }

    private static bool IsLow(StockRow row) =>
        row.OrderNow || (row.OrderBy is { } by && by <= row.Today.AddDays(MarginDays)) || (row.Available < 0);

    private static LowRow LowOf(StockRow row) => new(
        row.MaterialId, row.Name, row.Unit, row.Available, row.OnHand, row.Reserved, row.CoverDays, row.LeadDays, row.OrderBy, row.OrderNow,
        row.OnItsWay, row.Kind == MaterialKind.PreBlend);

    private static DatedLot? DatedOf(LotRow lot) => lot switch
    {
        { Status: LotStatus.Quarantine } => Of(lot, lot.MissingPapers.Count > 0 ? $"{string.Join(", ", lot.MissingPapers.Select(PaperKinds.Name))} missing" : lot.StatusReason ?? "waits for a decision",
            lot.MissingPapers.Count > 0 ? "Attach it" : "Release or reject"),
        { Status: LotStatus.OnHold } => Of(lot, lot.StatusReason ?? "held", "Lift the hold or reject"),
        { Status: LotStatus.Released, IsPastUse: true } => Of(lot, $"{DateWord(lot)} was {lot.UseBy!.On:d MMM}", lot.UseBy.Reason == ExpiryReason.SupplierExpiry ? "Look at it" : "Re-smell and set a new date"),
        { Status: LotStatus.Released, UseBy: { } end } when end.On <= lot.Today.AddDays(NearDays) => Of(lot, $"{DateWord(lot)} {end.On:d MMM}", "Use it first"),
        _ => null,
    };

    private static DatedLot Of(LotRow lot, string why, string toDo) => new(lot.Code, lot.MaterialName, lot.Unit, lot.OnHand, lot.Status, why, toDo);

    private static string DateWord(LotRow lot) => lot.UseBy!.Reason switch
    {
        ExpiryReason.Retest => "Retest date",
        ExpiryReason.Opened => "Life after opening ends",
        _ => "Expiry",
    };
}
