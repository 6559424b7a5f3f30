using MakerStudio.Core.Quantities;

namespace MakerStudio.Core.Costing;

/// <summary>The unit in which a quantity would make the price fit the last one.</summary>
/// <param name="UnitPrice">Per the same unit as the two prices compared, not rounded.</param>
public sealed record PriceReading(AmountUnit Unit, decimal UnitPrice);

/// <summary>A price far from the last one, to be confirmed or mended before it is saved.</summary>
/// <param name="FractionAway">New against last: −0.21 is 21 % below.</param>
/// <param name="FitsAs">The unit that was probably meant; null when none explains the price.</param>
public sealed record PriceQuestion(
    decimal LastUnitPrice, decimal NewUnitPrice, decimal FractionAway, PriceReading? FitsAs)
{
    public bool IsBelow => FractionAway < 0;
}

/// <summary>Compares the unit price on an invoice with the last one paid, to catch kilograms typed for litres.</summary>
public static class PriceCheck
{
    /// <summary>Above this fraction away from the last price, ask. Own threshold.</summary>
    public const decimal AskBeyond = 0.15m;

    /// <summary>Another unit explains the price when it comes this near the last one. Own threshold.</summary>
    public const decimal FitsWithin = 0.03m;

    /// <summary>Null when the price is near the last one, or the last one was nothing and cannot be compared with.</summary>
    /// <param name="lastUnitPrice">0 or more, per kg, g or piece.</param>
    /// <param name="newUnitPrice">0 or more, per the same.</param>
    /// <param name="typedAs">The unit of the invoiced quantity; null to leave the question of units out.</param>
    /// <param name="density">Needed to weigh volumes against masses.</param>
    /// <exception cref="ArgumentOutOfRangeException">A price is below zero.</exception>
    public static PriceQuestion? Compare(
        decimal lastUnitPrice, decimal newUnitPrice, AmountUnit? typedAs = null, Density? density = null)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(lastUnitPrice, 0m);
        ArgumentOutOfRangeException.ThrowIfLessThan(newUnitPrice, 0m);
        if (lastUnitPrice == 0)
        {
            return null;
        }
        var away = Away(lastUnitPrice, newUnitPrice);
        return Math.Abs(away) <= AskBeyond
            ? null
            : new PriceQuestion(lastUnitPrice, newUnitPrice, away, Fit(lastUnitPrice, newUnitPrice, typedAs, density));
    }

    private static decimal Away(decimal last, decimal price) => (price - last) / last;

    private static PriceReading? Fit(decimal last, decimal price, AmountUnit? typedAs, Density? density)
    {
        if (typedAs is not { } typed || GramsIn(typed, density) is not { } typedGrams)
        {
            return null;
        }
        return Enum.GetValues<AmountUnit>()
            .Where(unit => unit != typed)
            .Select(unit => GramsIn(unit, density) is { } grams
                ? new PriceReading(unit, price * typedGrams / grams)
                : null)
            .OfType<PriceReading>()
            .Where(reading => Math.Abs(Away(last, reading.UnitPrice)) <= FitsWithin)
            .MinBy(reading => Math.Abs(Away(last, reading.UnitPrice)));
    }

    private static decimal? GramsIn(AmountUnit unit, Density? density)
    {
        if (AmountUnits.IsCount(unit))
        {
            return null;
        }
        return AmountUnits.IsVolume(unit)
            ? AmountUnits.Factor(unit) * density?.GramsPerMillilitre
            : AmountUnits.Factor(unit);
    }
}
