namespace MakerStudio.Core.Quantities;

/// <summary>What became of an amount typed in one unit for a material stocked in another.</summary>
public abstract record ConversionResult
{
    /// <param name="Amount">In base units, rounded to the nearest milligram.</param>
    /// <param name="Exact">Grams or pieces before that rounding.</param>
    public sealed record Converted(StockAmount Amount, decimal Exact) : ConversionResult;

    /// <summary>A volume of something stocked by mass, and no density known.</summary>
    public sealed record NeedsDensity(string Why) : ConversionResult;

    /// <summary>Pieces for something weighed, a mass for something counted, or part of a piece.</summary>
    public sealed record WrongKind(string Why) : ConversionResult;

    /// <summary>More than a lot could hold, or so little that it would round to nothing.</summary>
    public sealed record OutOfRange(string Why) : ConversionResult;
}

public static class AmountConversion
{
    /// <summary>Largest amount taken, grams or pieces: a million tonnes, far above any studio's shelf.</summary>
    public const decimal LargestAmount = 1_000_000_000_000m;

    /// <summary>Converts a typed amount to the base units the material is stocked in.</summary>
    public static ConversionResult ToStock(decimal quantity, AmountUnit unit, StockUnit stockedIn, Density? density)
    {
        string symbol = AmountUnits.Symbol(unit);
        if (Math.Abs(quantity) > LargestAmount)
        {
            return new ConversionResult.OutOfRange("That is more than can be kept.");
        }

        if (stockedIn == StockUnit.Each)
        {
            return ToPieces(quantity, unit);
        }

        if (AmountUnits.IsCount(unit))
        {
            return new ConversionResult.WrongKind("This material is stocked by mass. Give the amount in g, kg, mL or another measure.");
        }

        if (AmountUnits.IsVolume(unit) && density is null)
        {
            return new ConversionResult.NeedsDensity($"{symbol} of a material stocked in g needs its density, and none is known yet.");
        }

        decimal grams = quantity * AmountUnits.Factor(unit) * (AmountUnits.IsVolume(unit) ? density!.Value.GramsPerMillilitre : 1m);
        return FromGrams(grams);
    }

    /// <summary>The typed unit's view of a stock amount, or null when a volume is asked for without a density.</summary>
    /// <exception cref="InvalidOperationException">Pieces asked of a mass, or a measure asked of pieces.</exception>
    public static decimal? FromStock(StockAmount amount, AmountUnit unit, Density? density)
    {
        if (AmountUnits.IsCount(unit) != (amount.Unit == StockUnit.Each))
        {
            throw new InvalidOperationException($"{amount} cannot be shown in {AmountUnits.Symbol(unit)}.");
        }

        if (!AmountUnits.IsVolume(unit))
        {
            return amount.Display / AmountUnits.Factor(unit);
        }

        return density is { } known ? amount.Display / known.GramsPerMillilitre / AmountUnits.Factor(unit) : null;
    }

    private static ConversionResult ToPieces(decimal quantity, AmountUnit unit)
    {
        if (!AmountUnits.IsCount(unit))
        {
            return new ConversionResult.WrongKind($"This material is counted in pieces, so {AmountUnits.Symbol(unit)} does not fit.");
        }

        return quantity == decimal.Truncate(quantity)
            ? new ConversionResult.Converted(StockAmount.OfPieces((long)quantity), quantity)
            : new ConversionResult.WrongKind("Pieces are whole. Give a whole number.");
    }

    private static ConversionResult FromGrams(decimal grams)
    {
        if (Math.Abs(grams) > LargestAmount)
        {
            return new ConversionResult.OutOfRange("That is more than can be kept.");
        }

        Mass mass = Mass.RoundGrams(grams);
        return mass.IsZero && grams != 0
            ? new ConversionResult.OutOfRange("That is less than half a milligram, the finest amount that is kept.")
            : new ConversionResult.Converted(StockAmount.OfMass(mass), grams);
    }
}
