using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace MakerStudio.Services.Schema;

/// <summary>A gift set: which finished goods and which packaging make one.</summary>
internal sealed class Kit
{
    public Guid Id { get; set; } = Guid.CreateVersion7();
    public required string Name { get; set; }
    public string? Note { get; set; }
    public DateTimeOffset? PutAwayAt { get; set; }
    public uint Version { get; set; }
    public List<KitItem> Items { get; } = [];
    public List<KitPart> Parts { get; } = [];
}

internal sealed class KitItem
{
    public Guid Id { get; set; } = Guid.CreateVersion7();
    public Guid KitId { get; set; }
    public int Position { get; set; }
    public Guid FormulaId { get; set; }
    public Formula? Formula { get; set; }
    public string? SizeName { get; set; }
    public int Count { get; set; }
}

internal sealed class KitPart
{
    public Guid Id { get; set; } = Guid.CreateVersion7();
    public Guid KitId { get; set; }
    public int Position { get; set; }
    public Guid MaterialId { get; set; }
    public Material? Material { get; set; }
    public int Count { get; set; }
}

/// <summary>Kits made at once with exactly the same codes inside. What they are made of never changes; what is left of them does.</summary>
internal sealed class KitLot
{
    public Guid Id { get; set; } = Guid.CreateVersion7();

    /// <summary>"KT-3".</summary>
    public required string Code { get; set; }
    public Guid KitId { get; set; }
    public required string Name { get; set; }
    public int Made { get; set; }
    public int Sold { get; set; }
    public int Undone { get; set; }

    /// <summary>Made less sold less undone; the database checks the sum.</summary>
    public int Left { get; set; }

    /// <summary>Cost of one, not rounded.</summary>
    public decimal UnitCost { get; set; }
    public DateOnly MadeOn { get; set; }
    public Guid PersonId { get; set; }
    public DateTimeOffset At { get; set; }
    public Guid RequestId { get; set; }
    public List<KitLotContent> Contents { get; } = [];
}

/// <summary>One batch or one packaging lot in each kit of a lot. Append-only.</summary>
internal sealed class KitLotContent
{
    public Guid Id { get; set; } = Guid.CreateVersion7();
    public Guid KitLotId { get; set; }
    public int Position { get; set; }
    public Guid? BatchId { get; set; }
    public Batch? Batch { get; set; }
    public Guid? LotId { get; set; }
    public Lot? Lot { get; set; }
    public required string Name { get; set; }
    public int Count { get; set; }
    public decimal UnitCost { get; set; }
}

internal sealed class KitMap : IEntityTypeConfiguration<Kit>
{
    public void Configure(EntityTypeBuilder<Kit> builder)
    {
        builder.ToTable("kits");
        builder.Property(k => k.Name).HasMaxLength(80);
        builder.Property(k => k.Note).HasMaxLength(400);
        builder.Property(k => k.Version).IsRowVersion();
        builder.HasMany(k => k.Items).WithOne().HasForeignKey(i => i.KitId).OnDelete(DeleteBehavior.Cascade);
        builder.HasMany(k => k.Parts).WithOne().HasForeignKey(p => p.KitId).OnDelete(DeleteBehavior.Cascade);
    }
}

internal sealed class KitItemMap : IEntityTypeConfiguration<KitItem>
{
    public void Configure(EntityTypeBuilder<KitItem> builder)
    {
        builder.ToTable("kit_items", t => t.HasCheckConstraint("kit_item_positive", "count > 0"));
        builder.Property(i => i.SizeName).HasMaxLength(80);
        builder.HasOne(i => i.Formula).WithMany().HasForeignKey(i => i.FormulaId).OnDelete(DeleteBehavior.Restrict);
    }
}

internal sealed class KitPartMap : IEntityTypeConfiguration<KitPart>
{
    public void Configure(EntityTypeBuilder<KitPart> builder)
    {
        builder.ToTable("kit_parts", t => t.HasCheckConstraint("kit_part_positive", "count > 0"));
        builder.HasOne(p => p.Material).WithMany().HasForeignKey(p => p.MaterialId).OnDelete(DeleteBehavior.Restrict);
    }
}

internal sealed class KitLotMap : IEntityTypeConfiguration<KitLot>
{
    public void Configure(EntityTypeBuilder<KitLot> builder)
    {
        builder.ToTable("kit_lots", t => t.HasCheckConstraint(
            "kits_add_up", "made > 0 and sold >= 0 and undone >= 0 and \"left\" >= 0 and made = sold + undone + \"left\""));
        builder.Property(k => k.Code).HasMaxLength(20);
        builder.Property(k => k.Name).HasMaxLength(80);
        builder.HasIndex(k => k.Code).IsUnique();
        builder.HasOne<Kit>().WithMany().HasForeignKey(k => k.KitId).OnDelete(DeleteBehavior.Restrict);
        builder.HasMany(k => k.Contents).WithOne().HasForeignKey(c => c.KitLotId).OnDelete(DeleteBehavior.Restrict);
    }
}

internal sealed class KitLotContentMap : IEntityTypeConfiguration<KitLotContent>
{
    public void Configure(EntityTypeBuilder<KitLotContent> builder)
    {
        builder.ToTable("kit_lot_contents", t =>
        {
            t.HasCheckConstraint("kit_content_positive", "count > 0");
            t.HasCheckConstraint("kit_content_batch_or_lot", "(batch_id is null) <> (lot_id is null)");
        });
        builder.Property(c => c.Name).HasMaxLength(200);
        builder.HasOne(c => c.Batch).WithMany().HasForeignKey(c => c.BatchId).OnDelete(DeleteBehavior.Restrict);
        builder.HasOne(c => c.Lot).WithMany().HasForeignKey(c => c.LotId).OnDelete(DeleteBehavior.Restrict);
    }
}
