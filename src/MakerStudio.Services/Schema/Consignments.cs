using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace MakerStudio.Services.Schema;

/// <summary>Units brought to a shop that sells for us. No sale: they stay ours. Append-only.</summary>
internal sealed class Placement
{
    public Guid Id { get; set; } = Guid.CreateVersion7();
    public Guid PlaceId { get; set; }

    /// <summary>The movements it made, see <see cref="UnitMovement.EntryId"/>.</summary>
    public Guid EntryId { get; set; }
    public DateOnly PlacedOn { get; set; }
    public string? Note { get; set; }
    public Guid PersonId { get; set; }
    public DateTimeOffset At { get; set; }
    public List<PlacementLine> Lines { get; } = [];
}

internal sealed class PlacementLine
{
    public Guid Id { get; set; } = Guid.CreateVersion7();
    public Guid PlacementId { get; set; }
    public Guid BatchId { get; set; }
    public int Count { get; set; }

    /// <summary>Agreed net price of one to the shop's buyer.</summary>
    public decimal NetPrice { get; set; }
    public decimal CommissionPercent { get; set; }
}

/// <summary>What a shop told of the units it has. Only this makes them sold. Append-only.</summary>
internal sealed class ConsignmentReport
{
    public Guid Id { get; set; } = Guid.CreateVersion7();
    public Guid PlaceId { get; set; }
    public Guid EntryId { get; set; }

    /// <summary>Null when nothing was sold and nothing is paid.</summary>
    public Guid? SaleId { get; set; }
    public DateOnly ReportedOn { get; set; }
    public string? Note { get; set; }
    public Guid PersonId { get; set; }
    public DateTimeOffset At { get; set; }
    public List<ConsignmentReportLine> Lines { get; } = [];
}

internal sealed class ConsignmentReportLine
{
    public Guid Id { get; set; } = Guid.CreateVersion7();
    public Guid ReportId { get; set; }
    public Guid BatchId { get; set; }
    public int Held { get; set; }
    public int Sold { get; set; }
    public int Broken { get; set; }
    public int SentBack { get; set; }
    public int Left { get; set; }
    public decimal NetPrice { get; set; }
    public decimal CommissionPercent { get; set; }
    public decimal PaidPerBroken { get; set; }
}

internal sealed class PlacementMap : IEntityTypeConfiguration<Placement>
{
    public void Configure(EntityTypeBuilder<Placement> builder)
    {
        builder.ToTable("placements");
        builder.Property(p => p.Note).HasMaxLength(400);
        builder.HasIndex(p => p.PlaceId);
        builder.HasOne<Place>().WithMany().HasForeignKey(p => p.PlaceId).OnDelete(DeleteBehavior.Restrict);
        builder.HasMany(p => p.Lines).WithOne().HasForeignKey(l => l.PlacementId).OnDelete(DeleteBehavior.Restrict);
    }
}

internal sealed class PlacementLineMap : IEntityTypeConfiguration<PlacementLine>
{
    public void Configure(EntityTypeBuilder<PlacementLine> builder)
    {
        builder.ToTable("placement_lines", t => t.HasCheckConstraint("placed_count_positive", "count > 0"));
        builder.HasOne<Batch>().WithMany().HasForeignKey(l => l.BatchId).OnDelete(DeleteBehavior.Restrict);
    }
}

internal sealed class ConsignmentReportMap : IEntityTypeConfiguration<ConsignmentReport>
{
    public void Configure(EntityTypeBuilder<ConsignmentReport> builder)
    {
        builder.ToTable("consignment_reports");
        builder.Property(r => r.Note).HasMaxLength(400);
        builder.HasIndex(r => r.PlaceId);
        builder.HasOne<Place>().WithMany().HasForeignKey(r => r.PlaceId).OnDelete(DeleteBehavior.Restrict);
        builder.HasOne<Sale>().WithMany().HasForeignKey(r => r.SaleId).OnDelete(DeleteBehavior.Restrict);
        builder.HasMany(r => r.Lines).WithOne().HasForeignKey(l => l.ReportId).OnDelete(DeleteBehavior.Restrict);
    }
}

internal sealed class ConsignmentReportLineMap : IEntityTypeConfiguration<ConsignmentReportLine>
{
    public void Configure(EntityTypeBuilder<ConsignmentReportLine> builder)
    {
        builder.ToTable("consignment_report_lines", t =>
            t.HasCheckConstraint("shop_accounts_for_all", "sold >= 0 and broken >= 0 and sent_back >= 0 and \"left\" >= 0 and held = sold + broken + sent_back + \"left\""));
        builder.HasOne<Batch>().WithMany().HasForeignKey(l => l.BatchId).OnDelete(DeleteBehavior.Restrict);
    }
}
