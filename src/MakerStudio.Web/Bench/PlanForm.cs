using MakerStudio.Core.Quantities;
using MakerStudio.Services.Inventory;

namespace MakerStudio.Web.Bench;

/// <summary>What is typed when a batch is planned: by bottles or by mass.</summary>
public sealed class PlanForm
{
    public Guid VersionId { get; set; }
    public bool ByMass { get; set; }
    public Guid? SizeId { get; set; }
    public decimal? Bottles { get; set; }
    public decimal? Grams { get; set; }
    public Guid? ScaleId { get; set; }
    public string? Place { get; set; }
    public string? Note { get; set; }

    /// <summary>The request in base units, with the id of the press.</summary>
    public PlanBatch Request(Guid id) => new()
    {
        RequestId = id, FormulaVersionId = VersionId, FormulaSizeId = SizeId, PlannedUnits = ByMass || Bottles is null ? null : (int)Math.Min(Bottles.Value, int.MaxValue),
        TargetMilligrams = ByMass && Grams is { } grams ? BatchSizes.Milligrams(grams) : null,
        ScaleId = ScaleId, Place = Place, Note = Note,
    };
}
