using MakerStudio.Core.Stock;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace MakerStudio.Services.Schema;

/// <summary>The valuation method from the first day of a financial year on. Append-only.</summary>
internal sealed class BookMethod
{
    public long Id { get; set; }
    public DateOnly First { get; set; }
    public ValuationMethod Method { get; set; }
    public Guid PersonId { get; set; }
    public DateTimeOffset At { get; set; }
}

/// <summary>The first day of a financial year from which on years begin on that day. Append-only: a later one takes the place of those not begun yet.</summary>
internal sealed class BookYear
{
    public long Id { get; set; }
    public DateOnly First { get; set; }
    public Guid PersonId { get; set; }
    public DateTimeOffset At { get; set; }
}

/// <summary>
/// Stock of one lot carried below its cost: a lot of a material, a batch of a finished product, a lot of kits.
/// Append-only: the newest of a lot says what it is written down by in all, so a lower one takes some of it back.
/// </summary>
internal sealed class WriteDown
{
    public long Id { get; set; }
    public Guid? MaterialId { get; set; }
    public Guid? FormulaId { get; set; }
    public string? SizeName { get; set; }
    public Guid? KitId { get; set; }

    /// <summary>Of <see cref="MaterialId"/>; null in entries made before lots were told apart, which mean all there was.</summary>
    public Guid? LotId { get; set; }

    /// <summary>Of <see cref="FormulaId"/>; null as above.</summary>
    public Guid? BatchId { get; set; }

    /// <summary>Of <see cref="KitId"/>.</summary>
    public Guid? KitLotId { get; set; }

    /// <summary>There when it was made: milligrams or pieces of a material, units of a product.</summary>
    public decimal Quantity { get; set; }

    /// <summary>Of that quantity, by the method of the books then.</summary>
    public decimal Cost { get; set; }

    // The estimate, for one kilogram or piece of a material, for one unit of a product.
    public decimal SellingPrice { get; set; }
    public decimal ToComplete { get; set; }
    public decimal ToSell { get; set; }

    /// <summary>What the quantity is written down by in all.</summary>
    public decimal Amount { get; set; }
    public required string Reason { get; set; }
    public Guid PersonId { get; set; }
    public DateTimeOffset At { get; set; }
    public Guid RequestId { get; set; }
}

/// <summary>An abnormal loss out of a batch's vessel: expensed, so the bottles do not carry it. Append-only.</summary>
internal sealed class BatchLoss
{
    public long Id { get; set; }
    public Guid BatchId { get; set; }
    public long Milligrams { get; set; }
    public required string Reason { get; set; }
    public Guid PersonId { get; set; }
    public DateTimeOffset At { get; set; }
    public Guid RequestId { get; set; }
}

internal sealed class BookMethodMap : IEntityTypeConfiguration<BookMethod>
{
    public void Configure(EntityTypeBuilder<BookMethod> builder)
    {
        builder.ToTable("book_methods");
        builder.Property(m => m.Method).HasConversion<string>().HasMaxLength(20);
        builder.HasIndex(m => m.First).IsUnique();
    }
}

internal sealed class BookYearMap : IEntityTypeConfiguration<BookYear>
{
    public void Configure(EntityTypeBuilder<BookYear> builder) =>
        builder.ToTable("book_years", t => t.HasCheckConstraint("book_year_starts_in_every_month", "extract(day from first) <= 28"));
}

internal sealed class WriteDownMap : IEntityTypeConfiguration<WriteDown>
{
    public void Configure(EntityTypeBuilder<WriteDown> builder)
    {
        builder.ToTable("write_downs", t =>
        {
            t.HasCheckConstraint("write_down_of_one", "num_nonnulls(material_id, formula_id, kit_id) = 1");
            t.HasCheckConstraint("write_down_of_its_lot", "(lot_id is null or material_id is not null) and (batch_id is null or formula_id is not null) and (kit_lot_id is null) = (kit_id is null)");
            t.HasCheckConstraint("write_down_sane", "quantity > 0 and amount >= 0 and amount <= cost");
        });
        builder.Property(w => w.SizeName).HasMaxLength(80);
        builder.Property(w => w.Reason).HasMaxLength(200);
        builder.HasOne<Material>().WithMany().HasForeignKey(w => w.MaterialId).OnDelete(DeleteBehavior.Restrict);
        builder.HasOne<Formula>().WithMany().HasForeignKey(w => w.FormulaId).OnDelete(DeleteBehavior.Restrict);
        builder.HasOne<Kit>().WithMany().HasForeignKey(w => w.KitId).OnDelete(DeleteBehavior.Restrict);
        builder.HasOne<Lot>().WithMany().HasForeignKey(w => w.LotId).OnDelete(DeleteBehavior.Restrict);
        builder.HasOne<Batch>().WithMany().HasForeignKey(w => w.BatchId).OnDelete(DeleteBehavior.Restrict);
        builder.HasOne<KitLot>().WithMany().HasForeignKey(w => w.KitLotId).OnDelete(DeleteBehavior.Restrict);
    }
}

internal sealed class BatchLossMap : IEntityTypeConfiguration<BatchLoss>
{
    public void Configure(EntityTypeBuilder<BatchLoss> builder)
    {
        builder.ToTable("batch_losses", t => t.HasCheckConstraint("batch_loss_positive", "milligrams > 0"));
        builder.Property(l => l.Reason).HasMaxLength(200);
        builder.HasIndex(l => l.BatchId);
        builder.HasOne<Batch>().WithMany().HasForeignKey(l => l.BatchId).OnDelete(DeleteBehavior.Restrict);
    }
}
