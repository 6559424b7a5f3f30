using MakerStudio.Core.Costing;

namespace MakerStudio.Services.Inventory;

/// <summary>An invoice as it is being typed: text stays text until it is posted, so that nothing typed is lost.</summary>
public sealed record DeliveryDraft
{
    public Guid? SupplierId { get; set; }
    public string? InvoiceNumber { get; set; }
    public DateOnly? ReceivedOn { get; set; }
    public string? Freight { get; set; }
    public FreightBasis FreightBasis { get; set; }
    public string? InvoiceTotal { get; set; }
    public List<DeliveryLineDraft> Lines { get; set; } = [];
}

/// <summary>One line of it. Amounts may carry their unit: "25 L", "4.4 lb".</summary>
public sealed record DeliveryLineDraft
{
    public Guid Key { get; set; } = Guid.CreateVersion7();
    public Guid? MaterialId { get; set; }
    public string? Quantity { get; set; }

    /// <summary>Symbol of the unit that stands in the field; a unit typed behind the number comes before it.</summary>
    public string? Unit { get; set; } = "kg";
    public string? Price { get; set; }
    public string? GrossKg { get; set; }
    public string? Duty { get; set; }
    public string? Surcharge { get; set; }
    public string? Discount { get; set; }
    public string? Density { get; set; }
    public string? SupplierLot { get; set; }
    public DateOnly? ExpiresOn { get; set; }
    public DateOnly? RetestOn { get; set; }
    public string? Shelf { get; set; }

    /// <summary>Of the empty container, grams unless a unit is typed.</summary>
    public string? Tare { get; set; }

    /// <summary>The unit price the person confirmed when it looked far from the last one.</summary>
    public decimal? ConfirmedUnitPrice { get; set; }

    /// <summary>The line of a purchase order that this came for.</summary>
    public Guid? OrderLineId { get; set; }
}
