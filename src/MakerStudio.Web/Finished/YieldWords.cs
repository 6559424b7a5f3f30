using System.Globalization;
using MakerStudio.Services.Inventory;
using MakerStudio.Web.Shell;
using MakerStudio.Web.Shell.Drawings;

namespace MakerStudio.Web.Finished;

/// <summary>Yields of a formula as they are drawn and said.</summary>
internal static class YieldWords
{
    /// <summary>Bars of more batches than these say nothing; the table has all.</summary>
    public const int MostBars = 12;

    public static string Says(FormulaYields yields) => yields.Rows switch
    {
        [] => "No batch of it is finished yet.",
        [var only] => $"{only.Code} yielded {Written.Percent(only.Yield)} % of what was weighed in.{Accidents(yields)}",
        [.., var before, var last] => $"{Written.Percent(yields.Mean!.Value)} % over {Written.Count(yields.Rows.Count)} batches; {last.Code} yielded {Written.Percent(last.Yield)} %, {Change(before, last)}.{Accidents(yields)}",
    };

    /// <summary>"0.4 points less than RS-1 before it".</summary>
    private static string Change(YieldRow before, YieldRow last)
    {
        var change = Math.Round(100m * last.Yield, 1) - Math.Round(100m * before.Yield, 1);
        return change == 0 ? $"as {before.Code} before it" : $"{Written.AsStated(Math.Abs(change))} points {(change > 0 ? "more" : "less")} than {before.Code} before it";
    }

    private static string Accidents(FormulaYields yields) => yields.Rows.Where(r => r.AbnormalMilligrams > 0).ToList() switch
    {
        [] => "",
        var bad => $" Lost by accident and expensed: {string.Join(", ", bad.Select(r => $"{r.Code} {Written.RoundGrams(r.AbnormalMilligrams)} g"))}.",
    };

    public static IReadOnlyList<DayPoint> Points(FormulaYields yields) =>
        [.. yields.Rows.Select(r => new DayPoint(DateOnly.FromDateTime(r.At.UtcDateTime), Math.Round(100m * r.Yield, 2), r.SizeName ?? "into stock"))];

    /// <summary>What is in no unit, in per cent of what was weighed in: left over, normal, by accident.</summary>
    public static IReadOnlyList<BarRow> Losses(FormulaYields yields) =>
    [
        .. yields.Rows.TakeLast(MostBars).Select(r => new BarRow(
            [
                .. new BarPiece[]
                {
                    new("left over", 100m * r.Part(r.LeftMilligrams), Series.Quantity), new("filter, vessel, hose", 100m * r.Part(Math.Max(0, r.NormalMilligrams)), Series.Waiting),
                    new("accident", 100m * r.Part(r.AbnormalMilligrams), Series.Accident),
                }.Where(p => p.Value > 0),
            ],
            r.Code, $"{Written.Percent(1m - r.Yield)} %")),
    ];

    public static string LossesSay(FormulaYields yields) => $"Lost of what was weighed in: {string.Join(", ", yields.Rows.TakeLast(MostBars).Select(r => string.Create(
        CultureInfo.CurrentCulture, $"{r.Code} {Written.Percent(r.Part(r.LeftMilligrams))} % left over, {Written.Percent(r.Part(r.NormalMilligrams))} % in filter and vessel{(r.AbnormalMilligrams > 0 ? $", {Written.Percent(r.Part(r.AbnormalMilligrams))} % by accident" : "")}")))}.";
}
