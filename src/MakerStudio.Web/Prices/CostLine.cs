using MakerStudio.Core.Prices;

namespace MakerStudio.Web.Prices;

/// <summary>One line of what goes into a batch, not rounded.</summary>
/// <param name="Price">Of one <paramref name="Per"/>.</param>
internal sealed record CostLine(string Name, decimal Quantity, string Unit, decimal Price, string Per, decimal Cost)
{
    private const decimal GramsPerKilogram = 1000m;

    /// <summary>Materials, packaging, labour, overhead; those of nothing left out. They add up to the cost of the batch.</summary>
    public static IReadOnlyList<CostLine> Of(ProductPlan plan)
    {
        var filled = plan.Filled;
        List<CostLine> lines =
        [
            .. plan.Materials.Select(m => new CostLine(m.Name, m.Quantity, "g", GramsPerKilogram * m.UnitCost, "/kg", m.Quantity * m.UnitCost)),
            .. plan.Parts.Select(p => new CostLine(p.Name, (decimal)p.CountPerUnit * filled, "each", p.UnitCost, "each", (decimal)p.CountPerUnit * filled * p.UnitCost)),
            new("Labour", plan.LabourMinutes, "min", plan.LabourRatePerHour, "/h", plan.LabourMinutes / 60m * plan.LabourRatePerHour),
            new("Overhead of the batch", 1m, "batch", plan.OverheadPerBatch, "/batch", plan.OverheadPerBatch),
            new("Overhead of each", filled, "each", plan.OverheadPerUnit, "each", filled * plan.OverheadPerUnit),
        ];
        return [.. lines.Where(l => l.Cost != 0)];
    }
}
