using MakerStudio.Core.Products;
using MakerStudio.Core.Quantities;
using MakerStudio.Services.Schema;

namespace MakerStudio.Services.Inventory;

public sealed partial class Fills
{
    /// <summary>
    /// Where check weights fall short of the nominal content. The single-pack limit is the product kind's
    /// (Directive 76/211/EEC, Annex I 2.4); the mean must not be below nominal in average-quantity systems
    /// (common practice, no source). Local law decides.
    /// </summary>
    private static List<string> WarningsOf(Batch batch, Fill fill)
    {
        var nominal = NominalMass(batch);
        if (nominal is null || fill.CheckWeights.Count == 0)
        {
            return [];
        }

        var warnings = new List<string>();
        var mean = fill.CheckWeights.Average(w => (decimal)w);
        if (mean < nominal.Value.Milligrams)
        {
            warnings.Add($"The mean check weight, {mean / 1000m:#,0.0##} g, is below the nominal content, {nominal.Value.Grams:#,0.0##} g.");
        }

        var least = nominal.Value.Times(1 - ProductKinds.Get(batch.ProductKind).FillToleranceFraction);
        var low = fill.CheckWeights.Count(w => w < least.Milligrams);
        if (low > 0)
        {
            warnings.Add($"{low} of {fill.CheckWeights.Count} check weights are below {least.Grams:#,0.0##} g, the shortfall a single pack may have.");
        }

        return warnings;
    }

    private static Mass? NominalMass(Batch batch) =>
        batch.NominalMilligrams is { } mass ? Mass.FromMilligrams(mass)
        : batch is { NominalMillilitres: { } volume, DensityUsed: { } density } ? new Density(density).MassOf(Volume.FromMillilitres(volume))
        : null;
}
