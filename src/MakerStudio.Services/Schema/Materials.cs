using MakerStudio.Core.Materials;
using MakerStudio.Core.Quantities;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace MakerStudio.Services.Schema;

internal sealed class Material
{
    public Guid Id { get; set; } = Guid.CreateVersion7();
    public required string Name { get; set; }
    public MaterialKind Kind { get; set; }
    public string? Cas { get; set; }
    public StockUnit StockedIn { get; set; }

    /// <summary>g/mL at <see cref="DensityAtCelsius"/>.</summary>
    public decimal? Density { get; set; }
    public decimal? DensityAtCelsius { get; set; }
    public decimal? AlcoholValue { get; set; }
    public AlcoholBasis? AlcoholBasis { get; set; }
    public decimal? FlashPointCelsius { get; set; }
    public int? ShelfLifeDays { get; set; }
    public int? LifeAfterOpeningDays { get; set; }

    /// <summary>Base units: milligrams or pieces.</summary>
    public long? ReorderPoint { get; set; }

    /// <summary>Base units kept for a late delivery or a busy week.</summary>
    public long? SafetyStock { get; set; }

    /// <summary>Days an order is to last beyond its lead time; null takes the house's own.</summary>
    public int? OrderCoverDays { get; set; }

    /// <summary>Milligrams of one drop, from weighing 20 drops.</summary>
    public decimal? DropMilligrams { get; set; }
    public string? Notes { get; set; }
    public List<PaperKind> RequiredPapers { get; set; } = [];
    public DateTimeOffset CreatedAt { get; set; }
    public DateTimeOffset? ArchivedAt { get; set; }
    public uint Version { get; set; }
    public List<MaterialSupplier> Suppliers { get; } = [];
}

internal sealed class Supplier
{
    public Guid Id { get; set; } = Guid.CreateVersion7();
    public required string Name { get; set; }

    /// <summary>As it stands on an order.</summary>
    public string? Address { get; set; }
    public string? Notes { get; set; }
    public uint Version { get; set; }
}

internal sealed class MaterialSupplier
{
    public Guid MaterialId { get; set; }
    public Guid SupplierId { get; set; }
    public Supplier? Supplier { get; set; }
    public string? SupplierCode { get; set; }
    public int? LeadTimeDays { get; set; }
    public string? PackNote { get; set; }

    /// <summary>Base units: the least the supplier sells; null when any amount, or not known.</summary>
    public long? Minimum { get; set; }

    /// <summary>Base units: sold in whole packs of this; null when any amount, or not known.</summary>
    public long? Pack { get; set; }
}

/// <summary>An uploaded paper. SDS and fragrance certificate belong to the material, a CoA to the lot.</summary>
internal sealed class Paper
{
    public Guid Id { get; set; } = Guid.CreateVersion7();
    public Guid MaterialId { get; set; }
    public Guid? LotId { get; set; }
    public PaperKind Kind { get; set; }
    public string? Edition { get; set; }
    public DateOnly? EditionDate { get; set; }
    public required string FileName { get; set; }
    public required string ContentType { get; set; }
    public required byte[] Content { get; set; }
    public long Size { get; set; }
    public Guid AddedById { get; set; }
    public DateTimeOffset AddedAt { get; set; }
}

internal sealed class MaterialMap : IEntityTypeConfiguration<Material>
{
    public void Configure(EntityTypeBuilder<Material> builder)
    {
        builder.ToTable("materials", t =>
        {
            t.HasCheckConstraint("density_sane", "density is null or (density > 0 and density < 25)");
            t.HasCheckConstraint("order_amounts_sane", "safety_stock >= 0 and order_cover_days > 0");
            t.HasCheckConstraint("alcohol_never_bare", "(alcohol_value is null) = (alcohol_basis is null)");
        });
        builder.Property(m => m.Name).HasMaxLength(120);
        builder.Property(m => m.Cas).HasMaxLength(12);
        builder.Property(m => m.Kind).HasConversion<string>().HasMaxLength(30);
        builder.Property(m => m.StockedIn).HasConversion<string>().HasMaxLength(10);
        builder.Property(m => m.AlcoholBasis).HasConversion<string>().HasMaxLength(20);
        builder.PrimitiveCollection(m => m.RequiredPapers).ElementType(e => e.HasConversion<string>());
        builder.Property(m => m.Version).IsRowVersion();
        builder.HasMany(m => m.Suppliers).WithOne().HasForeignKey(s => s.MaterialId);
        builder.HasIndex(m => m.Name);
    }
}

internal sealed class SupplierMap : IEntityTypeConfiguration<Supplier>
{
    public void Configure(EntityTypeBuilder<Supplier> builder)
    {
        builder.ToTable("suppliers");
        builder.Property(s => s.Name).HasMaxLength(120);
        builder.Property(s => s.Address).HasMaxLength(400);
        builder.Property(s => s.Version).IsRowVersion();
        builder.HasIndex(s => s.Name).IsUnique();
    }
}

internal sealed class MaterialSupplierMap : IEntityTypeConfiguration<MaterialSupplier>
{
    public void Configure(EntityTypeBuilder<MaterialSupplier> builder)
    {
        builder.ToTable("material_suppliers", t => t.HasCheckConstraint("supplier_packs_sane", "minimum > 0 and pack > 0"));
        builder.HasKey(s => new { s.MaterialId, s.SupplierId });
        builder.HasOne(s => s.Supplier).WithMany().HasForeignKey(s => s.SupplierId).OnDelete(DeleteBehavior.Restrict);
        builder.Property(s => s.SupplierCode).HasMaxLength(60);
        builder.Property(s => s.PackNote).HasMaxLength(120);
    }
}

internal sealed class PaperMap : IEntityTypeConfiguration<Paper>
{
    public void Configure(EntityTypeBuilder<Paper> builder)
    {
        builder.ToTable("papers");
        builder.Property(p => p.Kind).HasConversion<string>().HasMaxLength(30);
        builder.Property(p => p.Edition).HasMaxLength(40);
        builder.Property(p => p.FileName).HasMaxLength(200);
        builder.Property(p => p.ContentType).HasMaxLength(100);
        builder.HasOne<Material>().WithMany().HasForeignKey(p => p.MaterialId).OnDelete(DeleteBehavior.Restrict);
        builder.HasOne<Lot>().WithMany().HasForeignKey(p => p.LotId).OnDelete(DeleteBehavior.Restrict);
        builder.HasIndex(p => p.MaterialId);
        builder.HasIndex(p => p.LotId);
    }
}
