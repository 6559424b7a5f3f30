namespace MakerStudio.Core.Prices;

/// <summary>Something that might change.</summary>
public abstract record SupposedChange
{
    private SupposedChange()
    {
    }

    /// <summary>A supplier's price by a fraction: 0.18 is 18 % dearer. Not below −1.</summary>
    public sealed record PriceBy(Guid MaterialId, decimal Fraction) : SupposedChange;

    /// <summary>A new unit cost, in the unit the product plans use.</summary>
    public sealed record PriceTo(Guid MaterialId, decimal UnitCost) : SupposedChange;

    /// <param name="ProductId">Null for every product that has a fragrance and a carrier; the others stay.</param>
    /// <param name="Load">A fraction of the batch.</param>
    public sealed record LoadTo(Guid? ProductId, decimal Load) : SupposedChange;

    /// <param name="ProductId">Null for every product.</param>
    /// <param name="Yield">A fraction, at most 1.</param>
    public sealed record YieldTo(Guid? ProductId, decimal Yield) : SupposedChange;

    /// <summary>Replaces the fee of that name in the channel of that name, or adds it.</summary>
    public sealed record FeeTo(string Channel, ChannelFee Fee) : SupposedChange;

    public sealed record LabourRateTo(decimal PerHour) : SupposedChange;
}

/// <param name="Alert">Null while the margin holds, or no floor is watched.</param>
public sealed record TagEffect(PricedUnit Before, PricedUnit After, MarginAlert? Alert);

/// <summary>What a change does to one product.</summary>
public abstract record ProductEffect(Guid ProductId, string Name)
{
    /// <param name="Before">Cost of a saleable unit, not rounded.</param>
    public sealed record Worked(Guid ProductId, string Name, decimal Before, decimal After, decimal BatchBefore, decimal BatchAfter, IReadOnlyList<TagEffect> Tags)
        : ProductEffect(ProductId, Name)
    {
        public bool IsTouched => Before != After || Tags.Any(t => t.Before.Contribution != t.After.Contribution);
    }

    /// <param name="Says">Why it cannot be worked out, in a sentence.</param>
    public sealed record NotPossible(Guid ProductId, string Name, string Says) : ProductEffect(ProductId, Name);
}

/// <summary>Works supposed changes through every product at once; each is costed anew from its batch, nothing is guessed along.</summary>
public static class WhatIf
{
    public static IReadOnlyList<ProductEffect> Of(
        IReadOnlyList<ProductPlan> products, IReadOnlyList<SupposedChange> changes, TagRounding rounding)
    {
        ArgumentNullException.ThrowIfNull(products);
        ArgumentNullException.ThrowIfNull(changes);
        return [.. products.Select(p => Effect(p, changes, rounding))];
    }

    private static ProductEffect Effect(ProductPlan before, IReadOnlyList<SupposedChange> changes, TagRounding rounding)
    {
        var after = before;
        foreach (var change in changes)
        {
            if (Apply(after, change) is not { } next)
            {
                return new ProductEffect.NotPossible(before.Id, before.Name, $"{before.Name}: its carrier cannot make up for that load.");
            }

            after = next;
        }

        if ((before.Problem() ?? after.Problem()) is { } problem)
        {
            return new ProductEffect.NotPossible(before.Id, before.Name, problem);
        }

        var (was, becomes) = (before.Cost(), after.Cost());
        var (costWas, costBecomes) = (was.PerSaleable!.Value, becomes.PerSaleable!.Value);
        var tags = before.Prices.Zip(after.Prices, (b, a) =>
        {
            var unit = Pricing.At(a.Tag, costBecomes, a.Channel);
            var alert = after.MarginFloor is { } floor ? MarginFloor.Check(after.Name, unit, floor, rounding, after.LoadModel()) : null;
            return new TagEffect(Pricing.At(b.Tag, costWas, b.Channel), unit, alert);
        });
        return new ProductEffect.Worked(before.Id, before.Name, costWas, costBecomes, was.Total, becomes.Total, [.. tags]);
    }

    /// <summary>Null when the load cannot be had.</summary>
    private static ProductPlan? Apply(ProductPlan plan, SupposedChange change) => change switch
    {
        SupposedChange.PriceBy(var id, var fraction) => Reprice(plan, id, cost => cost * (1m + fraction)),
        SupposedChange.PriceTo(var id, var cost) => Reprice(plan, id, _ => cost),
        SupposedChange.LoadTo(null, _) when plan.LoadModel() is null => plan,
        SupposedChange.LoadTo(var id, var load) => Means(plan, id) ? plan.AtLoad(load) : plan,
        SupposedChange.YieldTo(var id, var yield) => Means(plan, id) ? plan with { Yield = yield } : plan,
        SupposedChange.FeeTo(var channel, var fee) => plan with
        {
            Prices = [.. plan.Prices.Select(p => p.Channel.Name == channel ? p with { Channel = WithFee(p.Channel, fee) } : p)],
        },
        SupposedChange.LabourRateTo(var rate) => plan with { LabourRatePerHour = rate },
        _ => throw new ArgumentOutOfRangeException(nameof(change)),
    };

    private static bool Means(ProductPlan plan, Guid? productId) => productId is null || productId == plan.Id;

    private static ProductPlan Reprice(ProductPlan plan, Guid materialId, Func<decimal, decimal> cost) => plan with
    {
        Materials = [.. plan.Materials.Select(m => m.MaterialId == materialId ? m with { UnitCost = cost(m.UnitCost) } : m)],
        Parts = [.. plan.Parts.Select(p => p.MaterialId == materialId ? p with { UnitCost = cost(p.UnitCost) } : p)],
    };

    private static Channel WithFee(Channel channel, ChannelFee fee) => channel with
    {
        Fees = channel.Fees.Any(f => f.Name == fee.Name)
            ? [.. channel.Fees.Select(f => f.Name == fee.Name ? fee : f)]
            : [.. channel.Fees, fee],
    };
}
