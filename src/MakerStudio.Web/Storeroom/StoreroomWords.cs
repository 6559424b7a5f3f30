using System.Globalization;
using MakerStudio.Core.Materials;
using MakerStudio.Core.Quantities;
using MakerStudio.Core.Stock;
using MakerStudio.Services.Inventory;
using MakerStudio.Web.Shell.Fields;
using MakerStudio.Web.Shell.Parts;
using MakerStudio.Web.Shell.Sheets;

namespace MakerStudio.Web.Storeroom;

/// <summary>How the storeroom's rows are grouped, drawn and said.</summary>
internal static class StoreroomWords
{
    /// <summary>The names of the groups, in their order on the page.</summary>
    public static IReadOnlyList<string> Groups { get; } = ["Fragrance and essential oils", "Solvents, fixatives, wax", "Pre-blends", "Packaging"];

    public static string Group(MaterialKind kind) => kind switch
    {
        MaterialKind.FragranceOil or MaterialKind.EssentialOil => Groups[0],
        MaterialKind.PreBlend => Groups[2],
        _ when MaterialKinds.IsPackaging(kind) => Groups[3],
        _ => Groups[1],
    };

    /// <summary>What is used, the one that is shortest against its lead time first.</summary>
    public static IReadOnlyList<StockRow> ByCover(IEnumerable<StockRow> rows) =>
        [.. rows.Where(r => r.CoverDays is not null).OrderBy(r => r.CoverDays!.Value - (r.LeadDays ?? 0)).ThenBy(r => r.Name, StringComparer.CurrentCulture)];

    public static StatusKind Status(LotStatus status, long onHand) => status switch
    {
        LotStatus.Rejected => StatusKind.Rejected,
        _ when onHand == 0 => StatusKind.UsedUp,
        LotStatus.Quarantine => StatusKind.Quarantine,
        LotStatus.OnHold => StatusKind.OnHold,
        _ => StatusKind.Released,
    };

    /// <summary>"1 lot", "61 lots", "0 lots".</summary>
    public static string Count(int count, string one) =>
        $"{QuantityFormat.Number(count, CultureInfo.CurrentCulture, 0)} {one}{(count == 1 ? "" : "s")}";

    /// <summary>For a column: 3 decimals a kg, 4 a piece.</summary>
    public static string UnitCost(decimal unitCost, StockUnit unit) => Price(SheetNumbers.PerKilogramOrPiece(unitCost, unit), unit) + (unit == StockUnit.Gram ? "/kg" : "");

    /// <summary>For a column whose head says per what: 3 decimals a kg, 4 a piece.</summary>
    /// <param name="shown">Of one kg or one piece.</param>
    public static string Price(decimal shown, StockUnit unit) => QuantityFormat.Number(shown, CultureInfo.CurrentCulture, unit == StockUnit.Gram ? 3 : 4);

    /// <summary>"3.2 months" from 60 days on, else days.</summary>
    public static string Months(decimal days) => days < MonthsFromDays
        ? Count((int)decimal.Floor(Math.Max(days, 0)), "day")
        : $"{QuantityFormat.Number(days / Reorder.DaysPerMonth, CultureInfo.CurrentCulture, 1)} months";

    private const int MonthsFromDays = 60;

    /// <summary>Number and unit of what was typed in one field; as it was when it has no unit of its own.</summary>
    public static (string? Quantity, string? Unit) Parted(string? typed, string? shown) =>
        QuantityText.Parse(typed, new QuantityTextOptions(QuantityReadout.DecimalMark, MaxDecimals: TypedDecimals)) is QuantityReading.Read { AmountUnit: { } unit } read
            ? (QuantityReadout.Plain(read.Value), AmountUnits.Symbol(unit))
            : (typed, shown);

    private const int TypedDecimals = 6;

    public static string State(OrderState state) => state switch
    {
        OrderState.PartReceived => "Part received",
        OrderState.Received => "Received",
        OrderState.Closed => "Closed",
        _ => "On its way",
    };

    /// <summary>Units a quantity may be typed in, as they stand in a list.</summary>
    public static IReadOnlyList<string> TypedUnits { get; } = [.. AmountUnits.All.Where(u => u != AmountUnit.Milligram).Select(AmountUnits.Symbol)];

    /// <summary>The unit for a material that was just chosen: as it stands, unless that counts what is weighed or weighs what is counted.</summary>
    public static string? UnitFor(StockUnit stockedIn, string? shown)
    {
        var each = AmountUnits.Symbol(AmountUnit.Each);
        return (shown == each) == (stockedIn == StockUnit.Each) ? shown : stockedIn == StockUnit.Each ? each : AmountUnits.Symbol(AmountUnit.Kilogram);
    }

    public static string LotHref(string code) => "/storeroom/lots/" + Uri.EscapeDataString(code);

    public static string Why(ExpiryReason reason) => reason switch
    {
        ExpiryReason.SupplierExpiry => "the supplier's expiry",
        ExpiryReason.Retest => "retest",
        _ => "life after opening",
    };
}
