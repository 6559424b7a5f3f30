using MakerStudio.Core.Prices;
using MakerStudio.Services.Inventory;
using MakerStudio.Web.Shell.Drawings;

namespace MakerStudio.Web.Prices;

/// <summary>What a price is to bring, as it is typed.</summary>
public sealed class PriceTyping
{
    public string? Kind { get; set; } = "margin";

    /// <summary>Per cent, or money for a contribution.</summary>
    public decimal? Amount { get; set; } = 65m;

    public bool NeedsAmount => Kind != "keystone";

    public bool IsMoney => Kind == "contribution";

    /// <summary>Null while something is missing or out of range.</summary>
    public PriceTarget? Target => Typed.Target;

    internal TypedTarget Typed => new(Kind, Amount);
}

/// <summary>One size of a ladder: its name, the parts its cost is drawn in, and what it costs.</summary>
public sealed record LadderRung(string Name, IReadOnlyList<BarPiece> Cost, decimal UnitCost)
{
    /// <summary>All sizes of a product's scent; the product itself at what one of it is taken to cost.</summary>
    internal static IReadOnlyList<LadderRung> Of(PriceView view, ProductRow product, decimal unitCost) =>
    [
        .. view.Products.Where(p => p.FormulaId == product.FormulaId && p.Cost is not null).Select(p => p.SizeId == product.SizeId && p.Cost != unitCost
            ? new LadderRung(p.SizeName, [new("cost", unitCost, Series.Packaging)], unitCost)
            : new LadderRung(p.SizeName, [.. CostPart.Of(p.Plan!).Select(c => new BarPiece(c.Name, c.Amount, c.Series))], p.Cost!.Value)),
    ];

    internal static IReadOnlyList<LadderRow> Ladder(PriceView view, IReadOnlyList<LadderRung> rungs, PriceTarget target) =>
        PriceLadder.Of([.. rungs.Select(s => new LadderSize(s.Name, s.UnitCost))], [.. view.Channels.Select(c => c.Is)], target, view.Rules.Rounding);
}
