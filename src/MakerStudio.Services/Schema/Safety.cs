using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace MakerStudio.Services.Schema;

/// <summary>Hazards as a sheet writes them, of a whole material or of one substance in it. Null is "not stated".</summary>
internal sealed class HazardStatement
{
    public string? Classes { get; set; }

    /// <summary>Specific concentration limits, per cent.</summary>
    public string? Limits { get; set; }
    public decimal? OralMgPerKg { get; set; }
    public decimal? DermalMgPerKg { get; set; }
    public decimal? VapourMgPerLitre { get; set; }
    public decimal? MistMgPerLitre { get; set; }
    public int? AcuteM { get; set; }
    public int? ChronicM { get; set; }
}

/// <summary>What the papers of a material say of its safety; at most one row a material.</summary>
internal sealed class MaterialSafety
{
    public Guid MaterialId { get; set; }

    /// <summary>Section 2 of the sheet.</summary>
    public HazardStatement Hazards { get; set; } = new();

    /// <summary>The sheet these facts were read from, as printed on it.</summary>
    public string? SheetEdition { get; set; }
    public DateOnly? SheetDate { get; set; }

    /// <summary>Per cent by weight, as the next one.</summary>
    public decimal? VolatilePercent { get; set; }
    public decimal? VanillinPercent { get; set; }
    public bool HoldsCitrus { get; set; }
    public bool? PhthalateFree { get; set; }
    public bool? CmrFree { get; set; }
    public string? CertificateAmendment { get; set; }
    public DateOnly? CertificateIssuedOn { get; set; }
    public string? Notes { get; set; }
    public uint Version { get; set; }
    public List<MaterialSubstance> Composition { get; } = [];
    public List<CertificateLimit> CertificateLimits { get; } = [];
}

/// <summary>A substance in a material, section 3 of the sheet. Per cent of the material by weight.</summary>
internal sealed class MaterialSubstance
{
    public Guid MaterialId { get; set; }

    /// <summary>As on the sheet, from 1.</summary>
    public int Position { get; set; }
    public required string Name { get; set; }
    public string? Cas { get; set; }
    public decimal LowPercent { get; set; }
    public decimal HighPercent { get; set; }
    public decimal? StatedPercent { get; set; }
    public HazardStatement Hazards { get; set; } = new();
}

/// <summary>What a fragrance certificate allows in one category, per cent of the finished product by weight.</summary>
internal sealed class CertificateLimit
{
    public Guid MaterialId { get; set; }
    public required string Category { get; set; }
    public decimal MaxPercent { get; set; }
}

internal sealed class MaterialSafetyMap : IEntityTypeConfiguration<MaterialSafety>
{
    public void Configure(EntityTypeBuilder<MaterialSafety> builder)
    {
        builder.ToTable("material_safety", t => t.HasCheckConstraint(
            "safety_percents", "volatile_percent between 0 and 100 and vanillin_percent between 0 and 100"));
        builder.HasKey(s => s.MaterialId);
        builder.Property(s => s.MaterialId).ValueGeneratedNever();
        builder.ComplexProperty(s => s.Hazards, HazardColumns.Configure);
        builder.Property(s => s.SheetEdition).HasMaxLength(40);
        builder.Property(s => s.CertificateAmendment).HasMaxLength(20);
        builder.Property(s => s.Version).IsRowVersion();
        builder.HasOne<Material>().WithOne().HasForeignKey<MaterialSafety>(s => s.MaterialId).OnDelete(DeleteBehavior.Cascade);
        builder.HasMany(s => s.Composition).WithOne().HasForeignKey(c => c.MaterialId).OnDelete(DeleteBehavior.Cascade);
        builder.HasMany(s => s.CertificateLimits).WithOne().HasForeignKey(c => c.MaterialId).OnDelete(DeleteBehavior.Cascade);
    }
}

internal sealed class MaterialSubstanceMap : IEntityTypeConfiguration<MaterialSubstance>
{
    public void Configure(EntityTypeBuilder<MaterialSubstance> builder)
    {
        builder.ToTable("material_substances", t => t.HasCheckConstraint(
            "substance_range", "low_percent >= 0 and high_percent >= low_percent and high_percent <= 100 and stated_percent between 0 and 100"));
        builder.HasKey(s => new { s.MaterialId, s.Position });
        builder.Property(s => s.Name).HasMaxLength(160);
        builder.Property(s => s.Cas).HasMaxLength(12);
        builder.ComplexProperty(s => s.Hazards, HazardColumns.Configure);
        builder.HasIndex(s => s.Cas);
    }
}

internal sealed class CertificateLimitMap : IEntityTypeConfiguration<CertificateLimit>
{
    public void Configure(EntityTypeBuilder<CertificateLimit> builder)
    {
        builder.ToTable("certificate_limits", t => t.HasCheckConstraint("certificate_percent", "max_percent between 0 and 100"));
        builder.HasKey(c => new { c.MaterialId, c.Category });
        builder.Property(c => c.Category).HasMaxLength(4);
    }
}

internal static class HazardColumns
{
    public static void Configure(ComplexPropertyBuilder<HazardStatement> hazards)
    {
        hazards.IsRequired();
        hazards.Property(h => h.Classes).HasColumnName("classes");
        hazards.Property(h => h.Limits).HasColumnName("limits");
        hazards.Property(h => h.OralMgPerKg).HasColumnName("oral_mg_per_kg");
        hazards.Property(h => h.DermalMgPerKg).HasColumnName("dermal_mg_per_kg");
        hazards.Property(h => h.VapourMgPerLitre).HasColumnName("vapour_mg_per_litre");
        hazards.Property(h => h.MistMgPerLitre).HasColumnName("mist_mg_per_litre");
        hazards.Property(h => h.AcuteM).HasColumnName("acute_m");
        hazards.Property(h => h.ChronicM).HasColumnName("chronic_m");
    }
}
