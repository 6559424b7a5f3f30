using MakerStudio.Core.Prices;
using MakerStudio.Web.Shell.Drawings;

namespace MakerStudio.Web.Prices;

/// <summary>A part of what one saleable unit costs, not rounded.</summary>
/// <param name="Share">Of the whole, a fraction.</param>
public sealed record CostPart(string Name, decimal Amount, decimal Share, Series Series)
{
    /// <summary>Every part that costs something.</summary>
    public static IReadOnlyList<CostPart> Of(ProductPlan plan)
    {
        ArgumentNullException.ThrowIfNull(plan);
        var sheet = plan.Cost();
        decimal One(decimal amount) => amount / sheet.Saleable;
        decimal With(LoadRole role) => One(plan.Materials.Where(m => m.Role == role).Sum(m => m.Quantity * m.UnitCost));
        List<(string Name, decimal Amount, Series Series)> parts =
        [
            ("fragrance", With(LoadRole.Scent), Series.Fragrance), ("carrier", With(LoadRole.Carrier), Series.Ethanol), ("other", With(LoadRole.Other), Series.Fixative),
            ("packaging", One(sheet.PackagingTotal), Series.Packaging), ("labour", One(sheet.Labour), Series.Labour), ("overhead", One(sheet.Overhead), Series.Overhead),
        ];
        var total = parts.Sum(p => p.Amount);
        return [.. parts.Where(p => p.Amount > 0).Select(p => new CostPart(p.Name, p.Amount, p.Amount / total, p.Series))];
    }
}
