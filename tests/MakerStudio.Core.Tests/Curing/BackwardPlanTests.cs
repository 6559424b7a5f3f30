using MakerStudio.Core.Curing;

namespace MakerStudio.Core.Tests.Curing;

public class BackwardPlanTests
{
    private static readonly DateOnly Market = new(2026, 11, 14);

    [Fact]
    public void From_SoyCandlesForASaturdayMarket()
    {
        // Own worked example: market Sat 14, packed Fri 13, poured by Fri 30 Oct, supplies by Thu 29, ordered by Mon 19.
        Assert.Equal(
            [
                new(PlanStepKind.Market, Market),
                new(PlanStepKind.Packed, new(2026, 11, 13)),
                new(PlanStepKind.Made, new(2026, 10, 30)),
                new(PlanStepKind.SuppliesHere, new(2026, 10, 29)),
                new(PlanStepKind.SuppliesOrdered, new(2026, 10, 19)),
            ],
            BackwardPlan.From(Market, TimeSpan.FromDays(14), 10));
        Assert.Equal(DayOfWeek.Saturday, Market.DayOfWeek);
    }

    [Fact]
    public void From_PartOfADay_CountsWhole() =>
        Assert.Equal(
            new DateOnly(2026, 11, 11),
            BackwardPlan.From(Market, TimeSpan.FromHours(25), 0).Single(s => s.Kind == PlanStepKind.Made).LatestSafe);

    [Fact]
    public void DaysLeft_CountsDownAndGoesBelowZero()
    {
        var step = new PlanStep(PlanStepKind.Made, new(2026, 10, 30));
        Assert.Equal(1, step.DaysLeft(new(2026, 10, 29)));
        Assert.Equal(0, step.DaysLeft(new(2026, 10, 30)));
        Assert.Equal(-2, step.DaysLeft(new(2026, 11, 1)));
    }

    [Fact]
    public void From_NegativeSpan_Throws()
    {
        Assert.Throws<ArgumentOutOfRangeException>(() => BackwardPlan.From(Market, TimeSpan.FromHours(-1), 0));
        Assert.Throws<ArgumentOutOfRangeException>(() => BackwardPlan.From(Market, TimeSpan.Zero, -1));
    }
}
