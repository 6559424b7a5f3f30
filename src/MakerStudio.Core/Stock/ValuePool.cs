namespace MakerStudio.Core.Stock;

/// <summary>
/// A quantity and the money that lies in it, drawn down together. A part takes its share of the money; the last part
/// takes all that is left, so that nothing is lost or made on the way, however often it is split.
/// </summary>
/// <param name="Quantity">0 or more, in the finest unit kept (mg, pieces).</param>
/// <param name="Value">Money, 0 or more.</param>
public readonly record struct ValuePool(decimal Quantity, decimal Value)
{
    /// <summary>
    /// Decimals of money to which a share is cut; the rest stays in the pool. Far below a coin, and coarse enough that
    /// sums of amounts up to a billion stay exact in a <see cref="decimal"/>.
    /// </summary>
    public const int ShareDecimals = 10;

    /// <summary>Null when the pool is empty.</summary>
    public decimal? UnitCost => Quantity == 0 ? null : Value / Quantity;

    /// <exception cref="ArgumentOutOfRangeException">Below zero, or more than there is.</exception>
    public (ValuePool Taken, ValuePool Left) Take(decimal quantity)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(quantity, 0m);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(quantity, Quantity);
        if (quantity == Quantity)
        {
            return (this, default);
        }

        var share = Math.Min(Value, decimal.Round(Value * (quantity / Quantity), ShareDecimals));
        return (new(quantity, share), new(Quantity - quantity, Value - share));
    }

    public static ValuePool operator +(ValuePool left, ValuePool right) => new(left.Quantity + right.Quantity, left.Value + right.Value);
}
