using System.Globalization;
using MakerStudio.Core.Buying;
using MakerStudio.Core.Quantities;
using MakerStudio.Services.Inventory;
using MakerStudio.Web.Shell;

namespace MakerStudio.Web.Storeroom;

/// <summary>Prices of a material in sentences.</summary>
internal static class PriceSentences
{
    /// <summary>Prices on one day and more are said singly up to this many; then first, lowest, highest and last.</summary>
    private const int SaidSingly = 6;

    /// <summary>"Last landed at 65.800/kg on 22 Nov 2026 from Alder Supply; it fell 2.3 % since 15 Oct 2026."</summary>
    public static string Lead(MaterialPricesView view)
    {
        if (view.Trend is not { } trend)
        {
            return "Nothing of it was delivered yet. What its suppliers ask can be noted below.";
        }

        var last = view.Paid[0];
        var since = trend.SinceFirst is { } change ? $"; it {Went(change)} since {Written.Day(trend.First.On)}" : "";
        return $"Last landed at {Of(last.UnitCost, view.Material.Unit)} on {Written.Day(last.ReceivedOn)} from {last.Supplier}{since}.";
    }

    /// <summary>"rose 12.0 %", "fell 2.3 %" or "stayed the same".</summary>
    /// <param name="change">A fraction.</param>
    public static string Went(decimal change) => Math.Round(change, 3) switch
    {
        0 => "stayed the same",
        > 0 => $"rose {AmountWords.Percent(change, 1)}",
        _ => $"fell {AmountWords.Percent(-change, 1)}",
    };

    /// <summary>What the drawing says, for those who do not see it.</summary>
    public static string Drawing(MaterialPricesView view)
    {
        string Said(PricePoint point) => $"{Of(point.UnitCost, view.Material.Unit)} on {Written.Day(point.On)}";
        var paid = view.Paid.Reverse().ToList();
        if (view.Trend is not { } trend)
        {
            return $"Only estimates of {view.Material.Name} yet, of receipts to follow.";
        }

        var points = paid.Count <= SaidSingly
            ? string.Join(", ", paid.Select(p => $"{Of(p.UnitCost, view.Material.Unit)} on {Written.Day(p.ReceivedOn)} from {p.Supplier}"))
            : $"first {Said(trend.First)}, lowest {Said(trend.Lowest)}, highest {Said(trend.Highest)}, last {Said(trend.Last)}, from {string.Join(", ", paid.Select(p => p.Supplier).Distinct())}";
        var change = trend.SinceFirst is { } since ? $" It {Went(since)} since {Written.Day(trend.First.On)}." : "";
        var estimates = view.ToFollow.Count == 0 ? "" : $" {view.ToFollow.Count} at an estimate, receipt to follow.";
        return $"Landed prices of {view.Material.Name}: {points}.{change}{estimates}";
    }

    /// <summary>Why products may soon cost more than is reckoned.</summary>
    public static string Alert(PriceAlert alert, string material) => alert.IsAsked
        ? $"The lowest price asked for {material} is {AmountWords.Percent(alert.By, 0)} above what your products are costed with."
        : $"The last price of {material} is {AmountWords.Percent(alert.By, 0)} above what your products are costed with.";

    public static string AlertDetail(PriceAlert alert, StockUnit unit, IReadOnlyList<string> products)
    {
        var price = Of(alert.Price, unit);
        var which = alert.IsAsked
            ? $"{alert.Supplier} asks {price} landed since {Written.Day(alert.On)}"
            : $"{price} was paid to {alert.Supplier} on {Written.Day(alert.On)}, and that lot was rejected";
        var touched = products.Count switch
        {
            0 => "No product on sale holds it.",
            1 => $"{products[0]} holds it.",
            _ => $"{string.Join("; ", products)} hold it.",
        };
        return $"{which}; products are costed with {Of(alert.Reckoned, unit)}, the newest lot. {touched}";
    }

    /// <summary>Which break is cheapest, what it ties up, and what would outlast its life.</summary>
    public static IEnumerable<string> Verdict(ComparedBreaks compared, PricedMaterial material, int? lifeDays)
    {
        string Named(ComparedBreak b) => $"{Quantity(b.Asked)} from {b.Asked.Supplier}";
        string Cost(ComparedBreak b) => Of(b.Is.UnitCost, material.Unit);
        if (compared.Cheapest is { } best)
        {
            var lasts = best.Is.CoverMonths is { } months ? $"lasts {Months(months)} with what is there" : null;
            var ties = best.Is.TiedUp > 0 ? $"ties up {Written.Money(best.Is.TiedUp)} more than the smallest quantity" : null;
            var then = string.Join(" and ", new[] { ties, lasts }.OfType<string>());
            yield return $"{Named(best)} is cheapest: {Cost(best)} landed.{(then.Length == 0 ? "" : $" It {then}.")}";
        }

        var (life, smallest, lowest) = (StoreroomWords.Count(lifeDays ?? 0, "day"), compared.Rows[0], compared.Lowest);
        if (compared.Cheapest is null)
        {
            yield return smallest.Is.CoverDays is { } all
                ? $"None of these is used up in {life}: with what is there, even {Named(smallest)} would last {Days(all)}."
                : $"Nothing was used in the last {Stock.UseSpanDays} days, so nothing says that any of these would be used up in {life}.";
        }
        else if (lowest.Is.OutlastsLife)
        {
            yield return $"{Named(lowest)} would be {Cost(lowest)}, but it would last {Days(lowest.Is.CoverDays!.Value)} and must be used up in {life}.";
        }
    }

    private static string Days(decimal days) => StoreroomWords.Count((int)decimal.Floor(Math.Min(days, int.MaxValue)), "day");

    /// <summary>"67.374/kg" or "0.8648 each".</summary>
    /// <param name="unitCost">Of one gram or one piece.</param>
    public static string Of(decimal unitCost, StockUnit unit) => StoreroomWords.UnitCost(unitCost, unit) + (unit == StockUnit.Each ? " each" : "");

    public static string Quantity(PriceBreakRow row) => row.Unit == AmountUnit.Each
        ? AmountWords.Amount((long)row.Quantity, StockUnit.Each)
        : $"{QuantityFormat.Editable(row.Quantity, CultureInfo.CurrentCulture)} {AmountUnits.Symbol(row.Unit)}";

    public static string Months(decimal months) => $"{QuantityFormat.Number(months, CultureInfo.CurrentCulture, 1)} months";
}
