namespace MakerStudio.Core.Quantities;

/// <summary>How a material is stocked: by mass (shown in grams, kept in milligrams) or by the piece.</summary>
public enum StockUnit
{
    Gram,
    Each,
}
