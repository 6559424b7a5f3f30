using MakerStudio.Core.Workings;

namespace MakerStudio.Core.Prices;

/// <summary>What a day at a stall or a fair costs however much is sold.</summary>
public sealed record FixedCost(string Name, decimal Amount);

/// <summary>From how many units on a fixed cost is earned back.</summary>
public abstract record BreakEvenResult
{
    private BreakEvenResult()
    {
    }

    /// <param name="Exact">Fixed ÷ contribution, not rounded.</param>
    /// <param name="Units">Rounded up.</param>
    /// <param name="LeftOver">What that many units leave beyond the fixed cost, 0 or more.</param>
    public sealed record From(decimal Fixed, decimal Contribution, decimal Exact, int Units, decimal LeftOver, IReadOnlyList<WorkingStep> Workings) : BreakEvenResult;

    /// <summary>Each unit leaves nothing, so no number of them is enough.</summary>
    public sealed record Never(decimal Fixed, decimal Contribution) : BreakEvenResult;
}

/// <summary>Fixed cost ÷ contribution of one unit, rounded up to whole units.</summary>
public static class BreakEven
{
    private const string Rule = "Break-even";

    /// <param name="contribution">What one unit leaves, see <see cref="PricedUnit.Contribution"/>.</param>
    /// <exception cref="ArgumentOutOfRangeException">A fixed cost is below zero.</exception>
    public static BreakEvenResult Of(IReadOnlyList<FixedCost> costs, decimal contribution)
    {
        ArgumentNullException.ThrowIfNull(costs);
        foreach (var cost in costs)
        {
            ArgumentOutOfRangeException.ThrowIfLessThan(cost.Amount, 0m, nameof(costs));
        }

        var total = costs.Sum(c => c.Amount);
        if (contribution <= 0 && total > 0)
        {
            return new BreakEvenResult.Never(total, contribution);
        }

        var exact = total == 0 ? 0m : total / contribution;
        var units = (int)decimal.Ceiling(exact);
        // A quotient that does not come out may have been rounded over a whole number.
        units = units > 0 && (units - 1) * contribution >= total ? units - 1 : units;
        return new BreakEvenResult.From(total, contribution, exact, units, units * contribution - total,
            [
                .. costs.Select(c => new WorkingStep(Rule, $"{c.Name}: {c.Amount:0.00}.", Pricing.Definition)),
                new(Rule, $"{total:0.00} ÷ {contribution:0.0000} a unit: {exact:0.00}, so {units} units.", Pricing.Definition),
            ]);
    }
}
