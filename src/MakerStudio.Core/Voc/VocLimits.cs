using System.Collections.Frozen;
using MakerStudio.Core.Products;
using MakerStudio.Core.Workings;

namespace MakerStudio.Core.Voc;

/// <param name="Percent">VOC by weight that must not be exceeded.</param>
/// <param name="From">For products made from this day on; null where the text gives no day.</param>
public sealed record VocLimitStep(decimal Percent, DateOnly? From, Source Source);

/// <summary>A row of the table of limits, with its steps over the years.</summary>
/// <param name="Key">Stable name in files and settings, such as "ca-air-freshener-liquid".</param>
/// <param name="Form">As the rule calls it.</param>
/// <param name="Steps">The earliest first; never empty.</param>
/// <param name="Until">The category ended: not for products made on this day or later.</param>
/// <param name="Note">What to know before choosing it; may be empty.</param>
public sealed record VocLimit(
    string Key,
    string Jurisdiction,
    VocDefinition Definition,
    string Category,
    string Form,
    VocForm Fits,
    IReadOnlyList<VocLimitStep> Steps,
    DateOnly? Until,
    string Note)
{
    /// <summary>The category of air fresheners, which keeps a fragrance exemption in California after 2030.</summary>
    public bool IsForAirFresheners => Category == VocLimits.AirFreshener;

    public string Name => $"{Jurisdiction}: {Category}, {Form}";

    /// <summary>The step in force for what is made on a day; null before the first and after the end.</summary>
    public VocLimitStep? On(DateOnly day) => day >= Until ? null : Steps.LastOrDefault(step => step.From is null || step.From <= day);
}

/// <summary>
/// Limits on volatile organic compounds in the United States. The studio chooses which apply to it. The EU has none
/// for air fresheners (from memory).
/// </summary>
public static class VocLimits
{
    internal const string AirFreshener = "Air freshener";

    public static IReadOnlyList<VocLimit> All { get; } = [.. DataTable.Read("voc_limits.csv").GroupBy(row => row.Text("key")).Select(Read)];

    private static readonly FrozenDictionary<string, VocLimit> ByKey =
        All.ToFrozenDictionary(limit => limit.Key, StringComparer.OrdinalIgnoreCase);

    /// <summary>Null where no row has the key.</summary>
    public static VocLimit? Find(string key)
    {
        ArgumentNullException.ThrowIfNull(key);
        return ByKey.GetValueOrDefault(key.Trim());
    }

    /// <summary>Rows that fit a kind of product and are in force: suggestions to choose from.</summary>
    public static IReadOnlyList<VocLimit> For(ProductKind kind, DateOnly on)
    {
        ArgumentNullException.ThrowIfNull(kind);
        return [.. All.Where(limit => kind.VocForms.Contains(limit.Fits) && limit.On(on) is not null)];
    }

    private static VocLimit Read(IGrouping<string, DataRow> steps)
    {
        DataRow row = steps.First();
        return new(
            steps.Key,
            row.Text("jurisdiction"),
            Enum.Parse<VocDefinition>(row.Text("definition")),
            row.Text("category"),
            row.Text("form"),
            Enum.Parse<VocForm>(row.Text("fits")),
            [.. steps.Select(step => new VocLimitStep(step.Decimal("limit_pct"), step.DateOrNull("from"), step.Source())).OrderBy(step => step.From)],
            row.DateOrNull("until"),
            row.Text("note"));
    }
}
