using MakerStudio.Core.Quantities;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace MakerStudio.Services.Schema;

/// <summary>What was asked of a supplier. Append-only: an order that was sent is what the supplier has in hand.</summary>
internal sealed class PurchaseOrder
{
    public Guid Id { get; set; } = Guid.CreateVersion7();

    /// <summary>"O-7"; shown with its word: Order O-7.</summary>
    public required string Code { get; set; }
    public Guid SupplierId { get; set; }
    public Supplier? Supplier { get; set; }
    public DateOnly OrderedOn { get; set; }
    public DateOnly? ExpectedOn { get; set; }
    public decimal Freight { get; set; }

    /// <summary>A fraction, on goods and freight.</summary>
    public decimal TaxRate { get; set; }
    public string? Note { get; set; }
    public Guid SentById { get; set; }
    public DateTimeOffset SentAt { get; set; }
    public List<PurchaseOrderLine> Lines { get; } = [];
    public OrderClosing? Closing { get; set; }
}

/// <summary>Append-only with its order. What came of it are the delivery lines that name it.</summary>
internal sealed class PurchaseOrderLine
{
    public Guid Id { get; set; } = Guid.CreateVersion7();
    public Guid OrderId { get; set; }
    public PurchaseOrder? Order { get; set; }
    public int Position { get; set; }
    public Guid MaterialId { get; set; }
    public Material? Material { get; set; }
    public decimal Quantity { get; set; }
    public AmountUnit Unit { get; set; }

    /// <summary>The same in base units: milligrams or pieces.</summary>
    public long Units { get; set; }

    /// <summary>Per <see cref="Unit"/>, before discount.</summary>
    public decimal UnitPrice { get; set; }

    /// <summary>A fraction of the line.</summary>
    public decimal Discount { get; set; }
}

/// <summary>What is still to come of an order is waited for no longer. Append-only.</summary>
internal sealed class OrderClosing
{
    public Guid OrderId { get; set; }
    public required string Reason { get; set; }
    public Guid PersonId { get; set; }
    public DateTimeOffset At { get; set; }
}

internal sealed class PurchaseOrderMap : IEntityTypeConfiguration<PurchaseOrder>
{
    public void Configure(EntityTypeBuilder<PurchaseOrder> builder)
    {
        builder.ToTable("purchase_orders", t =>
        {
            t.HasCheckConstraint("order_freight_sane", "freight >= 0");
            t.HasCheckConstraint("order_tax_sane", "tax_rate between 0 and 1");
        });
        builder.Property(o => o.Code).HasMaxLength(20);
        builder.Property(o => o.Note).HasMaxLength(1000);
        builder.HasIndex(o => o.Code).IsUnique();
        builder.HasIndex(o => new { o.SentAt, o.Id });
        builder.HasOne(o => o.Supplier).WithMany().HasForeignKey(o => o.SupplierId).OnDelete(DeleteBehavior.Restrict);
        builder.HasMany(o => o.Lines).WithOne(l => l.Order).HasForeignKey(l => l.OrderId).OnDelete(DeleteBehavior.Restrict);
        builder.HasOne(o => o.Closing).WithOne().HasForeignKey<OrderClosing>(c => c.OrderId).OnDelete(DeleteBehavior.Restrict);
    }
}

internal sealed class PurchaseOrderLineMap : IEntityTypeConfiguration<PurchaseOrderLine>
{
    public void Configure(EntityTypeBuilder<PurchaseOrderLine> builder)
    {
        builder.ToTable("purchase_order_lines", t =>
        {
            t.HasCheckConstraint("order_line_above_zero", "quantity > 0 and units > 0");
            t.HasCheckConstraint("order_line_price_sane", "unit_price >= 0 and discount between 0 and 1");
        });
        builder.Property(l => l.Unit).HasConversion<string>().HasMaxLength(30);
        builder.HasIndex(l => l.MaterialId);
        builder.HasOne(l => l.Material).WithMany().HasForeignKey(l => l.MaterialId).OnDelete(DeleteBehavior.Restrict);
    }
}

internal sealed class OrderClosingMap : IEntityTypeConfiguration<OrderClosing>
{
    public void Configure(EntityTypeBuilder<OrderClosing> builder)
    {
        builder.ToTable("order_closings");
        builder.HasKey(c => c.OrderId);
        builder.Property(c => c.Reason).HasMaxLength(200);
    }
}
