using System.Globalization;
using MakerStudio.Core.Blending;
using MakerStudio.Core.Materials;
using MakerStudio.Core.Products;
using MakerStudio.Core.Quantities;
using MakerStudio.Services.Formulation;

namespace MakerStudio.Web.Library;

/// <summary>Numbers and words of the library, as every page of it says them.</summary>
internal static class Said
{
    /// <summary>Said once, beside what follows from sheets and rules.</summary>
    public const string WorkingDraft =
        "A working draft from the suppliers’ sheets. A competent person checks it against the law where you sell before anything is printed or sold by it.";

    /// <summary>"12.00" for a fraction of 0.12.</summary>
    public static string Percent(decimal fraction) => QuantityFormat.Percent(fraction, CultureInfo.CurrentCulture);

    /// <summary>"12.00" for 12 per cent.</summary>
    public static string Two(decimal percent) => QuantityFormat.Number(percent, CultureInfo.CurrentCulture, 2);

    /// <summary>Grams to a tenth, or finer where the batch is small enough to be weighed finer.</summary>
    public static string Grams(Mass mass, Mass? of = null) => QuantityFormat.Mass(mass, CultureInfo.CurrentCulture, DecimalsFor(of ?? mass));

    public static string Grams(long milligrams) => Grams(Mass.FromMilligrams(milligrams), Mass.FromGrams(1000));

    public static string Money(decimal? amount, int decimals = 2) =>
        amount is { } known ? QuantityFormat.Money(known, decimals, CultureInfo.CurrentCulture) : "–";

    public static string Density(Density? density) =>
        density is { } known ? QuantityFormat.Number(known.GramsPerMillilitre, CultureInfo.CurrentCulture, 3) : "–";

    /// <summary>48 h, or days from four days on.</summary>
    public static string Rest(int hours) => hours >= 96 && hours % 24 == 0 ? $"{hours / 24} d" : $"{hours} h";

    /// <summary>What stands in the field behind the number.</summary>
    public static string Unit(LineBasis basis) => basis switch
    {
        LineBasis.PartsByWeight or LineBasis.PartsByVolume => "parts",
        LineBasis.PercentByWeight => UnitWords.PercentByWeight,
        LineBasis.PercentByVolume => UnitWords.PercentByVolume,
        LineBasis.PercentOfWax => UnitWords.PercentOfWax,
        LineBasis.Millilitres => "mL",
        LineBasis.Drops => UnitWords.Drops,
        _ => "g",
    };

    public static string Family(string productKind) => productKind switch
    {
        "room-spray-alcohol" or "room-spray-water" or "linen-spray" => "Sprays",
        "reed-diffuser" => "Diffusers",
        "pre-blend" => "Pre-blends",
        _ => "Candles, melts and sachets",
    };

    public static string KindName(string productKind) => ProductKinds.Find(productKind)?.Name ?? productKind;

    /// <summary>"fragrance 12.00 → 11.10": one change in words; the name stands before it.</summary>
    public static string Change(LineChange change) => change switch
    {
        LineChange.Added added => $"added {Two(added.Percent)}",
        LineChange.Removed removed => $"taken out, was {Two(removed.Percent)}",
        LineChange.Amount amount => $"{Two(amount.From)} → {Two(amount.To)}",
        LineChange.Moved moved => $"added {Ordinal(moved.To)} instead of {Ordinal(moved.From)}",
        _ => "",
    };

    /// <summary>The same formula in parts by weight and in % by volume before mixing, or null while it does not add up.</summary>
    public static string? Otherwise(FormulaSheet sheet, VersionRow version, Worked worked)
    {
        var shares = version.Lines.Zip(worked.Shares, (l, s) => (s.Fraction, sheet.Materials[l.MaterialId].DensityKnown)).Where(s => s.Fraction > 0).ToArray();
        if (shares.Length < 2)
        {
            return null;
        }

        var smallest = shares.Min(s => s.Fraction);
        var parts = string.Join(" : ", shares.Select(s => (s.Fraction / smallest).ToString("#,0.##", CultureInfo.CurrentCulture)));
        if (shares.Any(s => s.DensityKnown is null))
        {
            return $"{parts} parts by weight.";
        }

        var volumes = shares.Select(s => s.Fraction / s.DensityKnown!.Value.GramsPerMillilitre).ToArray();
        var percents = LargestRemainder.Share(Core.Blending.Formulation.PercentUnits, volumes).Select(p => Two(p / 100m));
        return $"{parts} parts by weight; {string.Join(" : ", percents)} % by volume before mixing.";
    }

    /// <summary>"fragrance 12.00 → 11.10, tolerance 0.5 % → 1 %": all that changed, in one run of words.</summary>
    public static string Changes(VersionChanges changes) => changes switch
    {
        { Lines: null } => "the lines do not add up yet",
        { Nothing: true } => "nothing changed yet",
        _ => string.Join(", ", changes.Lines.Select(c => $"{c.Name} {Change(c)}").Concat(changes.Settings.Select(s => s.What == "method" ? "method rewritten" : $"{s.What} {s.From} → {s.To}"))),
    };

    private static int DecimalsFor(Mass of) => of.Grams >= 1000 ? 1 : of.Grams >= 10 ? 2 : 3;

    private static string Ordinal(int place) => place switch { 1 => "first", 2 => "second", 3 => "third", _ => $"in place {place}" };
}
