namespace MakerStudio.Core.Costing;

/// <summary>A quantity of one lot used up, at that lot's own unit cost (per the same unit as the quantity).</summary>
/// <param name="Quantity">0 or more.</param>
/// <param name="UnitCost">0 or more, not rounded.</param>
public sealed record CostedUse(string Label, decimal Quantity, decimal UnitCost)
{
    /// <summary>Not rounded.</summary>
    public decimal Cost => Quantity * UnitCost;
}

/// <summary>The cost of one batch; nothing in it is rounded.</summary>
/// <param name="PerFilled">Null when nothing was filled: a cost per bottle is then unknown, not zero.</param>
/// <param name="Saleable">Filled less rejected less retained.</param>
/// <param name="PerSaleable">Null when nothing is left to sell.</param>
public sealed record BatchCostSheet(
    decimal MaterialsTotal,
    decimal PackagingTotal,
    decimal Labour,
    decimal Overhead,
    decimal Total,
    int Filled,
    decimal? PerFilled,
    int Saleable,
    decimal? PerSaleable);

/// <summary>
/// Rolls the cost of a batch up to its bottles. Normal loss, rejects and retain samples are carried by the units
/// left to sell; curing time costs nothing. Abnormal loss (a dropped drum) is no part of the sheet: IAS 2 keeps it
/// out of the cost of inventory, so it is posted as an adjustment of its lot.
/// </summary>
public static class BatchCost
{
    private const decimal MinutesPerHour = 60m;

    /// <param name="labourMinutes">Hands-on minutes, 0 or more.</param>
    /// <param name="overheadPerUnit">Charged for each unit filled, rejects included.</param>
    /// <exception cref="ArgumentOutOfRangeException">
    /// An amount or count is below zero, or more is rejected and retained than was filled.
    /// </exception>
    public static BatchCostSheet Of(
        IReadOnlyList<CostedUse> materials,
        IReadOnlyList<CostedUse> packaging,
        decimal labourMinutes,
        decimal labourRatePerHour,
        decimal overheadPerBatch,
        decimal overheadPerUnit,
        int filled,
        int rejected,
        int retained)
    {
        RefuseNegative(labourMinutes, labourRatePerHour, overheadPerBatch, overheadPerUnit);
        RefuseNegative(filled, rejected, retained);
        var saleable = filled - rejected - retained;
        if (saleable < 0)
        {
            throw new ArgumentOutOfRangeException(nameof(filled), "More is rejected and retained than was filled.");
        }
        var materialsTotal = CostOf(materials);
        var packagingTotal = CostOf(packaging);
        var labour = labourMinutes * labourRatePerHour / MinutesPerHour;
        var overhead = overheadPerBatch + filled * overheadPerUnit;
        var total = materialsTotal + packagingTotal + labour + overhead;
        return new BatchCostSheet(
            materialsTotal, packagingTotal, labour, overhead, total,
            filled, Each(total, filled), saleable, Each(total, saleable));
    }

    /// <summary>
    /// The same sheet once the true cost of its materials is known, e.g. when a late receipt is matched. Only the
    /// materials change; packaging, labour and overhead stand as they were.
    /// </summary>
    /// <exception cref="ArgumentOutOfRangeException">A quantity or unit cost is below zero.</exception>
    public static BatchCostSheet WithMaterials(BatchCostSheet sheet, IReadOnlyList<CostedUse> materials)
    {
        ArgumentNullException.ThrowIfNull(sheet);
        var materialsTotal = CostOf(materials);
        var total = sheet.Total - sheet.MaterialsTotal + materialsTotal;
        return sheet with
        {
            MaterialsTotal = materialsTotal,
            Total = total,
            PerFilled = Each(total, sheet.Filled),
            PerSaleable = Each(total, sheet.Saleable),
        };
    }

    private static decimal? Each(decimal total, int count) => count == 0 ? null : total / count;

    private static decimal CostOf(IReadOnlyList<CostedUse> uses)
    {
        ArgumentNullException.ThrowIfNull(uses);
        foreach (var use in uses)
        {
            RefuseNegative(use.Quantity, use.UnitCost);
        }
        return uses.Sum(u => u.Cost);
    }

    private static void RefuseNegative(params ReadOnlySpan<decimal> amounts)
    {
        foreach (var amount in amounts)
        {
            ArgumentOutOfRangeException.ThrowIfLessThan(amount, 0m);
        }
    }
}
