using MakerStudio.Core.Workings;

namespace MakerStudio.Core.Prices;

/// <summary>
/// How the cost of a unit depends on its fragrance load while the mass of the batch stays and the carrier makes up
/// the difference. Fill and yield are taken as unchanged.
/// </summary>
/// <param name="BatchQuantity">All that is weighed in, in the unit the two costs are per.</param>
/// <param name="Load">Fraction of the batch that is fragrance now.</param>
/// <param name="ScentUnitCost">Average over the fragrance in the batch.</param>
/// <param name="CarrierUnitCost">Of what takes its place.</param>
/// <param name="Saleable">Units that carry the cost, above 0.</param>
public sealed record LoadModel(decimal BatchQuantity, decimal Load, decimal ScentUnitCost, decimal CarrierUnitCost, int Saleable)
{
    /// <summary>Money a unit costs more when the load rises by all of the batch.</summary>
    public decimal PerUnitOfLoad => BatchQuantity * (ScentUnitCost - CarrierUnitCost) / Saleable;
}

/// <summary>The load that brings a margin back.</summary>
public abstract record LoadAnswer
{
    private LoadAnswer()
    {
    }

    /// <param name="Exact">A fraction, not rounded.</param>
    /// <param name="Load">Cut down to whole tenths of a per cent, so that it does restore the margin.</param>
    public sealed record Restores(decimal Exact, decimal Load, decimal UnitCost) : LoadAnswer;

    /// <param name="Says">Why no load does, in a sentence.</param>
    public sealed record None(string Says) : LoadAnswer;
}

/// <summary>A margin under its floor, with what would bring it back.</summary>
/// <param name="Load">Null when the product has no load to change.</param>
public sealed record MarginAlert(
    string Product, string Channel, decimal Margin, decimal Floor, decimal Tag, PriceResult RestoringTag, LoadAnswer? Load, IReadOnlyList<WorkingStep> Workings);

/// <summary>Watches that a margin, before fees, does not fall under the floor a product was given.</summary>
public static class MarginFloor
{
    /// <summary>A load is said in tenths of a per cent.</summary>
    public const decimal LoadStep = 0.001m;

    private const string Rule = "Margin under its floor";

    /// <summary>Null while the margin holds.</summary>
    /// <param name="floor">A fraction from 0, below 1.</param>
    /// <exception cref="ArgumentException">As <see cref="TargetPrice.Of"/>.</exception>
    public static MarginAlert? Check(string product, PricedUnit unit, decimal floor, TagRounding rounding, LoadModel? load = null)
    {
        ArgumentNullException.ThrowIfNull(unit);
        var restoring = TargetPrice.Of(unit.UnitCost, new PriceTarget.Margin(floor), unit.Channel, rounding);
        // Multiplied out: a margin that just reaches its floor is not under it.
        var tag = unit.Tag * unit.Channel.OurShare * (1m - floor);
        var needed = unit.Channel.Tax.TagPerNet * unit.UnitCost;
        if (tag >= needed)
        {
            return null;
        }

        var allowed = tag / unit.Channel.Tax.TagPerNet;
        var answer = load is null ? null : Solve(unit.UnitCost, allowed, load);
        var margin = unit.Margin ?? 0m;
        return new MarginAlert(product, unit.Channel.Name, margin, floor, unit.Tag, restoring, answer,
            [
                new(Rule, $"A margin of {100 * floor:0.##} % at a tag of {unit.Tag:0.00} allows a cost of {allowed:0.0000}; it is {unit.UnitCost:0.0000}.", Pricing.Definition),
                .. StepsOf(unit.UnitCost - allowed, load, answer),
            ]);
    }

    private static LoadAnswer Solve(decimal cost, decimal allowed, LoadModel model)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(model.Saleable, 1);
        var slope = model.PerUnitOfLoad;
        if (slope <= 0)
        {
            return new LoadAnswer.None("The fragrance costs no more than what would take its place, so less of it saves nothing.");
        }

        var exact = model.Load - (cost - allowed) / slope;
        var load = decimal.Floor(exact / LoadStep) * LoadStep;
        return load <= 0
            ? new LoadAnswer.None("Even with no fragrance at all the margin stays under its floor.")
            : new LoadAnswer.Restores(exact, load, cost + (load - model.Load) * slope);
    }

    private static IEnumerable<WorkingStep> StepsOf(decimal excess, LoadModel? model, LoadAnswer? answer) => answer switch
    {
        LoadAnswer.Restores found =>
        [
            new(Rule, $"One per cent of load is {model!.PerUnitOfLoad / 100:0.0000} a unit; {excess:0.0000} less needs {100 * found.Exact:0.00} %, so {100 * found.Load:0.0} %.", Pricing.Definition),
        ],
        LoadAnswer.None none => [new(Rule, $"{none.Says}", Pricing.Definition)],
        _ => [],
    };
}
