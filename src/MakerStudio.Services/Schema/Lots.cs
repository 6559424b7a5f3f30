using MakerStudio.Core.Stock;
using MakerStudio.Services.Inventory;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace MakerStudio.Services.Schema;

/// <summary>A traceable quantity of one material.</summary>
internal sealed class Lot
{
    public Guid Id { get; set; } = Guid.CreateVersion7();

    /// <summary>The house's own code, e.g. "P-1".</summary>
    public required string Code { get; set; }
    public Guid MaterialId { get; set; }
    public Material? Material { get; set; }
    public Guid? SupplierId { get; set; }
    public Supplier? Supplier { get; set; }
    public Guid? DeliveryLineId { get; set; }

    /// <summary>The batch that made it, for a pre-blend.</summary>
    public Guid? MadeByBatchId { get; set; }
    public string? SupplierLot { get; set; }
    public DateOnly ReceivedOn { get; set; }
    public DateOnly? OpenedOn { get; set; }
    public DateOnly? ExpiresOn { get; set; }
    public DateOnly? RetestOn { get; set; }
    public LotStatus Status { get; set; }
    public string? StatusReason { get; set; }

    /// <summary>g/mL; overrides the material's.</summary>
    public decimal? Density { get; set; }

    /// <summary>Landed cost of one gram or one piece, unrounded.</summary>
    public decimal UnitCost { get; set; }

    /// <summary>Milligrams of the empty container.</summary>
    public long? TareMilligrams { get; set; }
    public string? Shelf { get; set; }
    public uint Version { get; set; }
    public LotBalance? Balance { get; set; }
}

/// <summary>The row that is locked: on hand always equals the sum of the lot's movements and is never below zero.</summary>
internal sealed class LotBalance
{
    public Guid LotId { get; set; }

    /// <summary>Base units: milligrams or pieces.</summary>
    public long OnHand { get; set; }
}

/// <summary>One line of the ledger. Append-only: the database refuses UPDATE, DELETE and TRUNCATE.</summary>
internal sealed class Movement
{
    public long Id { get; set; }
    public Guid LotId { get; set; }
    public Lot? Lot { get; set; }
    public MovementKind Kind { get; set; }
    public AdjustmentReason? Reason { get; set; }

    /// <summary>Signed base units.</summary>
    public long Change { get; set; }
    public long OnHandAfter { get; set; }

    /// <summary>Of one gram or one piece, at the time.</summary>
    public decimal UnitCost { get; set; }
    public string? Note { get; set; }
    public Guid? DeliveryId { get; set; }
    public Guid? BatchId { get; set; }
    public Guid? WeighingId { get; set; }
    public Guid? FillId { get; set; }

    /// <summary>The kits whose box it is.</summary>
    public Guid? KitLotId { get; set; }

    /// <summary>The movement this one takes back; each can be reversed once.</summary>
    public long? ReversesId { get; set; }
    public Guid PersonId { get; set; }
    public DateTimeOffset At { get; set; }
    public Guid RequestId { get; set; }
}

/// <summary>What happened to a lot besides its quantity. Append-only.</summary>
internal sealed class LotEvent
{
    public long Id { get; set; }
    public Guid LotId { get; set; }
    public LotEventKind Kind { get; set; }
    public required string What { get; set; }
    public string? Reason { get; set; }
    public DateOnly? OldDate { get; set; }
    public DateOnly? NewDate { get; set; }
    public Guid PersonId { get; set; }
    public DateTimeOffset At { get; set; }
}

internal sealed class Delivery
{
    public Guid Id { get; set; } = Guid.CreateVersion7();

    /// <summary>"D-7"; shown with its word: Delivery D-7.</summary>
    public required string Code { get; set; }
    public Guid SupplierId { get; set; }
    public Supplier? Supplier { get; set; }
    public string? InvoiceNumber { get; set; }
    public DateOnly ReceivedOn { get; set; }
    public decimal Freight { get; set; }
    public Core.Costing.FreightBasis FreightBasis { get; set; }
    public decimal? InvoiceTotal { get; set; }
    public Guid PostedById { get; set; }
    public DateTimeOffset PostedAt { get; set; }
    public List<DeliveryLine> Lines { get; } = [];
}

internal sealed class DeliveryLine
{
    public Guid Id { get; set; } = Guid.CreateVersion7();
    public Guid DeliveryId { get; set; }
    public int Position { get; set; }
    public Guid MaterialId { get; set; }
    public Material? Material { get; set; }
    public decimal QuantityTyped { get; set; }
    public Core.Quantities.AmountUnit Unit { get; set; }

    /// <summary>Base units taken into stock.</summary>
    public long Quantity { get; set; }
    public decimal? DensityUsed { get; set; }
    public decimal Price { get; set; }
    public decimal? GrossKilograms { get; set; }
    public decimal Duty { get; set; }
    public decimal Surcharge { get; set; }
    public decimal Discount { get; set; }
    public decimal FreightShare { get; set; }
    public decimal LandedTotal { get; set; }

    /// <summary>Landed, of one gram or one piece, unrounded.</summary>
    public decimal UnitCost { get; set; }

    /// <summary>The answer given when the price looked far off.</summary>
    public string? PriceAnswer { get; set; }

    /// <summary>What it was ordered with; null when it was not ordered here.</summary>
    public Guid? OrderLineId { get; set; }
}

internal sealed class LotMap : IEntityTypeConfiguration<Lot>
{
    public void Configure(EntityTypeBuilder<Lot> builder)
    {
        builder.ToTable("lots");
        builder.Property(l => l.Code).HasMaxLength(20);
        builder.Property(l => l.SupplierLot).HasMaxLength(60);
        builder.Property(l => l.Status).HasConversion<string>().HasMaxLength(20);
        builder.Property(l => l.Shelf).HasMaxLength(60);
        builder.Property(l => l.Version).IsRowVersion();
        builder.HasIndex(l => l.Code).IsUnique();
        builder.HasIndex(l => l.MaterialId);
        builder.HasOne(l => l.Material).WithMany().HasForeignKey(l => l.MaterialId).OnDelete(DeleteBehavior.Restrict);
        builder.HasOne(l => l.Supplier).WithMany().HasForeignKey(l => l.SupplierId).OnDelete(DeleteBehavior.Restrict);
        builder.HasOne(l => l.Balance).WithOne().HasForeignKey<LotBalance>(b => b.LotId).OnDelete(DeleteBehavior.Restrict);
        builder.HasOne<DeliveryLine>().WithMany().HasForeignKey(l => l.DeliveryLineId).OnDelete(DeleteBehavior.Restrict);
        builder.HasOne<Batch>().WithMany().HasForeignKey(l => l.MadeByBatchId).OnDelete(DeleteBehavior.Restrict);
    }
}

internal sealed class LotBalanceMap : IEntityTypeConfiguration<LotBalance>
{
    public void Configure(EntityTypeBuilder<LotBalance> builder)
    {
        builder.ToTable("lot_balances", t => t.HasCheckConstraint("on_hand_never_negative", "on_hand >= 0"));
        builder.HasKey(b => b.LotId);
    }
}

internal sealed class MovementMap : IEntityTypeConfiguration<Movement>
{
    public void Configure(EntityTypeBuilder<Movement> builder)
    {
        builder.ToTable("movements", t =>
        {
            t.HasCheckConstraint("movement_not_zero", "change <> 0");
            t.HasCheckConstraint("movement_after_never_negative", "on_hand_after >= 0");
        });
        builder.Property(m => m.Kind).HasConversion<string>().HasMaxLength(20);
        builder.Property(m => m.Reason).HasConversion<string>().HasMaxLength(30);
        builder.HasIndex(m => new { m.LotId, m.Id });
        builder.HasIndex(m => m.BatchId);
        builder.HasIndex(m => m.At);
        builder.HasIndex(m => m.ReversesId).IsUnique();
        builder.HasOne(m => m.Lot).WithMany().HasForeignKey(m => m.LotId).OnDelete(DeleteBehavior.Restrict);
        builder.HasOne<Movement>().WithMany().HasForeignKey(m => m.ReversesId).OnDelete(DeleteBehavior.Restrict);
        builder.HasOne<Batch>().WithMany().HasForeignKey(m => m.BatchId).OnDelete(DeleteBehavior.Restrict);
        builder.HasOne<Delivery>().WithMany().HasForeignKey(m => m.DeliveryId).OnDelete(DeleteBehavior.Restrict);
        builder.HasOne<KitLot>().WithMany().HasForeignKey(m => m.KitLotId).OnDelete(DeleteBehavior.Restrict);
    }
}

internal sealed class LotEventMap : IEntityTypeConfiguration<LotEvent>
{
    public void Configure(EntityTypeBuilder<LotEvent> builder)
    {
        builder.ToTable("lot_events");
        builder.Property(e => e.Kind).HasConversion<string>().HasMaxLength(20);
        builder.HasIndex(e => new { e.LotId, e.Id });
        builder.HasOne<Lot>().WithMany().HasForeignKey(e => e.LotId).OnDelete(DeleteBehavior.Restrict);
    }
}

internal sealed class DeliveryMap : IEntityTypeConfiguration<Delivery>
{
    public void Configure(EntityTypeBuilder<Delivery> builder)
    {
        builder.ToTable("deliveries");
        builder.Property(d => d.Code).HasMaxLength(20);
        builder.Property(d => d.InvoiceNumber).HasMaxLength(60);
        builder.Property(d => d.FreightBasis).HasConversion<string>().HasMaxLength(20);
        builder.HasIndex(d => d.Code).IsUnique();
        builder.HasOne(d => d.Supplier).WithMany().HasForeignKey(d => d.SupplierId).OnDelete(DeleteBehavior.Restrict);
        builder.HasMany(d => d.Lines).WithOne().HasForeignKey(l => l.DeliveryId).OnDelete(DeleteBehavior.Restrict);
    }
}

internal sealed class DeliveryLineMap : IEntityTypeConfiguration<DeliveryLine>
{
    public void Configure(EntityTypeBuilder<DeliveryLine> builder)
    {
        builder.ToTable("delivery_lines", t => t.HasCheckConstraint("delivery_quantity_positive", "quantity > 0"));
        builder.Property(l => l.Unit).HasConversion<string>().HasMaxLength(30);
        builder.HasOne<PurchaseOrderLine>().WithMany().HasForeignKey(l => l.OrderLineId).OnDelete(DeleteBehavior.Restrict);
        builder.HasOne(l => l.Material).WithMany().HasForeignKey(l => l.MaterialId).OnDelete(DeleteBehavior.Restrict);
    }
}
