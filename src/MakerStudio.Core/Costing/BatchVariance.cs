using MakerStudio.Core.Stock;
using MakerStudio.Core.Workings;

namespace MakerStudio.Core.Costing;

/// <summary>A line of cost as it was planned.</summary>
/// <param name="Quantity">For the batch, or for one filled unit.</param>
/// <param name="IsPerUnit">Packaging and overhead of units follow the units filled.</param>
/// <param name="UnitCost">The price it was planned at.</param>
public sealed record PlannedLine(CostItem Item, string Label, decimal Quantity, decimal UnitCost, bool IsPerUnit = false);

/// <param name="Filled">Units planned, above 0.</param>
/// <param name="Saleable">Planned to be left after rejects and samples, above 0.</param>
public sealed record PlannedBatch(IReadOnlyList<PlannedLine> Lines, int Filled, int Saleable);

/// <summary>Why one line cost something else than planned; money, above 0 is dearer.</summary>
/// <param name="PlannedQuantity">For as many units as were filled.</param>
/// <param name="Price">Paid another price: actual cost − actual quantity × planned price.</param>
/// <param name="Quantity">Used another quantity: (actual − planned quantity) × planned price.</param>
public sealed record VarianceLine(CostItem Item, string Label, decimal PlannedQuantity, decimal PlannedUnitCost, decimal ActualQuantity, decimal ActualCost, decimal Price, decimal Quantity);

/// <summary>
/// Why the bottles of a batch cost something else than planned. Money, above 0 is dearer; price + quantity + yield −
/// abnormal is the difference, exactly.
/// </summary>
/// <param name="Planned">Planned cost of as many saleable units as there are.</param>
/// <param name="Actual">What those units carry.</param>
/// <param name="Yield">More or fewer saleable units out of one batch than planned.</param>
/// <param name="Abnormal">Expensed, and so not in the bottles.</param>
/// <param name="PlannedEach">Of one saleable unit.</param>
/// <param name="ActualEach">Null when nothing is left to sell.</param>
public sealed record BatchVariance(
    decimal Planned,
    decimal Actual,
    decimal Price,
    decimal Quantity,
    decimal Yield,
    decimal Abnormal,
    decimal PlannedEach,
    decimal? ActualEach,
    IReadOnlyList<VarianceLine> Lines,
    IReadOnlyList<WorkingStep> Workings)
{
    private const string Rule = "Planned against actual";
    private static readonly Source Definition = new("definition of price, quantity and yield difference", DataStatus.Derived);

    public decimal Difference => Actual - Planned;

    /// <remarks>
    /// The plan is first brought to the units that were filled (packaging follows them, materials do not), then each
    /// line is compared with it. What the plan so brought costs beyond the planned cost of the units left to sell is
    /// the difference in yield. What was used and not planned is all quantity; what was planned and not used, too.
    /// </remarks>
    /// <exception cref="ArgumentOutOfRangeException">A planned count is below 1, or a planned amount below zero.</exception>
    public static BatchVariance Of(PlannedBatch plan, BatchRollUp actual)
    {
        ArgumentNullException.ThrowIfNull(plan);
        ArgumentNullException.ThrowIfNull(actual);
        ArgumentOutOfRangeException.ThrowIfLessThan(plan.Saleable, 1, nameof(plan));
        ArgumentOutOfRangeException.ThrowIfLessThan(plan.Filled, plan.Saleable, nameof(plan));
        foreach (var line in plan.Lines)
        {
            ArgumentOutOfRangeException.ThrowIfLessThan(line.Quantity, 0m, nameof(plan));
            ArgumentOutOfRangeException.ThrowIfLessThan(line.UnitCost, 0m, nameof(plan));
        }

        var lines = LinesOf(plan, actual).ToList();
        var each = plan.Lines.Sum(l => l.Quantity * (l.IsPerUnit ? plan.Filled : 1) * l.UnitCost) / plan.Saleable;
        var planned = Cut(each * actual.Saleable);
        var (price, quantity) = (Cut(lines.Sum(l => l.Price)), Cut(lines.Sum(l => l.Quantity)));
        // All parts are cut at a decimal, and yield takes what that leaves, so that they add up exactly.
        var (carried, abnormal) = (Cut(actual.InStock), Cut(actual.Expensed));
        var yield = carried + abnormal - price - quantity - planned;
        return new BatchVariance(
            planned, carried, price, quantity, yield, abnormal, each, actual.PerSaleable, lines,
            [
                new(Rule, $"{actual.Saleable} units to sell, planned at {each:0.0000} each: {planned:0.0000}.", Definition),
                new(Rule, $"Other prices {price:+0.0000;−0.0000;0}, other quantities {quantity:+0.0000;−0.0000;0}, another yield {yield:+0.0000;−0.0000;0}, expensed {-abnormal:+0.0000;−0.0000;0}.", Definition),
                new(Rule, $"Together {carried:0.0000}, {carried - planned:+0.0000;−0.0000;0} against the plan.", Definition),
            ]);
    }

    private static IEnumerable<VarianceLine> LinesOf(PlannedBatch plan, BatchRollUp actual)
    {
        var used = actual.Lines.GroupBy(l => l.Item).ToDictionary(g => g.Key, g => (g.First().Label, Quantity: g.Sum(l => l.Quantity), Cost: g.Sum(l => l.Cost)));
        foreach (var planned in plan.Lines.GroupBy(l => l.Item))
        {
            var quantity = planned.Sum(l => Brought(l, actual.Filled));
            var cost = planned.Sum(l => Brought(l, actual.Filled) * l.UnitCost);
            var unitCost = quantity == 0 ? planned.First().UnitCost : cost / quantity;
            yield return Compare(planned.Key, planned.First().Label, quantity, unitCost, used.GetValueOrDefault(planned.Key));
        }

        foreach (var (item, unplanned) in used.Where(u => u.Value.Cost != 0 && plan.Lines.All(l => l.Item != u.Key)))
        {
            yield return new VarianceLine(item, unplanned.Label, 0m, 0m, unplanned.Quantity, unplanned.Cost, 0m, unplanned.Cost);
        }
    }

    private static decimal Cut(decimal money) => decimal.Round(money, ValuePool.ShareDecimals);

    private static decimal Brought(PlannedLine line, int filled) => line.IsPerUnit ? line.Quantity * filled : line.Quantity;

    private static VarianceLine Compare(CostItem item, string label, decimal quantity, decimal unitCost, (string Label, decimal Quantity, decimal Cost) used) => new(
        item, label, quantity, unitCost, used.Quantity, used.Cost, used.Cost - used.Quantity * unitCost, used.Quantity * unitCost - quantity * unitCost);
}
