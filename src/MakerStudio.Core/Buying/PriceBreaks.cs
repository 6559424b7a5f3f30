using MakerStudio.Core.Costing;

namespace MakerStudio.Core.Buying;

/// <summary>One way to buy a material: money without recoverable tax.</summary>
/// <param name="Quantity">What comes on the shelf, above 0, in the unit the cost is wanted per.</param>
/// <param name="Price">Of the whole quantity, before discount.</param>
public sealed record Offer(string Name, decimal Quantity, decimal Price, decimal Freight = 0m, decimal Duty = 0m, decimal Surcharge = 0m, decimal Discount = 0m);

/// <summary>An offer at landed cost; not rounded.</summary>
/// <param name="CoverDays">How long it lasts together with what is there; null when nothing is being used.</param>
/// <param name="TiedUp">Money laid out beyond the smallest offer. No interest is counted: what it costs to lay it out is for the studio to judge.</param>
/// <param name="Saves">Against buying the same quantity at the unit cost of the smallest offer.</param>
/// <param name="OutlastsLife">It would still be there when it must be used up.</param>
public sealed record ComparedOffer(Offer Offer, decimal Total, decimal UnitCost, decimal? CoverDays, decimal TiedUp, decimal Saves, bool OutlastsLife)
{
    public decimal? CoverMonths => CoverDays / Stock.Reorder.DaysPerMonth;
}

/// <param name="Offers">Smallest quantity first.</param>
/// <param name="Cheapest">Lowest landed unit cost of those that do not outlast their life; null when all do.</param>
public sealed record PriceComparison(IReadOnlyList<ComparedOffer> Offers, ComparedOffer? Cheapest);

/// <summary>Compares price breaks, or suppliers, by what the material costs on our own shelf.</summary>
public static class PriceBreaks
{
    /// <param name="available">On the shelf now, 0 or more.</param>
    /// <param name="usePerDay">0 or more, in the unit of the offers.</param>
    /// <param name="lifeDays">Days within which it must be used up; null when that is not known.</param>
    /// <exception cref="ArgumentException">There are no offers, or one is out of range.</exception>
    public static PriceComparison Compare(IReadOnlyList<Offer> offers, decimal available, decimal usePerDay, int? lifeDays = null)
    {
        ArgumentNullException.ThrowIfNull(offers);
        ArgumentOutOfRangeException.ThrowIfLessThan(available, 0m);
        ArgumentOutOfRangeException.ThrowIfLessThan(usePerDay, 0m);
        if (offers.Count == 0)
        {
            throw new ArgumentException("There are no offers to compare.", nameof(offers));
        }

        var landed = offers.Select(o => (Offer: o, Line: Land(o))).OrderBy(o => o.Offer.Quantity).ToList();
        var smallest = landed[0];
        var compared = landed.Select(o =>
        {
            decimal? cover = usePerDay == 0 ? null : (available + o.Offer.Quantity) / usePerDay;
            return new ComparedOffer(
                o.Offer, o.Line.Total, o.Line.UnitCost, cover, o.Line.Total - smallest.Line.Total,
                smallest.Line.Total * o.Offer.Quantity / smallest.Offer.Quantity - o.Line.Total, lifeDays is { } life && (cover is null || cover > life));
        }).ToList();
        return new PriceComparison(compared, compared.Where(c => !c.OutlastsLife).MinBy(c => c.UnitCost));
    }

    /// <summary>All the freight is the line's own, so what it is shared out by does not matter.</summary>
    private static LandedLine Land(Offer offer) => LandedCost.Allocate(
        [new InvoiceLine(offer.Price, 1m, offer.Duty, offer.Surcharge, offer.Discount, offer.Quantity)],
        offer.Freight, FreightBasis.Weight, Apportionment.MostMoneyDecimals).Lines[0];
}
