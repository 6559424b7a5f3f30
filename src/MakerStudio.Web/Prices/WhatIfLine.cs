using MakerStudio.Core.Prices;
using MakerStudio.Services.Inventory;
using MakerStudio.Web.Shell;
using MakerStudio.Web.Shell.Drawings;

namespace MakerStudio.Web.Prices;

/// <summary>The margin of one product in one channel over a change of a supplier's price: a straight line, for its cost is one.</summary>
/// <param name="From">Margin in per cent at <see cref="Least"/>.</param>
/// <param name="To">Margin in per cent at <see cref="Most"/>.</param>
/// <param name="Floor">In per cent; null when none is watched.</param>
/// <param name="Crosses">The change in per cent at which the margin meets its floor; null where it never does between the ends.</param>
public sealed record WhatIfLine(string Name, decimal Least, decimal Most, decimal From, decimal To, decimal Now, decimal At, decimal Then, decimal? Floor, decimal? Crosses)
{
    private const decimal UsualLeast = -20m, UsualMost = 40m;

    /// <summary>The product that is hit hardest: that whose margin falls most. Null when none has a margin that changes.</summary>
    public static WhatIfLine? Of(PriceView view, Supposed typed)
    {
        ArgumentNullException.ThrowIfNull(view);
        ArgumentNullException.ThrowIfNull(typed);
        if (typed is not { MaterialId: { } material, PriceByPercent: >= -100m and var by })
        {
            return null;
        }

        var lines = typed.Plans(view).Where(p => p.Problem() is null).SelectMany(plan => plan.Prices.Where(t => t.Channel.OurShare == 1m && t.Tag > 0).Take(1)
            .Select(tag => Of(plan, tag, material, by))).OfType<WhatIfLine>().ToList();
        return lines.OrderByDescending(l => l.From - l.To).FirstOrDefault();
    }

    private static WhatIfLine? Of(ProductPlan plan, TagInChannel tag, Guid material, decimal by)
    {
        var (least, most) = (Math.Min(UsualLeast, by), Math.Max(UsualMost, by));
        decimal At(decimal percent) => 100m * Pricing.At(tag.Tag, CostAt(plan, material, percent / 100m), tag.Channel).Margin!.Value;
        var (from, to) = (At(least), At(most));
        if (from == to)
        {
            return null;
        }

        var floor = 100m * plan.MarginFloor;
        var crosses = floor is { } level && level <= from && level >= to ? least + ((from - level) / (from - to) * (most - least)) : (decimal?)null;
        return new WhatIfLine($"{plan.Name}, {tag.Channel.Name} {Written.Money(tag.Tag)}", least, most, from, to, At(0m), by, At(by), floor, crosses);
    }

    private static decimal CostAt(ProductPlan plan, Guid material, decimal by) => (plan with
    {
        Materials = [.. plan.Materials.Select(m => m.MaterialId == material ? m with { UnitCost = m.UnitCost * (1m + by) } : m)],
        Parts = [.. plan.Parts.Select(p => p.MaterialId == material ? p with { UnitCost = p.UnitCost * (1m + by) } : p)],
    }).Cost().PerSaleable!.Value;

    /// <summary>The rule of changes at the foot.</summary>
    public Rule Changes => new(Least, Most, Most - Least > 150m ? 50m : 10m, 5);

    /// <summary>The rule of margins at the left.</summary>
    public Rule Margins => Rule.Around(Math.Min(Math.Min(From, To), Floor ?? To), Math.Max(Math.Max(From, To), Floor ?? From));

    public string Says => $"{Name}: margin {Written.Percent(Now / 100m)} % now, {Written.Percent(Then / 100m)} % when the price changes by {Written.AsStated(At)} %"
        + (Crosses is { } at ? $"; it meets your floor of {Written.Percent(Floor!.Value / 100m)} % at {(at > 0 ? "+" : "")}{Written.AsStated(Math.Round(at, 1))} %." : ".");
}
