using MakerStudio.Core.Costing;

namespace MakerStudio.Core.Prices;

/// <summary>What a material is to the fragrance load.</summary>
public enum LoadRole
{
    /// <summary>Counts to the load.</summary>
    Scent,

    /// <summary>Makes up the difference when the load changes.</summary>
    Carrier,

    /// <summary>Stays as it is.</summary>
    Other,
}

/// <param name="Quantity">In the batch, above 0, in the unit the cost is per (kg or g).</param>
public sealed record PlannedMaterial(Guid MaterialId, string Name, decimal Quantity, decimal UnitCost, LoadRole Role);

public sealed record PlannedPart(Guid MaterialId, string Name, int CountPerUnit, decimal UnitCost);

/// <summary>A tag in a channel.</summary>
public sealed record TagInChannel(Channel Channel, decimal Tag);

/// <summary>
/// A product as a typical batch of it: enough to cost a unit anew when a price, a load, a yield or a fee changes.
/// </summary>
/// <param name="FillQuantity">In one unit, in the unit of the materials.</param>
/// <param name="Yield">Part of what is weighed in that ends in filled units: a fraction, at most 1.</param>
/// <param name="NotSold">Rejected and retained units of a batch.</param>
/// <param name="MarginFloor">A fraction; null when none is watched.</param>
public sealed record ProductPlan(
    Guid Id,
    string Name,
    IReadOnlyList<PlannedMaterial> Materials,
    IReadOnlyList<PlannedPart> Parts,
    decimal FillQuantity,
    decimal Yield,
    int NotSold,
    decimal LabourMinutes,
    decimal LabourRatePerHour,
    decimal OverheadPerBatch,
    decimal OverheadPerUnit,
    IReadOnlyList<TagInChannel> Prices,
    decimal? MarginFloor = null)
{
    /// <summary>Digits beyond which a count of units is noise of a division.</summary>
    private const int CountDigits = 9;

    public decimal BatchQuantity => Materials.Sum(m => m.Quantity);

    /// <summary>A fraction of the batch.</summary>
    public decimal Load => BatchQuantity == 0 ? 0 : Scents.Sum(m => m.Quantity) / BatchQuantity;

    /// <summary>Whole units that the batch fills.</summary>
    public int Filled => (int)decimal.Floor(decimal.Round(BatchQuantity * Yield / FillQuantity, CountDigits));

    private IEnumerable<PlannedMaterial> Scents => Materials.Where(m => m.Role == LoadRole.Scent);

    private IEnumerable<PlannedMaterial> Carriers => Materials.Where(m => m.Role == LoadRole.Carrier);

    /// <summary>Why it cannot be costed, in a sentence; null when it can.</summary>
    public string? Problem() =>
        BatchQuantity <= 0 ? $"{Name}: nothing is weighed in."
        : FillQuantity <= 0 ? $"{Name}: say what one unit holds."
        : Yield is <= 0 or > 1 ? $"{Name}: a yield is above 0 % and at most 100 %."
        : Filled - NotSold < 1 ? $"{Name}: at this yield no unit is left to sell."
        : null;

    /// <summary>The cost sheet of the batch. Ask for <see cref="Problem"/> first.</summary>
    /// <exception cref="InvalidOperationException">There is a problem.</exception>
    public BatchCostSheet Cost()
    {
        if (Problem() is { } problem)
        {
            throw new InvalidOperationException(problem);
        }

        var filled = Filled;
        return BatchCost.Of(
            [.. Materials.Select(m => new CostedUse(m.Name, m.Quantity, m.UnitCost))],
            [.. Parts.Select(p => new CostedUse(p.Name, (decimal)p.CountPerUnit * filled, p.UnitCost))],
            LabourMinutes, LabourRatePerHour, OverheadPerBatch, OverheadPerUnit, filled, NotSold, 0);
    }

    /// <summary>Null when there is no fragrance or no carrier to trade against each other.</summary>
    public LoadModel? LoadModel() => !Scents.Any() || !Carriers.Any()
        ? null
        : new LoadModel(BatchQuantity, Load, AverageCost(Scents), AverageCost(Carriers), Filled - NotSold);

    /// <summary>The same batch at another load: fragrances and carriers keep their proportions among themselves.</summary>
    /// <param name="load">A fraction of the batch.</param>
    /// <returns>Null when there is nothing to trade, or the carriers cannot give that much.</returns>
    public ProductPlan? AtLoad(decimal load)
    {
        var scent = Scents.Sum(m => m.Quantity);
        var carrier = Carriers.Sum(m => m.Quantity);
        var wanted = BatchQuantity * load;
        var left = carrier + scent - wanted;
        return scent <= 0 || carrier <= 0 || wanted < 0 || left < 0
            ? null
            : this with
            {
                Materials = [.. Materials.Select(m => m.Role switch
                {
                    LoadRole.Scent => m with { Quantity = m.Quantity * wanted / scent },
                    LoadRole.Carrier => m with { Quantity = m.Quantity * left / carrier },
                    _ => m,
                })],
            };
    }

    private static decimal AverageCost(IEnumerable<PlannedMaterial> materials) =>
        materials.Sum(m => m.Quantity * m.UnitCost) / materials.Sum(m => m.Quantity);
}
