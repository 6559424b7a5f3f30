using MakerStudio.Core.Workings;

namespace MakerStudio.Core.Finished;

/// <summary>What was agreed with a shop.</summary>
/// <param name="NetPrice">Agreed net price of one unit, as it stands on the agreement.</param>
/// <param name="Commission">A fraction of the net that the shop keeps, from 0, below 1.</param>
/// <param name="PaysForBroken">What the shop pays us for a unit it broke; 0 when it does not.</param>
public sealed record ConsignmentTerms(decimal NetPrice, decimal Commission, decimal PaysForBroken);

/// <summary>What a shop reports. Nothing it holds counts as sold before it says so.</summary>
/// <param name="Left">What it counted on its shelf; null when it did not say.</param>
public sealed record ShopReport(int Sold, int Broken, int Returned, int? Left = null);

/// <summary>What a report comes to.</summary>
public abstract record ConsignmentResult
{
    private ConsignmentResult()
    {
    }

    /// <param name="Revenue">Ours of the units sold, without tax.</param>
    /// <param name="ForBroken">Paid for broken units; no revenue from selling.</param>
    /// <param name="Commission">The shop's part.</param>
    /// <param name="Left">Units still with the shop, still ours.</param>
    public sealed record Settled(decimal Revenue, decimal ForBroken, decimal Commission, int Left, IReadOnlyList<WorkingStep> Workings) : ConsignmentResult;

    /// <summary>More is reported than the shop had.</summary>
    public sealed record MoreThanPlaced(int Placed, int Reported) : ConsignmentResult;

    /// <summary>What the shop counted does not fit; ask before anything is booked.</summary>
    public sealed record DoesNotAddUp(int ShouldBeLeft, int CountedLeft) : ConsignmentResult;
}

/// <summary>Settles a shop's report over what was placed with it.</summary>
public static class Consignment
{
    private const string Rule = "Consignment report";
    private static readonly Source Terms = new("the terms agreed with the shop", DataStatus.Derived);

    /// <param name="placed">Units with the shop before the report, of one product at one price.</param>
    /// <exception cref="ArgumentOutOfRangeException">A count, a price or the commission is outside its range.</exception>
    public static ConsignmentResult Settle(int placed, ConsignmentTerms terms, ShopReport report)
    {
        ArgumentNullException.ThrowIfNull(terms);
        ArgumentNullException.ThrowIfNull(report);
        foreach (var count in new[] { placed, report.Sold, report.Broken, report.Returned, report.Left ?? 0 })
        {
            ArgumentOutOfRangeException.ThrowIfNegative(count, nameof(report));
        }

        ArgumentOutOfRangeException.ThrowIfLessThan(terms.NetPrice, 0m, nameof(terms));
        ArgumentOutOfRangeException.ThrowIfLessThan(terms.PaysForBroken, 0m, nameof(terms));
        ArgumentOutOfRangeException.ThrowIfLessThan(terms.Commission, 0m, nameof(terms));
        ArgumentOutOfRangeException.ThrowIfGreaterThanOrEqual(terms.Commission, 1m, nameof(terms));
        var reported = report.Sold + report.Broken + report.Returned;
        var left = placed - reported;
        return left < 0 ? new ConsignmentResult.MoreThanPlaced(placed, reported)
            : report.Left is { } counted && counted != left ? new ConsignmentResult.DoesNotAddUp(left, counted)
            : Settled(terms, report, left);
    }

    private static ConsignmentResult.Settled Settled(ConsignmentTerms terms, ShopReport report, int left)
    {
        var sold = report.Sold * terms.NetPrice;
        var revenue = sold * (1m - terms.Commission);
        var broken = report.Broken * terms.PaysForBroken;
        return new ConsignmentResult.Settled(revenue, broken, sold - revenue, left,
            [
                new(Rule, $"{report.Sold} sold × {terms.NetPrice:0.00} × {100 * (1m - terms.Commission):0.##} %: {revenue:0.00}.", Terms),
                new(Rule, $"{report.Broken} broken × {terms.PaysForBroken:0.00}: {broken:0.00}.", Terms),
                new(Rule, $"{report.Returned} returned; {left} left with the shop, still ours.", Terms),
            ]);
    }
}
