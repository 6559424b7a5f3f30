using MakerStudio.Core.Prices;
using MakerStudio.Web.Shell.Drawings;

namespace MakerStudio.Web.Prices;

/// <summary>A size that is thought of, as it is typed.</summary>
public sealed class SizeTyping
{
    public decimal? Millilitres { get; set; }
    public decimal? Packaging { get; set; }
    public decimal? Minutes { get; set; }

    public bool IsEmpty => Millilitres is null;
}

/// <summary>Sizes that are thought of, with what all of them share.</summary>
public sealed class SizesTyping
{
    public decimal? LiquidPerMillilitre { get; set; }
    public decimal? OverfillPercent { get; set; }
    public decimal? LabourPerMinute { get; set; }
    public decimal? Overhead { get; set; }
    public List<SizeTyping> Sizes { get; } = [];

    /// <summary>Begins with what the product itself takes, so that only what differs is typed.</summary>
    public static SizesTyping From(ProductPlan plan, decimal? millilitres)
    {
        ArgumentNullException.ThrowIfNull(plan);
        var sheet = plan.Cost();
        var typing = new SizesTyping
        {
            LiquidPerMillilitre = millilitres is > 0 and var ml ? decimal.Round(sheet.MaterialsTotal / sheet.Filled / ml, 7) : null, OverfillPercent = 0m,
            LabourPerMinute = decimal.Round(plan.LabourRatePerHour / 60m, 4), Overhead = decimal.Round(sheet.Overhead / sheet.Filled, 4),
        };
        typing.Sizes.Add(new SizeTyping { Millilitres = millilitres, Packaging = decimal.Round(sheet.PackagingTotal / sheet.Filled, 4), Minutes = decimal.Round(plan.LabourMinutes / sheet.Filled, 1) });
        typing.Sizes.Add(new SizeTyping());
        typing.Sizes.Add(new SizeTyping());
        return typing;
    }

    /// <summary>Sizes that are typed in full; a part that was left empty costs nothing.</summary>
    public IReadOnlyList<LadderRung> Rungs()
    {
        var rates = new SizeRates(Least(LiquidPerMillilitre), Least(OverfillPercent) / 100m, Least(LabourPerMinute), Least(Overhead));
        return
        [
            .. Sizes.Where(s => s.Millilitres > 0).Select(s =>
            {
                var cost = SizeCost.Of(new SizePlan($"{Shell.Written.AsStated(s.Millilitres!.Value)} mL", s.Millilitres.Value, Least(s.Packaging), Least(s.Minutes)), rates);
                BarPiece[] pieces =
                [
                    new("liquid", cost.Liquid, Series.Fragrance), new("packaging", cost.Packaging, Series.Packaging), new("labour", cost.Labour, Series.Labour), new("overhead", cost.Overhead, Series.Overhead),
                ];
                return new LadderRung(cost.Size.Name, [.. pieces.Where(p => p.Value > 0)], cost.Total);
            }),
        ];
    }

    private static decimal Least(decimal? amount) => Math.Max(0m, amount ?? 0m);
}
