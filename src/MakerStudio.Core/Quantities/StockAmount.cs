namespace MakerStudio.Core.Quantities;

/// <summary>
/// An amount of one stocked material in its base units: whole milligrams where it is stocked by mass, pieces where
/// it is counted. May be negative (a movement out). Grams and pieces never mix.
/// </summary>
public readonly record struct StockAmount(long Units, StockUnit Unit) : IComparable<StockAmount>
{
    /// <summary>Grams, or pieces.</summary>
    public decimal Display => Unit == StockUnit.Gram ? (decimal)Units / Quantities.Mass.MilligramsPerGram : Units;

    public bool IsZero => Units == 0;

    public bool IsPositive => Units > 0;

    /// <exception cref="InvalidOperationException">The amount is counted in pieces.</exception>
    public Mass Mass => Unit == StockUnit.Gram
        ? Quantities.Mass.FromMilligrams(Units)
        : throw new InvalidOperationException("Pieces have no mass here.");

    public static StockAmount Zero(StockUnit unit) => new(0, unit);

    /// <exception cref="ArgumentException">The grams are finer than 1 mg.</exception>
    public static StockAmount OfGrams(decimal grams) => OfMass(Quantities.Mass.FromGrams(grams));

    public static StockAmount OfMass(Mass mass) => new(mass.Milligrams, StockUnit.Gram);

    public static StockAmount OfPieces(long pieces) => new(pieces, StockUnit.Each);

    /// <exception cref="InvalidOperationException">One amount is in grams, the other in pieces.</exception>
    public int CompareTo(StockAmount other)
    {
        RequireSameUnit(this, other);
        return Units.CompareTo(other.Units);
    }

    public StockAmount Abs() => this with { Units = Math.Abs(Units) };

    /// <summary>The smaller of two amounts of one unit.</summary>
    public static StockAmount Min(StockAmount left, StockAmount right) => left <= right ? left : right;

    public override string ToString() => string.Create(
        System.Globalization.CultureInfo.InvariantCulture, $"{Display} {(Unit == StockUnit.Gram ? "g" : "each")}");

    private static void RequireSameUnit(StockAmount left, StockAmount right)
    {
        if (left.Unit != right.Unit)
        {
            throw new InvalidOperationException($"Grams and pieces do not mix: {left} and {right}.");
        }
    }

    public static StockAmount operator +(StockAmount left, StockAmount right)
    {
        RequireSameUnit(left, right);
        return left with { Units = left.Units + right.Units };
    }

    public static StockAmount operator -(StockAmount left, StockAmount right)
    {
        RequireSameUnit(left, right);
        return left with { Units = left.Units - right.Units };
    }

    public static StockAmount operator -(StockAmount amount) => amount with { Units = -amount.Units };

    public static bool operator <(StockAmount left, StockAmount right) => left.CompareTo(right) < 0;

    public static bool operator >(StockAmount left, StockAmount right) => left.CompareTo(right) > 0;

    public static bool operator <=(StockAmount left, StockAmount right) => left.CompareTo(right) <= 0;

    public static bool operator >=(StockAmount left, StockAmount right) => left.CompareTo(right) >= 0;
}
