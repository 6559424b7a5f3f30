using MakerStudio.Core.Costing;
using MakerStudio.Core.Materials;
using MakerStudio.Core.Quantities;
using MakerStudio.Core.Stock;

namespace MakerStudio.Services.Inventory;

/// <summary>What a draft would come to, worked out while it is typed.</summary>
/// <param name="ByWeight">Null while something is missing for it; <paramref name="Problems"/> says what.</param>
/// <param name="Problems">Why the freight cannot be shared by the chosen basis yet.</param>
public sealed record DeliverySheet(
    IReadOnlyList<DeliverySheetLine> Lines, Landed? ByWeight, Landed? ByValue, FreightBasis Basis, decimal? InvoiceTotal, IReadOnlyList<string> Problems)
{
    /// <summary>Before anything is typed.</summary>
    public static DeliverySheet Empty { get; } = new([], null, null, FreightBasis.Weight, null, []);

    public Landed? Chosen => Basis == FreightBasis.Weight ? ByWeight : ByValue;

    /// <summary>Worked out less invoice: zero when they agree, null when one is not known.</summary>
    public decimal? Difference => Chosen?.Total - InvoiceTotal;

    public int OpenQuestions => Lines.Count(l => l.Question is not null);
}

/// <param name="Units">Into stock, milligrams or pieces; null while it cannot be read.</param>
/// <param name="Problem">Why the amount cannot be taken into stock.</param>
/// <param name="Missing">Papers the lot would be without.</param>
public sealed record DeliverySheetLine(
    string? Material, MaterialKind? Kind, StockUnit? StockedIn, long? Units, string? Problem, PriceAsked? Question, IReadOnlyList<PaperKind> Missing)
{
    public LotStatus Then => Missing.Count > 0 ? LotStatus.Quarantine : LotStatus.Released;
}

public sealed partial class Deliveries
{
    /// <summary>The sums of an unposted invoice; lines that cannot be read yet are left open.</summary>
    public async Task<DeliverySheet> WorkOutAsync(PostDelivery typed, CancellationToken cancel = default)
    {
        await using var db = await store.ReadAsync(cancel);
        var facts = await MaterialFacts.LoadAsync(db, typed.Lines.Select(l => l.MaterialId), cancel);
        var lines = typed.Lines.Select((l, i) => SheetLine(i, l, facts.GetValueOrDefault(l.MaterialId))).ToList();
        var open = lines.Count == 0 || lines.Any(l => l.Units is null) || typed.Lines.Any(l => l.Price < 0 || l.Discount > l.Price);
        IReadOnlyList<InvoiceLine> invoice = open ? [] :
            [.. typed.Lines.Select((l, i) => DeliverySums.Invoice(l, new StockAmount(lines[i].Units!.Value, lines[i].StockedIn!.Value)))];
        return new DeliverySheet(
            lines, Land(invoice, typed.Freight, FreightBasis.Weight), Land(invoice, typed.Freight, FreightBasis.Value), typed.FreightBasis,
            typed.InvoiceTotal, open ? [] : LandedCost.Problems(invoice, typed.Freight, typed.FreightBasis));
    }

    private static Landed? Land(IReadOnlyList<InvoiceLine> lines, decimal freight, FreightBasis basis) =>
        lines.Count == 0 || LandedCost.Problems(lines, freight, basis).Count > 0 ? null : LandedCost.Allocate(lines, freight, basis);

    private static DeliverySheetLine SheetLine(int index, DeliveryLineTyped line, MaterialFacts? material)
    {
        if (material is null)
        {
            return new DeliverySheetLine(null, null, null, null, null, null, []);
        }

        var open = new DeliverySheetLine(material.Name, material.Kind, material.StockedIn, null, null, null, material.Missing);
        if (line.Quantity <= 0)
        {
            return open;
        }

        var result = DeliverySums.IntoStock(line, material);
        return result is ConversionResult.Converted { Amount: { IsPositive: true } stock }
            ? open with { Units = stock.Units, Question = line.Price < 0 ? null : DeliverySums.Question(index, line, material, stock) }
            : open with { Problem = DeliverySums.WhyNot(result) };
    }
}
