using MakerStudio.Core.Costing;
using MakerStudio.Core.Quantities;
using MakerStudio.Services.Inventory;
using MakerStudio.Web.Shell;

namespace MakerStudio.Web.Finished;

/// <summary>Lines of cost as the batch record says them.</summary>
internal static class CostWords
{
    private const int MinutesPerHour = 60;

    /// <param name="isMade">Of a pre-blend labour and overhead are kept as one sum.</param>
    public static string Label(RollUpLine line, bool isMade) => line.Item.Kind switch
    {
        CostKind.Labour => "Labour",
        CostKind.OverheadOfBatch when isMade => "Labour and overhead",
        _ => line.Label,
    };

    /// <summary>"67.374/kg", "0.8648 each", "18.00/h"; nothing for a sum that has no price.</summary>
    public static string? Price(RollUpLine line) => line.Item.Kind switch
    {
        CostKind.Material => AmountWords.UnitCost(line.UnitCost, StockUnit.Gram),
        CostKind.Packaging or CostKind.OverheadOfUnits => AmountWords.UnitCost(line.UnitCost, StockUnit.Each),
        CostKind.Labour => $"{Written.Money(line.UnitCost * MinutesPerHour)}/h",
        _ => null,
    };
}
