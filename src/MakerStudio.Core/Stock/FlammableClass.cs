using System.Globalization;
using MakerStudio.Core.Assessing;
using MakerStudio.Core.FlashPoints;
using MakerStudio.Core.Hazards;
using MakerStudio.Core.Materials;
using MakerStudio.Core.Quantities;
using MakerStudio.Core.Workings;

namespace MakerStudio.Core.Stock;

/// <summary>The category a liquid counts in where flammable liquids are added up, and why. Category 4 is named though the EU has none: some limits count it.</summary>
/// <param name="Category">Null where nobody knows.</param>
/// <param name="Why">A part of a sentence: "flash point 78 °C".</param>
public sealed record FlammableClass(FlammableCategory? Category, string Why)
{
    /// <summary>Above the limit of Category 1: without a boiling point a liquid is taken to boil there.</summary>
    private const double BoilsAboveLimit = FlammableBands.BoilingLimit + 1;

    /// <summary>The worse of what its sheet states and what its flash point says; without either, what the built-in table says.</summary>
    public static FlammableClass Of(AssessedMaterial material)
    {
        ArgumentNullException.ThrowIfNull(material);
        if (material.Kind == MaterialKind.Water)
        {
            return new(FlammableCategory.NotClassified, "water");
        }

        FlammableClass? stated = material.Hazards?.Classes is { } classes ? Stated(classes, "its sheet") : null;
        FlammableClass? tested = material.FlashPoint is { } flash ? OfFlash((double)flash.Degrees) : null;
        FlammableClass? known = (stated, tested) switch
        {
            ({ } sheet, { } test) => test.Category < sheet.Category ? test : sheet,
            _ => stated ?? tested,
        };
        SubstanceRow? row = known is null && material.Cas is { } cas ? SubstanceTable.Rows.FirstOrDefault(each => each.Cas == cas.Text) : null;
        return known
            ?? (row is null ? null : Stated(row.Classes, $"the built-in table, {DataStatuses.InWords(SubstanceTable.Source.Status)}"))
            ?? new(null, "neither classes nor a flash point are known");
    }

    /// <summary>By a measured flash point, else by the estimate; where two classes are possible, the stricter.</summary>
    public static FlammableClass Of(AssessedFormula formula)
    {
        ArgumentNullException.ThrowIfNull(formula);
        return FlashPoint.Of(FormulaMixture.Of(formula), formula.Measured.FlashPoint) switch
        {
            FlashPointResult.Measured measured => OfFlash((double)measured.Value.Degrees) with { Why = $"measured flash point {Say(measured.Value)}" },
            FlashPointResult.Estimated estimate => OfEstimate(estimate),
            FlashPointResult.NoneFound { LeftOut.Count: 0 } => new(FlammableCategory.NotClassified, "nothing in it is known to burn"),
            FlashPointResult.NoneFound none => new(null, $"no flash point found; {none.LeftOut[0].Name} could not be reckoned with"),
            FlashPointResult.Unknown unknown => new(null, unknown.LeftOut.Count == 0 ? "no flash point is known" : $"the flash point of {unknown.LeftOut[0].Name} is not known"),
            _ => new(null, "no flash point is known"),
        };
    }

    private static FlammableClass OfEstimate(FlashPointResult.Estimated estimate)
    {
        FlammableCategory band = OfFlash((double)estimate.Value.Degrees).Category!.Value;
        return new(estimate.Decision.TakeAs < band ? estimate.Decision.TakeAs : band,
            $"flash point about {Say(estimate.Value)}{(estimate.Decision.IsDecided ? "" : ", the stricter class until it is tested")}");
    }

    private static FlammableClass Stated(string classes, string by)
    {
        HazardEntry? liquid = ClassificationText.Parse(classes).Entries.Where(entry => HazardCategories.ClassOf(entry.Category) == HazardClass.FlammableLiquid)
            .MaxBy(entry => HazardCategories.Of(entry.Category).Rank);
        return liquid?.Category switch
        {
            HazardCategory.FlamLiq1 => new(FlammableCategory.Category1, $"{HazardCategories.Of(liquid.Category).Name} by {by}"),
            HazardCategory.FlamLiq2 => new(FlammableCategory.Category2, $"{HazardCategories.Of(liquid.Category).Name} by {by}"),
            HazardCategory.FlamLiq3 => new(FlammableCategory.Category3, $"{HazardCategories.Of(liquid.Category).Name} by {by}"),
            HazardCategory.FlamLiq4 => new(FlammableCategory.Category4, $"{HazardCategories.Of(liquid.Category).Name} by {by}"),
            _ => new(FlammableCategory.NotClassified, $"no flammable class by {by}"),
        };
    }

    private static FlammableClass OfFlash(double celsius) =>
        new(FlammableBands.Of(FlammableScheme.UsOsha, celsius, BoilsAboveLimit).Category, $"flash point {Say(new((decimal)celsius))}");

    private static string Say(Celsius celsius) => string.Create(CultureInfo.CurrentCulture, $"{celsius.Degrees:0.#} °C");
}
