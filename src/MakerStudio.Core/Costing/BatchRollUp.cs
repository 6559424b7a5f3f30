using MakerStudio.Core.Stock;
using MakerStudio.Core.Workings;

namespace MakerStudio.Core.Costing;

public enum CostKind
{
    Material,
    Packaging,
    Labour,
    OverheadOfBatch,
    OverheadOfUnits,
}

/// <summary>What a line of cost is for.</summary>
/// <param name="MaterialId">Null for labour and overhead.</param>
public readonly record struct CostItem(CostKind Kind, Guid? MaterialId = null);

/// <summary>A quantity of one lot used up, at that lot's own cost per the same unit.</summary>
/// <param name="Lot">Code of the lot, or what stands in for it until its receipt is matched.</param>
public sealed record LotUse(Guid MaterialId, string Material, string Lot, decimal Quantity, decimal UnitCost);

/// <summary>Everything a batch took, and what came of it.</summary>
/// <param name="ToFilling">Mass that reached filling, in the unit of the materials; null when the batch is not filled.</param>
/// <param name="InUnits">Mass in the filled units, in the same unit.</param>
/// <param name="AbnormalQuantity">Bulk lost in a way that is not normal, in the same unit: a dropped drum.</param>
/// <param name="AbnormalUnits">Filled units lost in a way that is not normal: a fallen tray.</param>
public sealed record BatchInputs(
    IReadOnlyList<LotUse> Materials,
    IReadOnlyList<LotUse> Packaging,
    decimal LabourMinutes,
    decimal LabourRatePerHour,
    decimal OverheadPerBatch,
    decimal OverheadPerUnit,
    int Filled,
    int Rejected,
    int Retained,
    decimal? ToFilling = null,
    decimal InUnits = 0m,
    decimal AbnormalQuantity = 0m,
    int AbnormalUnits = 0);

/// <summary>One line of a roll-up; not rounded.</summary>
/// <param name="Lot">Null for labour and overhead.</param>
/// <param name="Share">Part of the batch's total, a fraction.</param>
/// <param name="PerSaleable">What of it lies in one saleable unit; over all lines these add up to the unit's cost, but for digits beyond the tenth decimal.</param>
public sealed record RollUpLine(
    CostItem Item, string Label, string? Lot, decimal Quantity, decimal UnitCost, decimal Cost, decimal Share, decimal? PerFilled, decimal? PerSaleable);

/// <summary>Normal losses, which the saleable units carry; they are in the lines already.</summary>
/// <param name="Bulk">Material that was weighed in and is in no unit.</param>
/// <param name="Units">Units rejected and retained, at the cost of a filled one.</param>
public sealed record CarriedLoss(decimal Bulk, decimal Units);

/// <summary>The cost of a batch, opened; not rounded. Totals and abnormal loss add up exactly.</summary>
/// <param name="Total">All the batch took.</param>
/// <param name="Expensed">Abnormal loss: an expense of the period, kept out of the bottles.</param>
/// <param name="InStock">Total less expensed: what the saleable units carry, or the batch until it is filled.</param>
/// <param name="Saleable">Filled − rejected − retained − lost abnormally.</param>
/// <param name="PerFilled">Before rejects and samples; null when nothing was filled.</param>
/// <param name="PerSaleable">Null when nothing is left to sell; of a filled batch all is then expensed.</param>
public sealed record BatchRollUp(
    IReadOnlyList<RollUpLine> Lines,
    decimal Total,
    decimal Expensed,
    decimal InStock,
    int Filled,
    int Saleable,
    decimal? PerFilled,
    decimal? PerSaleable,
    CarriedLoss Loss,
    IReadOnlyList<WorkingStep> Workings)
{
    private const string Rule = "Cost of a batch";
    private const decimal MinutesPerHour = 60m;
    private static readonly Source Ias2 = new("IAS 2 Inventories: abnormal waste is no cost of inventory", DataStatus.Secondary);
    private static readonly Source Sums = new("weighings, packaging used, minutes and rates of the batch", DataStatus.Derived);

    /// <remarks>
    /// An abnormal loss is valued as good output is, at the cost per expected unit: bulk at the materials ÷ (what
    /// reached filling + what was lost), units at the total ÷ (filled − rejected − retained). So the cost of a bottle
    /// is what it would have been without the accident.
    /// </remarks>
    /// <exception cref="ArgumentOutOfRangeException">
    /// As <see cref="BatchCost.Of"/>, or more is lost than was left.
    /// </exception>
    public static BatchRollUp Of(BatchInputs inputs)
    {
        ArgumentNullException.ThrowIfNull(inputs);
        var sheet = BatchCost.Of(
            Uses(inputs.Materials), Uses(inputs.Packaging), inputs.LabourMinutes, inputs.LabourRatePerHour,
            inputs.OverheadPerBatch, inputs.OverheadPerUnit, inputs.Filled, inputs.Rejected, inputs.Retained);
        var saleable = sheet.Saleable - inputs.AbnormalUnits;
        ArgumentOutOfRangeException.ThrowIfNegative(inputs.AbnormalUnits, nameof(inputs));
        ArgumentOutOfRangeException.ThrowIfLessThan(inputs.AbnormalQuantity, 0m, nameof(inputs));
        ArgumentOutOfRangeException.ThrowIfNegative(saleable, nameof(inputs));
        var bulkPart = BulkPart(inputs);
        // Parts are cut at a decimal, so that what is kept and what is expensed add up to the total exactly.
        var bulk = decimal.Round(sheet.MaterialsTotal * bulkPart, ValuePool.ShareDecimals);
        var kept = sheet.Total - bulk;
        var inStock = inputs.Filled == 0 || saleable == sheet.Saleable && saleable > 0 ? kept
            : saleable == 0 ? 0m
            : new ValuePool(sheet.Saleable, kept).Take(saleable).Taken.Value;
        decimal? each = saleable == 0 ? null : kept / sheet.Saleable;
        decimal? perFilled = inputs.Filled == 0 ? null : kept / inputs.Filled;
        return new BatchRollUp(
            [.. LinesOf(inputs, sheet, bulkPart, saleable > 0)], sheet.Total, sheet.Total - inStock, inStock, inputs.Filled, saleable, perFilled, each,
            new CarriedLoss(
                NormalBulk(inputs, sheet.MaterialsTotal - bulk), (perFilled ?? 0m) * (inputs.Rejected + inputs.Retained)),
            [.. Steps(inputs, sheet, bulk, sheet.Total - inStock, perFilled, each, saleable)]);
    }

    private static decimal BulkPart(BatchInputs inputs) => inputs.AbnormalQuantity == 0
        ? 0m
        : inputs.AbnormalQuantity / (inputs.AbnormalQuantity + (inputs.ToFilling ?? Math.Max(0m, inputs.Materials.Sum(m => m.Quantity) - inputs.AbnormalQuantity)));

    private static decimal NormalBulk(BatchInputs inputs, decimal materials)
    {
        var weighed = inputs.Materials.Sum(m => m.Quantity) - inputs.AbnormalQuantity;
        return weighed <= 0 || inputs.Filled == 0 ? 0m : materials * Math.Max(0m, weighed - inputs.InUnits) / weighed;
    }

    private static IEnumerable<RollUpLine> LinesOf(BatchInputs inputs, BatchCostSheet sheet, decimal bulkPart, bool isSold)
    {
        RollUpLine Line(CostItem item, string label, string? lot, decimal quantity, decimal unitCost, decimal cost)
        {
            var kept = item.Kind == CostKind.Material ? cost - cost * bulkPart : cost;
            return new(item, label, lot, quantity, unitCost, cost, sheet.Total == 0 ? 0m : cost / sheet.Total,
                inputs.Filled == 0 ? null : kept / inputs.Filled, isSold ? kept / sheet.Saleable : null);
        }

        foreach (var use in inputs.Materials)
        {
            yield return Line(new(CostKind.Material, use.MaterialId), use.Material, use.Lot, use.Quantity, use.UnitCost, use.Quantity * use.UnitCost);
        }

        foreach (var use in inputs.Packaging)
        {
            yield return Line(new(CostKind.Packaging, use.MaterialId), use.Material, use.Lot, use.Quantity, use.UnitCost, use.Quantity * use.UnitCost);
        }

        yield return Line(new(CostKind.Labour), "Labour, minutes", null, inputs.LabourMinutes, inputs.LabourRatePerHour / MinutesPerHour, sheet.Labour);
        yield return Line(new(CostKind.OverheadOfBatch), "Overhead of the batch", null, 1m, inputs.OverheadPerBatch, inputs.OverheadPerBatch);
        yield return Line(new(CostKind.OverheadOfUnits), "Overhead of units filled", null, inputs.Filled, inputs.OverheadPerUnit, inputs.OverheadPerUnit * inputs.Filled);
    }

    private static IReadOnlyList<CostedUse> Uses(IReadOnlyList<LotUse> uses)
    {
        ArgumentNullException.ThrowIfNull(uses);
        return [.. uses.Select(u => new CostedUse(u.Lot, u.Quantity, u.UnitCost))];
    }

    private static IEnumerable<WorkingStep> Steps(
        BatchInputs inputs, BatchCostSheet sheet, decimal bulk, decimal expensed, decimal? perFilled, decimal? each, int saleable)
    {
        yield return new(Rule, $"Materials {sheet.MaterialsTotal:0.0000} + packaging {sheet.PackagingTotal:0.0000} + labour {sheet.Labour:0.0000} + overhead {sheet.Overhead:0.0000}: {sheet.Total:0.0000}.", Sums);
        if (bulk > 0)
        {
            yield return new(Rule, $"Abnormal loss of {inputs.AbnormalQuantity:0.###} of the bulk: {bulk:0.0000} is expensed.", Ias2);
        }

        if (inputs.AbnormalUnits > 0 && saleable > 0)
        {
            yield return new(Rule, $"Abnormal loss of {inputs.AbnormalUnits} units at {each:0.0000}: {inputs.AbnormalUnits * each:0.0000} is expensed.", Ias2);
        }

        if (perFilled is { } filledCost)
        {
            yield return new(Rule, $"÷ {inputs.Filled} filled: {filledCost:0.0000}.", Sums);
        }

        yield return inputs.Filled == 0 ? new(Rule, $"Not filled yet: it stands in work in progress at {sheet.Total - expensed:0.0000}.", Sums)
            : each is { } cost
            ? new(Rule, $"{inputs.Rejected} rejected and {inputs.Retained} retained are carried by the others: {cost:0.0000} for each unit to sell.", Sums)
            : new(Rule, $"Nothing is left to sell, so all of {expensed:0.0000} is expensed.", Ias2);
    }
}
