using MakerStudio.Core.Costing;
using MakerStudio.Core.Materials;
using MakerStudio.Core.Quantities;
using MakerStudio.Core.Stock;
using MakerStudio.Services.Inventory;

namespace MakerStudio.Services.Exchange;

/// <param name="DaysAgo">When it arrived.</param>
/// <param name="ByBo">True when Bo posts it.</param>
internal sealed record SampleDelivery(
    int DaysAgo, int Hour, bool ByBo, string Supplier, string Invoice, decimal Freight, FreightBasis Basis, params SampleLine[] Lines);

/// <param name="Price">Of the whole line.</param>
internal sealed record SampleLine(string Material, decimal Quantity, AmountUnit Unit, decimal Price)
{
    public decimal? GrossKg { get; init; }
    public decimal Duty { get; init; }
    public decimal Surcharge { get; init; }
    public string? SupplierLot { get; init; }

    /// <summary>Days from today, below zero for a date that has passed.</summary>
    public int? RetestIn { get; init; }

    /// <inheritdoc cref="RetestIn"/>
    public int? ExpiresIn { get; init; }
    public string? Shelf { get; init; }
    public long? TareMilligrams { get; init; }

    /// <summary>Its CoA did not come along, so the lot stays in quarantine.</summary>
    public bool CoaMissing { get; init; }
}

/// <summary>What arrives over the six weeks, and the release of each lot whose papers are there.</summary>
internal sealed class SampleDeliveries(Story story)
{
    public IEnumerable<SampleAct> Acts() =>
        SampleDeliveryList.All.Select(delivery => new SampleAct(story.Day(delivery.DaysAgo, delivery.Hour), () => ReceiveAsync(delivery)));

    private async Task ReceiveAsync(SampleDelivery delivery)
    {
        var actor = delivery.ByBo ? story.Bo : story.Ana;
        var supplier = (await story.Suppliers.ListAsync()).Single(s => s.Name == delivery.Supplier);
        var posted = (await story.Deliveries.PostAsync(actor, new PostDelivery
        {
            SupplierId = supplier.Id, InvoiceNumber = delivery.Invoice, ReceivedOn = story.Date, Freight = delivery.Freight, FreightBasis = delivery.Basis,
            Lines = [.. delivery.Lines.Select(l => Typed(l, delivery.Supplier))],
        })).Expect();
        foreach (var (line, lot) in delivery.Lines.Zip(posted.Lots).Where(l => l.Second.Status == LotStatus.Quarantine && !l.First.CoaMissing))
        {
            story.Clock.Pass(4);
            await SampleMaterials.FileAsync(story, actor, new AddPaper
            {
                MaterialId = story.MaterialIds[line.Material], LotId = lot.LotId, Kind = PaperKind.CertificateOfAnalysis, EditionDate = story.Date.AddDays(-9),
            }, $"{line.Material} {lot.Code}");
            story.Clock.Pass(2);
            (await story.Lots.ReleaseAsync(actor, new ReleaseLot { LotId = lot.LotId, Note = "CoA filed, papers complete" })).Expect();
        }
    }

    private DeliveryLineTyped Typed(SampleLine line, string supplier) => new()
    {
        MaterialId = story.MaterialIds[line.Material], Quantity = line.Quantity, Unit = line.Unit, Price = line.Price, GrossKg = line.GrossKg, Duty = line.Duty,
        Surcharge = line.Surcharge, SupplierLot = line.SupplierLot, Shelf = line.Shelf, TareMilligrams = line.TareMilligrams,
        RetestOn = line.RetestIn is { } retest ? story.Today.AddDays(retest) : null,
        ExpiresOn = line.ExpiresIn is { } expires ? story.Today.AddDays(expires) : null,
        OrderLineId = story.OrderLineIds.TryGetValue((supplier, line.Material), out var ordered) ? ordered : null,
    };
}
