using MakerStudio.Core.Quantities;
using MakerStudio.Services.Inventory;
using static MakerStudio.Services.Exchange.SampleNames;

namespace MakerStudio.Services.Exchange;

/// <summary>What suppliers ask by quantity, off their price lists; all invented.</summary>
internal sealed class SamplePriceBreaks(Story story)
{
    public IEnumerable<SampleAct> Acts() => All().Select((asked, index) => new SampleAct(story.Day(9, 16).AddMinutes(index * 2), () => NoteAsync(asked)));

    private static IEnumerable<Asked> All()
    {
        yield return new(FigOil, Alder, 1, AmountUnit.Kilogram, 71.00m, Freight: 9.50m);
        yield return new(FigOil, Alder, 5, AmountUnit.Kilogram, 318.00m, Freight: 11.00m);
        yield return new(FigOil, Alder, 25, AmountUnit.Kilogram, 1_390.00m, Freight: 38.00m, Charges: 24.00m);
        yield return new(FigOil, OldMill, 0.5m, AmountUnit.Kilogram, 34.00m, Freight: 1.95m);
        yield return new(QuinceOil, Wrenfield, 1, AmountUnit.Kilogram, 88.00m, Freight: 9.00m, Note: "new price list");
        yield return new(QuinceOil, Wrenfield, 2, AmountUnit.Kilogram, 172.00m, Freight: 9.00m, Note: "new price list");
        yield return new(Ethanol, Alder, 20, AmountUnit.Kilogram, 128.00m, Freight: 26.88m, Charges: 18.00m);
        yield return new(Ethanol, Brackwater, 25, AmountUnit.Litre, 134.00m, Freight: 6.00m);
        yield return new(Ethanol, Brackwater, 200, AmountUnit.Litre, 4.60m, PriceIs.OfOne, Freight: 48.00m, Note: "drum, deposit not counted");
        yield return new(Bottle100, Alder, 500, AmountUnit.Each, 0.74m, PriceIs.OfOne, Freight: 62.40m);
        yield return new(Bottle100, Pennel, 50, AmountUnit.Each, 0.79m, PriceIs.OfOne);
        yield return new(Bottle100, Pennel, 200, AmountUnit.Each, 0.76m, PriceIs.OfOne, Freight: 6.00m);
    }

    private async Task NoteAsync(Asked asked)
    {
        var supplier = (await story.Suppliers.ListAsync()).Single(s => s.Name == asked.Supplier);
        (await story.MaterialPrices.KeepBreakAsync(story.Bo, new KeepPriceBreak
        {
            MaterialId = story.MaterialIds[asked.Material], SupplierId = supplier.Id, Quantity = asked.Quantity, Unit = asked.Unit, Price = asked.Price,
            PriceIs = asked.PriceIs, Freight = asked.Freight, Charges = asked.Charges, Note = asked.Note,
        })).Expect();
    }

    private sealed record Asked(
        string Material, string Supplier, decimal Quantity, AmountUnit Unit, decimal Price, PriceIs PriceIs = PriceIs.OfAll,
        decimal? Freight = null, decimal? Charges = null, string? Note = null);
}
