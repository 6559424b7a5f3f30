using MakerStudio.Services.Inventory;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace MakerStudio.Services.Schema;

/// <summary>Something we make once, from one released version. What it was made from is copied here and never follows later edits.</summary>
internal sealed class Batch
{
    public Guid Id { get; set; } = Guid.CreateVersion7();
    public required string Code { get; set; }
    public Guid FormulaVersionId { get; set; }
    public FormulaVersion? FormulaVersion { get; set; }

    // Snapshot of the formula when planned.
    public required string ScentName { get; set; }
    public int VersionNumber { get; set; }
    public required string ProductKind { get; set; }
    public string? Method { get; set; }
    public int CureMinHours { get; set; }
    public int CureIdealHours { get; set; }
    public int? CureLatestHours { get; set; }
    public decimal TolerancePercent { get; set; }
    public int ToleranceDivisions { get; set; }
    public decimal ExpectedLossPercent { get; set; }

    /// <summary>g/mL used for the fill weight.</summary>
    public decimal? DensityUsed { get; set; }

    public BatchState State { get; set; }
    public long TargetMilligrams { get; set; }

    /// <summary>Null for a batch that is not filled into units (a pre-blend).</summary>
    public int? PlannedUnits { get; set; }
    public string? SizeName { get; set; }
    public decimal? NominalMillilitres { get; set; }
    public long? NominalMilligrams { get; set; }

    /// <summary>Mass of one fill, milligrams.</summary>
    public long? FillMilligrams { get; set; }

    public Guid? ScaleId { get; set; }
    public Scale? Scale { get; set; }
    public long ReadabilityMilligrams { get; set; }
    public decimal? RoomCelsius { get; set; }
    public string? Place { get; set; }
    public string? Note { get; set; }

    public Guid PlannedById { get; set; }
    public DateTimeOffset PlannedAt { get; set; }
    public Guid? WeighingById { get; set; }
    public DateTimeOffset? WeighingSince { get; set; }

    /// <summary>Confirmed last addition, or pour. The cure counts elapsed hours from here.</summary>
    public DateTimeOffset? ClockStartedAt { get; set; }
    public Guid? ClockStartedById { get; set; }
    public DateTimeOffset? ReadyAt { get; set; }
    public Guid? ReadyById { get; set; }

    /// <summary>Reason of a release before the minimum was reached; printed on the record.</summary>
    public string? EarlyReason { get; set; }
    public string? HeldReason { get; set; }
    public DateTimeOffset? FilledAt { get; set; }
    public DateTimeOffset? ClosedAt { get; set; }

    /// <summary>Last day its units are sold on; null when none was given.</summary>
    public DateOnly? BestBefore { get; set; }

    /// <summary>Labour and overhead of a batch that became a lot; a filling keeps its own.</summary>
    public decimal? ConversionCost { get; set; }
    public DateTimeOffset? DiscardedAt { get; set; }
    public string? DiscardReason { get; set; }
    public uint Version { get; set; }

    public List<BatchLine> Lines { get; } = [];
    public List<BatchPart> Parts { get; } = [];
}

internal sealed class BatchLine
{
    public Guid Id { get; set; } = Guid.CreateVersion7();
    public Guid BatchId { get; set; }
    public int Position { get; set; }
    public Guid MaterialId { get; set; }
    public Material? Material { get; set; }
    public required string MaterialName { get; set; }
    public decimal Fraction { get; set; }

    /// <summary>Target as planned, before any correction.</summary>
    public long PlannedMilligrams { get; set; }

    /// <summary>Target now: planned, or scaled by an accepted correction.</summary>
    public long TargetMilligrams { get; set; }
    public string? Method { get; set; }
    public decimal? DensityUsed { get; set; }

    /// <summary>Set when the line is in tolerance or was accepted; the sheet moves on.</summary>
    public DateTimeOffset? DoneAt { get; set; }
}

/// <summary>Packaging a unit will need, reserved while planned.</summary>
internal sealed class BatchPart
{
    public Guid BatchId { get; set; }
    public Guid MaterialId { get; set; }
    public Material? Material { get; set; }
    public int CountPerUnit { get; set; }
}

/// <summary>One recorded weighing from one lot. Saved at once; the lot is used up at once.</summary>
internal sealed class Weighing
{
    public Guid Id { get; set; } = Guid.CreateVersion7();
    public Guid BatchId { get; set; }
    public Guid BatchLineId { get; set; }

    /// <summary>Null when the material was used before its receipt: see <see cref="PendingReceipt"/>.</summary>
    public Guid? LotId { get; set; }
    public Lot? Lot { get; set; }

    /// <summary>Net milligrams.</summary>
    public long NetMilligrams { get; set; }
    public long? TareMilligrams { get; set; }
    public decimal UnitCost { get; set; }
    public DateTimeOffset At { get; set; }
    public Guid PersonId { get; set; }
    public Guid RequestId { get; set; }
    public DateTimeOffset? ReversedAt { get; set; }
    public Guid? ReversedById { get; set; }
    public string? ReversedReason { get; set; }
}

/// <summary>Material used before its paperwork came: estimated cost until a delivery is matched.</summary>
internal sealed class PendingReceipt
{
    public Guid Id { get; set; } = Guid.CreateVersion7();
    public Guid MaterialId { get; set; }
    public Material? Material { get; set; }
    public Guid BatchId { get; set; }
    public Batch? Batch { get; set; }
    public Guid WeighingId { get; set; }
    public long Milligrams { get; set; }
    public decimal EstimatedUnitCost { get; set; }
    public string? Reason { get; set; }
    public Guid PersonId { get; set; }
    public DateTimeOffset At { get; set; }
    public Guid? MatchedLotId { get; set; }
    public DateTimeOffset? MatchedAt { get; set; }
}

internal sealed class Deviation
{
    public Guid Id { get; set; } = Guid.CreateVersion7();
    public Guid BatchId { get; set; }
    public Guid? BatchLineId { get; set; }
    public DeviationChoice Choice { get; set; }
    public required string What { get; set; }

    /// <summary>Factor all targets were scaled by; 1 when accepted.</summary>
    public decimal Factor { get; set; } = 1m;
    public string? Reason { get; set; }
    public Guid PersonId { get; set; }
    public DateTimeOffset At { get; set; }
}

/// <summary>A re-smell.</summary>
internal sealed class CureCheck
{
    public Guid Id { get; set; } = Guid.CreateVersion7();
    public Guid BatchId { get; set; }
    public DateTimeOffset At { get; set; }
    public Guid PersonId { get; set; }

    /// <summary>0 to 5.</summary>
    public int Strength { get; set; }
    public string? Character { get; set; }
    public Clarity Clarity { get; set; }
    public string? Note { get; set; }
    public CheckVerdict Verdict { get; set; }
}

internal sealed class BatchMap : IEntityTypeConfiguration<Batch>
{
    public void Configure(EntityTypeBuilder<Batch> builder)
    {
        builder.ToTable("batches", t =>
        {
            t.HasCheckConstraint("batch_target_positive", "target_milligrams > 0");
            t.HasCheckConstraint("resting_has_clock", "state not in ('Resting', 'Ready', 'Filled', 'Closed') or clock_started_at is not null");
        });
        builder.Property(b => b.Code).HasMaxLength(20);
        builder.Property(b => b.ScentName).HasMaxLength(80);
        builder.Property(b => b.ProductKind).HasMaxLength(40);
        builder.Property(b => b.State).HasConversion<string>().HasMaxLength(20);
        builder.Property(b => b.Version).IsRowVersion();
        builder.HasIndex(b => b.Code).IsUnique();
        builder.HasIndex(b => b.State);
        builder.HasOne(b => b.FormulaVersion).WithMany().HasForeignKey(b => b.FormulaVersionId).OnDelete(DeleteBehavior.Restrict);
        builder.HasOne(b => b.Scale).WithMany().HasForeignKey(b => b.ScaleId).OnDelete(DeleteBehavior.Restrict);
        builder.HasMany(b => b.Lines).WithOne().HasForeignKey(l => l.BatchId).OnDelete(DeleteBehavior.Restrict);
        builder.HasMany(b => b.Parts).WithOne().HasForeignKey(p => p.BatchId).OnDelete(DeleteBehavior.Restrict);
    }
}

internal sealed class BatchLineMap : IEntityTypeConfiguration<BatchLine>
{
    public void Configure(EntityTypeBuilder<BatchLine> builder)
    {
        builder.ToTable("batch_lines", t => t.HasCheckConstraint("line_target_positive", "target_milligrams > 0"));
        builder.Property(l => l.MaterialName).HasMaxLength(120);
        builder.HasIndex(l => new { l.BatchId, l.Position }).IsUnique();
        builder.HasOne(l => l.Material).WithMany().HasForeignKey(l => l.MaterialId).OnDelete(DeleteBehavior.Restrict);
    }
}

internal sealed class BatchPartMap : IEntityTypeConfiguration<BatchPart>
{
    public void Configure(EntityTypeBuilder<BatchPart> builder)
    {
        builder.ToTable("batch_parts");
        builder.HasKey(p => new { p.BatchId, p.MaterialId });
        builder.HasOne(p => p.Material).WithMany().HasForeignKey(p => p.MaterialId).OnDelete(DeleteBehavior.Restrict);
    }
}

internal sealed class WeighingMap : IEntityTypeConfiguration<Weighing>
{
    public void Configure(EntityTypeBuilder<Weighing> builder)
    {
        builder.ToTable("weighings", t => t.HasCheckConstraint("weighing_positive", "net_milligrams > 0"));
        builder.HasIndex(w => w.BatchId);
        builder.HasIndex(w => w.BatchLineId);
        builder.HasIndex(w => w.LotId);
        builder.HasOne<Batch>().WithMany().HasForeignKey(w => w.BatchId).OnDelete(DeleteBehavior.Restrict);
        builder.HasOne<BatchLine>().WithMany().HasForeignKey(w => w.BatchLineId).OnDelete(DeleteBehavior.Restrict);
        builder.HasOne(w => w.Lot).WithMany().HasForeignKey(w => w.LotId).OnDelete(DeleteBehavior.Restrict);
    }
}

internal sealed class PendingReceiptMap : IEntityTypeConfiguration<PendingReceipt>
{
    public void Configure(EntityTypeBuilder<PendingReceipt> builder)
    {
        builder.ToTable("pending_receipts", t => t.HasCheckConstraint("pending_positive", "milligrams > 0"));
        builder.HasIndex(p => p.MaterialId).HasFilter("matched_at is null");
        builder.HasOne(p => p.Material).WithMany().HasForeignKey(p => p.MaterialId).OnDelete(DeleteBehavior.Restrict);
        builder.HasOne(p => p.Batch).WithMany().HasForeignKey(p => p.BatchId).OnDelete(DeleteBehavior.Restrict);
        builder.HasOne<Weighing>().WithMany().HasForeignKey(p => p.WeighingId).OnDelete(DeleteBehavior.Restrict);
        builder.HasOne<Lot>().WithMany().HasForeignKey(p => p.MatchedLotId).OnDelete(DeleteBehavior.Restrict);
    }
}

internal sealed class DeviationMap : IEntityTypeConfiguration<Deviation>
{
    public void Configure(EntityTypeBuilder<Deviation> builder)
    {
        builder.ToTable("deviations");
        builder.Property(d => d.Choice).HasConversion<string>().HasMaxLength(20);
        builder.HasOne<Batch>().WithMany().HasForeignKey(d => d.BatchId).OnDelete(DeleteBehavior.Restrict);
    }
}

internal sealed class CureCheckMap : IEntityTypeConfiguration<CureCheck>
{
    public void Configure(EntityTypeBuilder<CureCheck> builder)
    {
        builder.ToTable("cure_checks", t => t.HasCheckConstraint("strength_0_to_5", "strength between 0 and 5"));
        builder.Property(c => c.Clarity).HasConversion<string>().HasMaxLength(20);
        builder.Property(c => c.Verdict).HasConversion<string>().HasMaxLength(20);
        builder.HasIndex(c => new { c.BatchId, c.At });
        builder.HasOne<Batch>().WithMany().HasForeignKey(c => c.BatchId).OnDelete(DeleteBehavior.Restrict);
    }
}
