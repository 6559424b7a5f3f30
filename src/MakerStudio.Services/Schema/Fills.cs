using MakerStudio.Core.Finished;
using MakerStudio.Services.Inventory;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace MakerStudio.Services.Schema;

/// <summary>One filling of a batch, with the cost sheet as it stood.</summary>
internal sealed class Fill
{
    public Guid Id { get; set; } = Guid.CreateVersion7();
    public Guid BatchId { get; set; }
    public Batch? Batch { get; set; }

    /// <summary>Mass that reached filling, after filter and vessel, milligrams.</summary>
    public long ToFillingMilligrams { get; set; }

    /// <summary>Set point of one fill, milligrams.</summary>
    public long FillMilligrams { get; set; }
    public int Filled { get; set; }
    public int Rejected { get; set; }
    public int Retained { get; set; }

    /// <summary>Check weights, net milligrams.</summary>
    public List<long> CheckWeights { get; set; } = [];
    public decimal LabourMinutes { get; set; }

    // The studio's rates at the time.
    public decimal LabourRatePerHour { get; set; }
    public decimal OverheadPerBatch { get; set; }
    public decimal OverheadPerUnit { get; set; }

    // Unrounded roll-up.
    public decimal MaterialsCost { get; set; }
    public decimal PackagingCost { get; set; }
    public decimal LabourCost { get; set; }
    public decimal OverheadCost { get; set; }
    public decimal TotalCost { get; set; }
    public string? Note { get; set; }
    public Guid PersonId { get; set; }
    public DateTimeOffset At { get; set; }
}

/// <summary>
/// One leg of a change of finished units, append-only: by batch, place and status. What only changes place or status has
/// two legs of opposite sign; what comes in or leaves has one.
/// </summary>
internal sealed class UnitMovement
{
    public long Id { get; set; }

    /// <summary>Legs of one act share it: taking the act back takes all of them back.</summary>
    public Guid EntryId { get; set; }
    public UnitMoveKind Kind { get; set; }
    public Guid BatchId { get; set; }
    public Batch? Batch { get; set; }
    public Guid PlaceId { get; set; }
    public Place? Place { get; set; }
    public UnitStatus Status { get; set; }
    public int Change { get; set; }
    public string? Reason { get; set; }
    public Guid? SaleId { get; set; }
    public Guid? KitLotId { get; set; }

    /// <summary>The leg this one takes back; each can be taken back once.</summary>
    public long? ReversesId { get; set; }
    public Guid PersonId { get; set; }
    public DateTimeOffset At { get; set; }
    public Guid RequestId { get; set; }
}

internal sealed class FillMap : IEntityTypeConfiguration<Fill>
{
    public void Configure(EntityTypeBuilder<Fill> builder)
    {
        builder.ToTable("fills", t => t.HasCheckConstraint("fill_counts_sane", "filled >= 0 and rejected >= 0 and retained >= 0 and rejected + retained <= filled"));
        builder.HasIndex(f => f.BatchId).IsUnique();
        builder.HasOne(f => f.Batch).WithMany().HasForeignKey(f => f.BatchId).OnDelete(DeleteBehavior.Restrict);
    }
}

internal sealed class UnitMovementMap : IEntityTypeConfiguration<UnitMovement>
{
    public void Configure(EntityTypeBuilder<UnitMovement> builder)
    {
        builder.ToTable("unit_movements", t => t.HasCheckConstraint("unit_movement_not_zero", "change <> 0"));
        builder.Property(m => m.Status).HasConversion<string>().HasMaxLength(20);
        builder.Property(m => m.Kind).HasConversion<string>().HasMaxLength(20);
        builder.HasIndex(m => m.BatchId);
        builder.HasIndex(m => m.EntryId);
        builder.HasIndex(m => m.SaleId);
        builder.HasIndex(m => new { m.PlaceId, m.Id });
        builder.HasIndex(m => m.ReversesId).IsUnique();
        builder.HasOne(m => m.Batch).WithMany().HasForeignKey(m => m.BatchId).OnDelete(DeleteBehavior.Restrict);
        builder.HasOne(m => m.Place).WithMany().HasForeignKey(m => m.PlaceId).OnDelete(DeleteBehavior.Restrict);
        builder.HasOne<Sale>().WithMany().HasForeignKey(m => m.SaleId).OnDelete(DeleteBehavior.Restrict);
        builder.HasOne<KitLot>().WithMany().HasForeignKey(m => m.KitLotId).OnDelete(DeleteBehavior.Restrict);
        builder.HasOne<UnitMovement>().WithMany().HasForeignKey(m => m.ReversesId).OnDelete(DeleteBehavior.Restrict);
    }
}
