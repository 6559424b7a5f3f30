using MakerStudio.Core.Quantities;

namespace MakerStudio.Web.Shell.Sheets;

/// <summary>What the database counts in, in the units that stand in headings; never rounded.</summary>
internal static class SheetNumbers
{
    /// <summary>Milligrams as grams, or pieces.</summary>
    public static decimal? Shown(long? units, StockUnit unit) => units is { } known ? new StockAmount(known, unit).Display : null;

    public static decimal? Grams(long? milligrams) => Shown(milligrams, StockUnit.Gram);

    /// <param name="unitCost">Of one gram or one piece.</param>
    public static decimal PerKilogramOrPiece(decimal unitCost, StockUnit unit) =>
        unit == StockUnit.Gram ? unitCost * AmountUnits.Factor(AmountUnit.Kilogram) : unitCost;

    /// <summary>A fraction as per cent.</summary>
    public static decimal? Percent(decimal? fraction) => fraction * 100m;
}
