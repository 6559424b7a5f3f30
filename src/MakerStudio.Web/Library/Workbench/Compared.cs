using System.Globalization;
using MakerStudio.Core.Assessing;
using MakerStudio.Services.Formulation;

namespace MakerStudio.Web.Library.Workbench;

/// <summary>The share of a material in two versions, per cent by weight; null where it is in none.</summary>
public sealed record ComparedLine(Guid MaterialId, string Material, decimal? Old, decimal? New);

/// <summary>A result that differs, as each of the two says it; null where one says nothing.</summary>
public sealed record ComparedResult(string Key, string What, string? Old, string? New);

/// <summary>Two versions side by side, for the page and for its files. Pure.</summary>
public static class Compared
{
    private const decimal Kilogram = 1000m;

    /// <param name="oldSheet">Of the older one where it is of another formula.</param>
    public static IReadOnlyList<ComparedLine> Lines(Consequences old, Consequences now, FormulaSheet sheet, FormulaSheet? oldSheet)
    {
        ArgumentNullException.ThrowIfNull(old);
        ArgumentNullException.ThrowIfNull(now);
        ArgumentNullException.ThrowIfNull(sheet);
        return
        [
            .. now.Version.Lines.Concat(old.Version.Lines).Select(l => l.MaterialId).Distinct().Select(id => new ComparedLine(
                id, (sheet.Materials.GetValueOrDefault(id) ?? oldSheet?.Materials.GetValueOrDefault(id))?.Name ?? "", Share(old, id), Share(now, id))),
        ];
    }

    /// <summary>Whatever follows otherwise, in the culture of the reader.</summary>
    public static IReadOnlyList<ComparedResult> Results(Consequences old, Consequences now)
    {
        ArgumentNullException.ThrowIfNull(old);
        ArgumentNullException.ThrowIfNull(now);
        return
        [
            .. Differing("scent", "Scent, of the total", Scent(old), Scent(now)),
            .. old.Result is { } before && now.Result is { } after
                ? AssessmentDifference.Between(before, after).Select(d => new ComparedResult(d.Key, d.What, d.Before?.Says(CultureInfo.CurrentCulture), d.After?.Says(CultureInfo.CurrentCulture)))
                : [],
            .. Differing("cost", "Materials for 1 kg", Cost(old), Cost(now)),
        ];
    }

    private static decimal? Share(Consequences of, Guid id) =>
        of.Version.Lines.Zip(of.Worked.Shares).Where(l => l.First.MaterialId == id).Select(l => l.Second.PercentShown).ToArray() is { Length: > 0 } shares ? shares.Sum() : null;

    private static IEnumerable<ComparedResult> Differing(string key, string what, string? old, string? now) => old == now ? [] : [new(key, what, old, now)];

    private static string? Scent(Consequences of) => of.Worked.Load is { } load ? $"{Said.Percent(load.OfTotal)} %" : null;

    private static string? Cost(Consequences of) => of.Worked.CostPerGram is { } gram ? Said.Money(gram * Kilogram) : null;
}
