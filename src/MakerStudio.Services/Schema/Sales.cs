using MakerStudio.Core.Prices;
using MakerStudio.Services.Inventory;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace MakerStudio.Services.Schema;

/// <summary>
/// Money for units. Append-only: a wrong sale is taken back by a second one that names it, with every quantity turned
/// round, so that sums over all lines are always right.
/// </summary>
internal sealed class Sale
{
    public Guid Id { get; set; } = Guid.CreateVersion7();

    /// <summary>"SL-41"; shown with its word: Sale SL-41.</summary>
    public required string Code { get; set; }
    public SaleKind Kind { get; set; }

    /// <summary>The sale this one takes back, in whole or in part.</summary>
    public Guid? OfSaleId { get; set; }
    public Guid PlaceId { get; set; }

    /// <summary>Null for somebody who did not tell their name.</summary>
    public Guid? CustomerId { get; set; }
    public Customer? Customer { get; set; }
    public required string Channel { get; set; }

    /// <summary>The order number of the channel.</summary>
    public string? Reference { get; set; }
    public DateOnly SoldOn { get; set; }
    public decimal TaxPercent { get; set; }
    public TaxBasis TaxBasis { get; set; }

    /// <summary>What the channel keeps of the whole sale; below zero where a sale is taken back.</summary>
    public decimal Fees { get; set; }
    public string? Note { get; set; }
    public Guid? SalesFileId { get; set; }
    public Guid PersonId { get; set; }
    public DateTimeOffset At { get; set; }
    public Guid RequestId { get; set; }
    public List<SaleLine> Lines { get; } = [];
}

internal sealed class SaleLine
{
    public Guid Id { get; set; } = Guid.CreateVersion7();
    public Guid SaleId { get; set; }
    public int Position { get; set; }

    /// <summary>Either a batch or a lot of kits.</summary>
    public Guid? BatchId { get; set; }
    public Batch? Batch { get; set; }
    public Guid? KitLotId { get; set; }
    public KitLot? KitLot { get; set; }

    /// <summary>Units or kits; below zero where they come back.</summary>
    public int Quantity { get; set; }

    /// <summary>Price of one on the tag.</summary>
    public decimal Tag { get; set; }

    /// <summary>Of one, without tax, not rounded.</summary>
    public decimal NetPrice { get; set; }

    /// <summary>What one cost when it was sold, not rounded; null when unknown.</summary>
    public decimal? UnitCost { get; set; }

    /// <summary>Broken at a shop that pays for it, and not sold.</summary>
    public bool IsForBroken { get; set; }

    /// <summary>Why another batch than the suggested one, or one past its date.</summary>
    public string? Reason { get; set; }
}

/// <summary>A parcel that went out. Append-only.</summary>
internal sealed class Dispatch
{
    public Guid Id { get; set; } = Guid.CreateVersion7();
    public Guid SaleId { get; set; }
    public DateOnly SentOn { get; set; }
    public string? Carrier { get; set; }
    public string? Tracking { get; set; }
    public string? Note { get; set; }
    public Guid PersonId { get; set; }
    public DateTimeOffset At { get; set; }
}

/// <summary>A sales file as it was uploaded, in parts, so that neither reading nor writing needs the whole of it at once.</summary>
internal sealed class SalesFile
{
    public Guid Id { get; set; } = Guid.CreateVersion7();
    public required string Name { get; set; }
    public long Bytes { get; set; }
    public required byte[] Sha256 { get; set; }
    public Guid PersonId { get; set; }
    public DateTimeOffset At { get; set; }
    public DateTimeOffset? PostedAt { get; set; }
    public Guid? PostedById { get; set; }
    public int? SalesPosted { get; set; }
}

internal sealed class SalesFilePart
{
    public Guid FileId { get; set; }
    public int Number { get; set; }
    public required byte[] Content { get; set; }
}

internal sealed class SaleMap : IEntityTypeConfiguration<Sale>
{
    public void Configure(EntityTypeBuilder<Sale> builder)
    {
        builder.ToTable("sales", t =>
        {
            t.HasCheckConstraint("tax_is_percent", "tax_percent between 0 and 100");
            t.HasCheckConstraint("reversal_names_its_sale", "kind <> 'Reversal' or of_sale_id is not null");
        });
        builder.Property(s => s.Code).HasMaxLength(20);
        builder.Property(s => s.Kind).HasConversion<string>().HasMaxLength(20);
        builder.Property(s => s.Channel).HasMaxLength(40);
        builder.Property(s => s.Reference).HasMaxLength(60);
        builder.Property(s => s.TaxBasis).HasConversion<string>().HasMaxLength(20);
        builder.Property(s => s.Note).HasMaxLength(1000);
        builder.HasIndex(s => s.Code).IsUnique();
        builder.HasIndex(s => new { s.SoldOn, s.At });
        builder.HasIndex(s => new { s.Channel, s.Reference });
        builder.HasIndex(s => s.OfSaleId).IsUnique().HasFilter("kind = 'Reversal'").HasDatabaseName("ix_sales_reversed_once");
        builder.HasOne<Sale>().WithMany().HasForeignKey(s => s.OfSaleId).OnDelete(DeleteBehavior.Restrict);
        builder.HasOne<Place>().WithMany().HasForeignKey(s => s.PlaceId).OnDelete(DeleteBehavior.Restrict);
        builder.HasOne(s => s.Customer).WithMany().HasForeignKey(s => s.CustomerId).OnDelete(DeleteBehavior.Restrict);
        builder.HasOne<SalesFile>().WithMany().HasForeignKey(s => s.SalesFileId).OnDelete(DeleteBehavior.Restrict);
        builder.HasMany(s => s.Lines).WithOne().HasForeignKey(l => l.SaleId).OnDelete(DeleteBehavior.Restrict);
    }
}

internal sealed class SaleLineMap : IEntityTypeConfiguration<SaleLine>
{
    public void Configure(EntityTypeBuilder<SaleLine> builder)
    {
        builder.ToTable("sale_lines", t =>
        {
            t.HasCheckConstraint("sale_quantity_not_zero", "quantity <> 0");
            t.HasCheckConstraint("sale_of_batch_or_kit", "(batch_id is null) <> (kit_lot_id is null)");
        });
        builder.Property(l => l.Reason).HasMaxLength(200);
        builder.HasIndex(l => new { l.SaleId, l.Position }).IsUnique();
        builder.HasIndex(l => l.BatchId);
        builder.HasOne(l => l.Batch).WithMany().HasForeignKey(l => l.BatchId).OnDelete(DeleteBehavior.Restrict);
        builder.HasOne(l => l.KitLot).WithMany().HasForeignKey(l => l.KitLotId).OnDelete(DeleteBehavior.Restrict);
    }
}

internal sealed class DispatchMap : IEntityTypeConfiguration<Dispatch>
{
    public void Configure(EntityTypeBuilder<Dispatch> builder)
    {
        builder.ToTable("dispatches");
        builder.Property(d => d.Carrier).HasMaxLength(60);
        builder.Property(d => d.Tracking).HasMaxLength(80);
        builder.Property(d => d.Note).HasMaxLength(400);
        builder.HasIndex(d => d.SaleId);
        builder.HasOne<Sale>().WithMany().HasForeignKey(d => d.SaleId).OnDelete(DeleteBehavior.Restrict);
    }
}

internal sealed class SalesFileMap : IEntityTypeConfiguration<SalesFile>
{
    public void Configure(EntityTypeBuilder<SalesFile> builder)
    {
        builder.ToTable("sales_files");
        builder.Property(f => f.Name).HasMaxLength(200);
        builder.HasIndex(f => f.Sha256).IsUnique().HasFilter("posted_at is not null").HasDatabaseName("ix_sales_files_posted_once");
    }
}

internal sealed class SalesFilePartMap : IEntityTypeConfiguration<SalesFilePart>
{
    public void Configure(EntityTypeBuilder<SalesFilePart> builder)
    {
        builder.ToTable("sales_file_parts");
        builder.HasKey(p => new { p.FileId, p.Number });
        builder.HasOne<SalesFile>().WithMany().HasForeignKey(p => p.FileId).OnDelete(DeleteBehavior.Cascade);
    }
}
