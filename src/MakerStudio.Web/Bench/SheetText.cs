using System.Globalization;
using MakerStudio.Core.Quantities;
using MakerStudio.Services.Inventory;
using MakerStudio.Web.Shell;
using MakerStudio.Web.Shell.Drawings;

namespace MakerStudio.Web.Bench;

/// <summary>Numbers and words of the bench pages, in the studio's marks.</summary>
internal static class SheetText
{
    /// <summary>Decimals of a gram the scale shows: 1 for 0.1 g, 2 for 0.01 g, 3 for 1 mg.</summary>
    public static int Decimals(long readabilityMilligrams) => readabilityMilligrams switch { >= 100 => 1, >= 10 => 2, _ => 3 };

    /// <summary>What is to be weighed, in the scale's decimals: finer cannot be read off it. The sums keep the milligrams.</summary>
    public static string Grams(long milligrams, long readabilityMilligrams = 100) =>
        QuantityFormat.Mass(Mass.FromMilligrams(milligrams), CultureInfo.CurrentCulture, Decimals(readabilityMilligrams));

    /// <summary>A tolerance in whole steps of the scale: the last step within it is as far as a reading can lie off.</summary>
    public static string Tolerance(long milligrams, long readabilityMilligrams) =>
        Grams(milligrams - milligrams % Math.Max(1, readabilityMilligrams), readabilityMilligrams);

    /// <summary>What was recorded, as it was typed: with the scale's decimals, or more where it has them.</summary>
    public static string Read(long milligrams, long readabilityMilligrams = 100) => Written.Grams(milligrams, Decimals(readabilityMilligrams));

    public static string Share(decimal fraction) => Written.Percent(fraction, 2);

    /// <summary>"4,000.0 g for 48 bottles of 100 mL".</summary>
    public static string Size(long target, int? units, string? size) => units is { } n && size is not null
        ? $"{Grams(target)} g for {Written.Count(n)} × {size}"
        : $"{Grams(target)} g";

    /// <summary>Layers in the order in which they were poured.</summary>
    public static IReadOnlyList<VesselLayer> Layers(WeighSheet sheet) =>
        [.. sheet.Lines.Where(l => l.RecordedMilligrams > 0)
            .OrderBy(l => l.Weighings.Where(w => w.ReversedAt is null).Min(w => w.At))
            .Select(l => new VesselLayer(MaterialSeries.Of(l.Kind), l.RecordedMilligrams / 1000m))];
}
