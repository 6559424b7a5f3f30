namespace MakerStudio.Core.Curing;

/// <summary>The steps before a market, last first.</summary>
public enum PlanStepKind
{
    Market,
    Packed,
    Made,
    SuppliesHere,
    SuppliesOrdered,
}

/// <param name="LatestSafe">Last day on which the step may be done and the market still be met.</param>
public sealed record PlanStep(PlanStepKind Kind, DateOnly LatestSafe)
{
    /// <summary>Days of slack from <paramref name="today"/>; below zero when the day has passed.</summary>
    public int DaysLeft(DateOnly today) => LatestSafe.DayNumber - today.DayNumber;
}

/// <summary>Plans back from the day on which goods are wanted.</summary>
public static class BackwardPlan
{
    /// <summary>Days between packing and the market; common practice, no source.</summary>
    public const int PackedDaysBefore = 1;

    /// <summary>Days between supplies arriving and making; common practice, no source.</summary>
    public const int SuppliesDaysBefore = 1;

    /// <summary>Works out the latest safe date of each step, in the order of <see cref="PlanStepKind"/>.</summary>
    /// <param name="market">The day on which the goods are wanted.</param>
    /// <param name="cure">0 or more; part of a day counts as a whole one, since steps are planned by the day.</param>
    /// <param name="leadDays">Days from ordering supplies to having them, 0 or more.</param>
    /// <exception cref="ArgumentOutOfRangeException">A span is below zero, or the plan leaves the calendar.</exception>
    public static IReadOnlyList<PlanStep> From(
        DateOnly market,
        TimeSpan cure,
        int leadDays,
        int packedDaysBefore = PackedDaysBefore,
        int suppliesDaysBefore = SuppliesDaysBefore)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(cure, TimeSpan.Zero);
        ArgumentOutOfRangeException.ThrowIfNegative(leadDays);
        ArgumentOutOfRangeException.ThrowIfNegative(packedDaysBefore);
        ArgumentOutOfRangeException.ThrowIfNegative(suppliesDaysBefore);
        var packed = market.AddDays(-packedDaysBefore);
        var made = packed.AddDays(-(int)Math.Ceiling(cure.TotalDays));
        var here = made.AddDays(-suppliesDaysBefore);
        return
        [
            new PlanStep(PlanStepKind.Market, market),
            new PlanStep(PlanStepKind.Packed, packed),
            new PlanStep(PlanStepKind.Made, made),
            new PlanStep(PlanStepKind.SuppliesHere, here),
            new PlanStep(PlanStepKind.SuppliesOrdered, here.AddDays(-leadDays)),
        ];
    }
}
