using System.Globalization;
using MakerStudio.Services.Inventory;
using MakerStudio.Web.Shell;
using MakerStudio.Web.Shell.Drawings;

namespace MakerStudio.Web.Finished;

/// <param name="Amount">Money for the whole batch, not rounded.</param>
public sealed record CostStep(string Name, decimal Amount, Series Series)
{
    /// <summary>The cost of a filled batch as steps that follow each other.</summary>
    public static IReadOnlyList<CostStep> Of(BatchRecord record, FilledRow fill) =>
    [
        .. record.Weighed.GroupBy(w => w.Material).Select(g => new CostStep(g.Key, g.Sum(w => w.Cost), MaterialSeries.Of(g.First().Kind))),
        new("Packaging", fill.Packaging, Series.Packaging),
        new($"Labour, {fill.LabourMinutes.ToString("0.##", CultureInfo.CurrentCulture)} min at {Written.Money(fill.LabourRatePerHour)}/h", fill.Labour, Series.Labour),
        new("Overhead", fill.Overhead, Series.Overhead),
    ];
}
