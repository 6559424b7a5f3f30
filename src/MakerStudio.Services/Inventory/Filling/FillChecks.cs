using System.Globalization;
using MakerStudio.Core.Filling;
using MakerStudio.Core.Products;
using MakerStudio.Core.Quantities;
using MakerStudio.Services.Schema;

namespace MakerStudio.Services.Inventory;

/// <summary>Check weights beside the nominal content, in numbers and words.</summary>
public static class FillChecks
{
    /// <summary>Null while nothing was weighed.</summary>
    public static CheckWeightSummary? Summary(string productKind, Mass? nominal, IReadOnlyList<Mass> weights) =>
        weights.Count == 0 ? null : CheckWeights.Of(weights, nominal, ProductKinds.Get(productKind).FillToleranceFraction);

    /// <summary>
    /// Where check weights fall short of the nominal content. The single-pack limit is the product kind's
    /// (Directive 76/211/EEC, Annex I 2.4). Local law decides, so this warns and never refuses.
    /// </summary>
    public static IReadOnlyList<string> Warnings(CheckWeightSummary? summary)
    {
        var warnings = new List<string>();
        if (summary is { IsMeanShort: true, Nominal: { } nominal })
        {
            warnings.Add($"The mean check weight, {Grams(summary.Mean)} g, is below the nominal content, {Grams(nominal.Grams)} g.");
        }

        if (summary is { BelowLimit: > 0, Least: { } least })
        {
            warnings.Add($"{summary.BelowLimit} of {summary.Count} check weights {(summary.BelowLimit == 1 ? "is" : "are")} below {Grams(least.Grams)} g, the shortfall a single pack may have.");
        }

        return warnings;
    }

    internal static Mass? NominalMass(Batch batch) => NominalMass(batch.NominalMilligrams, batch.NominalMillilitres, batch.DensityUsed);

    internal static Mass? NominalMass(long? milligrams, decimal? millilitres, decimal? density) =>
        milligrams is { } mass ? Mass.FromMilligrams(mass)
        : millilitres is { } volume && density is { } known ? new Density(known).MassOf(Volume.FromMillilitres(volume))
        : null;

    private static string Grams(decimal grams) => QuantityFormat.Number(grams, CultureInfo.CurrentCulture, 2);
}
