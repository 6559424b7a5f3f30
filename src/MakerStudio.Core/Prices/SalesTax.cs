using System.Text.Json.Serialization;

namespace MakerStudio.Core.Prices;

/// <summary>How a tag stands to the tax on a sale.</summary>
public enum TaxBasis
{
    /// <summary>The tag is what the buyer pays; the tax is in it.</summary>
    InTag,

    /// <summary>The tag is net; the tax comes on top at the till.</summary>
    AtTill,
}

/// <summary>
/// A tax on sales at one rate. It is never revenue: what a sale brings is the net. Nothing is rounded here; a till
/// or an invoice rounds its own sums.
/// </summary>
public readonly record struct SalesTax
{
    /// <param name="rate">A fraction from 0 to 1: 0.2 is 20 %.</param>
    /// <exception cref="ArgumentOutOfRangeException">The rate is outside its range.</exception>
    [JsonConstructor]
    public SalesTax(decimal rate, TaxBasis basis)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(rate, 0m);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(rate, 1m);
        Rate = rate;
        Basis = basis;
    }

    /// <summary>A fraction: 0.2 is 20 %.</summary>
    public decimal Rate { get; }

    public TaxBasis Basis { get; }

    public static SalesTax None => default;

    /// <summary>Tag ÷ net: 1 + rate where the tax is in the tag, else 1.</summary>
    public decimal TagPerNet => Basis == TaxBasis.InTag ? WithTax : 1m;

    /// <summary>What the buyer pays ÷ net.</summary>
    public decimal WithTax => 1m + Rate;

    public decimal NetOf(decimal tag) => tag / TagPerNet;

    public decimal TagOf(decimal net) => net * TagPerNet;

    /// <summary>What the buyer hands over for the tag.</summary>
    public decimal PaidFor(decimal tag) => Basis == TaxBasis.InTag ? tag : tag * WithTax;
}
