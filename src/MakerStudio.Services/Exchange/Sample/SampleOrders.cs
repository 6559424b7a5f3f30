using MakerStudio.Core.Quantities;
using MakerStudio.Services.Inventory;
using static MakerStudio.Services.Exchange.SampleNames;

namespace MakerStudio.Services.Exchange;

/// <summary>What was ordered: one order of which a line is still to come, one on its way, and one begun. All invented.</summary>
internal sealed class SampleOrders(Story story)
{
    public IEnumerable<SampleAct> Acts()
    {
        yield return new(story.Day(17, 15), AddressAsync);
        yield return new(story.Day(16, 15), () => SendAsync(story.Ana, Pennel, story.Today.AddDays(-7), 12.00m, "Please pack the sprayers on top.",
            Pieces(Bottle100, 200, 0.76m), Pieces(Sprayer, 60, 0.44m), Pieces(Carton, 200, 0.37m), Pieces(LabelQuince, 150, 0.19m), Pieces(Reed, 200, 0.07m)));
        yield return new(story.Day(2, 16), () => SendAsync(story.Bo, Wrenfield, story.Today.AddDays(10), 18.40m, null,
            Kg(GreenFigOil, 2, 69.00m) with { Discount = 0.03m }, Kg(QuinceOil, 1, 72.50m)));
        yield return new(story.Day(0, 0).AddMinutes(-30), BeginAsync);
    }

    private async Task SendAsync(Actor actor, string supplier, DateOnly expected, decimal freight, string? note, params Line[] lines)
    {
        var sent = (await story.Purchasing.SendAsync(actor, new SendOrder
        {
            SupplierId = await IdAsync(supplier), ExpectedOn = expected, Freight = freight, TaxRate = 0.21m, Note = note,
            Lines = [.. lines.Select(l => new OrderLineTyped
            {
                MaterialId = story.MaterialIds[l.Material], Quantity = l.Quantity, Unit = l.Unit, UnitPrice = l.UnitPrice, Discount = l.Discount,
            })],
        })).Expect();
        foreach (var (typed, line) in lines.Zip((await story.Purchasing.FindAsync(sent.Code))!.Lines))
        {
            story.OrderLineIds[(supplier, typed.Material)] = line.Id;
        }
    }

    private async Task AddressAsync()
    {
        foreach (var row in await story.Suppliers.ListAsync())
        {
            if (Addresses.TryGetValue(row.Name, out var address))
            {
                (await story.Suppliers.ChangeAsync(story.Ana, new ChangeSupplier { SupplierId = row.Id, Name = row.Name, Address = address, Version = row.Version })).Expect();
            }
        }
    }

    private static readonly Dictionary<string, string> Addresses = new()
    {
        [Pennel] = "Unit 4, Millrace Yard\n1017 Harbourton", [Wrenfield] = "22 Linden Row\n4410 Eastmere", [Tallowby] = "The Old Chandlery\n2093 Saltbridge",
    };

    private async Task BeginAsync() => (await story.Purchasing.KeepAsync(story.Ana, new KeepOrder
    {
        DraftId = Guid.CreateVersion7(),
        Draft = new OrderDraft
        {
            SupplierId = await IdAsync(Tallowby),
            Lines =
            [
                new OrderLineDraft { MaterialId = story.MaterialIds[SoyWax], Quantity = "20", Unit = "kg", UnitPrice = "6.05" },
                new OrderLineDraft { MaterialId = story.MaterialIds[Wick], Quantity = "100", Unit = "each" },
            ],
        },
    })).Expect();

    private async Task<Guid> IdAsync(string supplier) => (await story.Suppliers.ListAsync()).Single(s => s.Name == supplier).Id;

    private static Line Kg(string material, decimal quantity, decimal price) => new(material, quantity, AmountUnit.Kilogram, price);

    private static Line Pieces(string material, decimal quantity, decimal price) => new(material, quantity, AmountUnit.Each, price);

    private sealed record Line(string Material, decimal Quantity, AmountUnit Unit, decimal UnitPrice)
    {
        public decimal Discount { get; init; }
    }
}
