namespace MakerStudio.Core.Costing;

/// <summary>What the freight of an invoice is shared out by.</summary>
public enum FreightBasis
{
    /// <summary>Gross kilograms, packing included.</summary>
    Weight,

    /// <summary>Price less discount.</summary>
    Value,
}

/// <summary>
/// One line of a supplier's invoice, money in one currency, recoverable VAT left out.
/// </summary>
/// <param name="Price">Price of the whole line before discount, 0 or more.</param>
/// <param name="GrossKg">Weight with packing in kg; needed only when freight is shared by weight.</param>
/// <param name="Duty">Duty that belongs to this line alone.</param>
/// <param name="Surcharge">Surcharge that belongs to this line alone, e.g. for dangerous goods.</param>
/// <param name="Discount">Discount on this line, not above its price.</param>
/// <param name="StockQuantity">What comes on the shelf, in the unit the cost is wanted per (kg, g or each); above 0.</param>
public sealed record InvoiceLine(
    decimal Price,
    decimal? GrossKg,
    decimal Duty,
    decimal Surcharge,
    decimal Discount,
    decimal StockQuantity)
{
    /// <summary>What the supplier charges for the goods alone: price less discount.</summary>
    public decimal Value => Price - Discount;
}

/// <param name="FreightShare">Whole coins; over an invoice the shares add up to the freight exactly.</param>
/// <param name="Total">Price + freight share + duty + surcharge − discount.</param>
/// <param name="UnitCost">Total per stock unit, not rounded.</param>
public sealed record LandedLine(decimal FreightShare, decimal Total, decimal UnitCost);

/// <param name="Lines">In the order of the invoice.</param>
/// <param name="Total">Sum of the lines; equals the bill.</param>
public sealed record Landed(IReadOnlyList<LandedLine> Lines, decimal Total);

/// <summary>
/// What goods cost on our own shelf. The parts counted are those of IAS 2 (purchase price, duty, transport,
/// less discounts); tax that is paid back is no cost.
/// </summary>
public static class LandedCost
{
    /// <summary>
    /// Shares the freight over the lines by largest remainder (see <see cref="Apportionment"/>) and adds up each line.
    /// </summary>
    /// <exception cref="ArgumentException">One of <see cref="Problems"/> applies; ask for those first.</exception>
    public static Landed Allocate(
        IReadOnlyList<InvoiceLine> lines, decimal freight, FreightBasis basis, int moneyDecimals = 2)
    {
        var problems = Problems(lines, freight, basis, moneyDecimals);
        if (problems.Count > 0)
        {
            throw new ArgumentException(string.Join(' ', problems), nameof(lines));
        }
        var weights = lines.Select(l => WeightOf(l, basis) ?? 0).ToList();
        var shares = Apportionment.Share(freight, weights, moneyDecimals);
        var landed = lines.Zip(shares, Land).ToList();
        return new Landed(landed, landed.Sum(l => l.Total));
    }

    /// <summary>
    /// Why an invoice cannot be landed as typed, in sentences for the person who typed it; empty when it can.
    /// </summary>
    public static IReadOnlyList<string> Problems(
        IReadOnlyList<InvoiceLine> lines, decimal freight, FreightBasis basis, int moneyDecimals = 2)
    {
        ArgumentNullException.ThrowIfNull(lines);
        var problems = lines.SelectMany((line, i) => ProblemsOf(line, i + 1)).ToList();
        if (lines.Count == 0)
        {
            problems.Add("The invoice has no lines.");
        }
        if (freight < 0)
        {
            problems.Add("Freight is below zero; enter a freight credit as a discount on its line.");
        }
        else if (freight % Apportionment.Coin(moneyDecimals) != 0)
        {
            problems.Add($"Freight has more than {moneyDecimals} decimals.");
        }
        else if (freight > 0)
        {
            problems.AddRange(FreightProblems(lines, basis));
        }
        return problems;
    }

    private static LandedLine Land(InvoiceLine line, decimal share)
    {
        var total = line.Value + share + line.Duty + line.Surcharge;
        return new LandedLine(share, total, total / line.StockQuantity);
    }

    private static decimal? WeightOf(InvoiceLine line, FreightBasis basis) => basis switch
    {
        FreightBasis.Weight => line.GrossKg,
        FreightBasis.Value => line.Value,
        _ => throw new ArgumentOutOfRangeException(nameof(basis)),
    };

    private static IEnumerable<string> ProblemsOf(InvoiceLine line, int number)
    {
        if (line.Price < 0 || line.Duty < 0 || line.Surcharge < 0 || line.Discount < 0)
        {
            yield return $"Line {number} has an amount below zero.";
        }
        if (line.Price >= 0 && line.Discount > line.Price)
        {
            yield return $"Line {number} has a discount above its price.";
        }
        if (line.GrossKg < 0)
        {
            yield return $"Line {number} has a gross weight below zero.";
        }
        if (line.StockQuantity <= 0)
        {
            yield return $"Line {number} brings nothing on the shelf; enter a quantity above zero.";
        }
    }

    private static IEnumerable<string> FreightProblems(IReadOnlyList<InvoiceLine> lines, FreightBasis basis)
    {
        for (var i = 0; i < lines.Count; i++)
        {
            if (WeightOf(lines[i], basis) is null)
            {
                yield return $"Line {i + 1} has no gross weight; enter it or share the freight by value.";
            }
        }
        if (lines.Count > 0 && lines.All(l => WeightOf(l, basis) <= 0))
        {
            yield return basis == FreightBasis.Weight
                ? "Every gross weight is zero; enter weights or share the freight by value."
                : "Every line is free of charge; share the freight by weight.";
        }
    }
}
