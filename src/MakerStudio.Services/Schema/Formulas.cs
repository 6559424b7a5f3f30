using MakerStudio.Core.Advice;
using MakerStudio.Core.Blending;
using MakerStudio.Services.Formulation;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace MakerStudio.Services.Schema;

internal sealed class Formula
{
    public Guid Id { get; set; } = Guid.CreateVersion7();

    /// <summary>The scent's name.</summary>
    public required string Name { get; set; }

    /// <summary>Key of the product kind in Core/Products.</summary>
    public required string ProductKind { get; set; }

    /// <summary>The material a pre-blend becomes.</summary>
    public Guid? MakesMaterialId { get; set; }

    /// <summary>Load above which more scent stopped helping in the studio's own trials, in per cent of what the kind's load is a share of.</summary>
    public decimal? EnoughScentPercent { get; set; }
    public string? EnoughScentNote { get; set; }
    public DateTimeOffset CreatedAt { get; set; }
    public DateTimeOffset? ArchivedAt { get; set; }
    public uint Version { get; set; }
    public List<FormulaVersion> Versions { get; } = [];
    public List<FormulaSize> Sizes { get; } = [];
}

/// <summary>A draft, or a frozen numbered version. At most one draft a formula.</summary>
internal sealed class FormulaVersion
{
    public Guid Id { get; set; } = Guid.CreateVersion7();
    public Guid FormulaId { get; set; }
    public Formula? Formula { get; set; }
    public int Number { get; set; }
    public FormulaState State { get; set; }

    /// <summary>Why this version differs from the last.</summary>
    public string? Why { get; set; }

    /// <summary>Method, one step a line of text.</summary>
    public string? Method { get; set; }
    public int CureMinHours { get; set; }
    public int CureIdealHours { get; set; }
    public int? CureLatestHours { get; set; }

    /// <summary>Percent of target; null takes the studio's.</summary>
    public decimal? TolerancePercent { get; set; }

    /// <summary>Percent of the batch expected to stay in vessel and filter.</summary>
    public decimal ExpectedLossPercent { get; set; }

    /// <summary>Density of the finished mixture as measured, g/mL.</summary>
    public decimal? MeasuredDensity { get; set; }

    /// <summary>°C, closed cup.</summary>
    public decimal? MeasuredFlashPoint { get; set; }

    /// <summary>°C, initial.</summary>
    public decimal? MeasuredBoilingPoint { get; set; }

    /// <summary>Result of the UN test L.2.</summary>
    public bool? SustainsCombustion { get; set; }

    /// <summary>mm²/s at 40 °C.</summary>
    public decimal? MeasuredViscosity { get; set; }
    public decimal? MeasuredPh { get; set; }
    public Guid CreatedById { get; set; }
    public DateTimeOffset CreatedAt { get; set; }
    public DateTimeOffset KeptAt { get; set; }
    public Guid? ReleasedById { get; set; }
    public DateTimeOffset? ReleasedAt { get; set; }
    public uint Version { get; set; }
    public List<FormulaLine> Lines { get; } = [];
    public List<AdviceOverride> Overrides { get; } = [];
}

/// <summary>A piece of advice a version goes ahead without, and who decided so.</summary>
internal sealed class AdviceOverride
{
    public Guid Id { get; set; } = Guid.CreateVersion7();
    public Guid FormulaVersionId { get; set; }

    /// <summary>Key of the rule in Core/Advice.</summary>
    public required string Rule { get; set; }

    /// <summary>What the advice was about, as it says it: ids of materials, or nothing for the whole.</summary>
    public required string Subject { get; set; }
    public AdviceKind Kind { get; set; }

    /// <summary>The figure that decided then.</summary>
    public decimal? Measure { get; set; }
    public required string Reason { get; set; }
    public Guid PersonId { get; set; }
    public DateTimeOffset At { get; set; }
    public DateTimeOffset? TakenBackAt { get; set; }
}

internal sealed class FormulaLine
{
    public Guid Id { get; set; } = Guid.CreateVersion7();
    public Guid FormulaVersionId { get; set; }

    /// <summary>Order of addition, from 1.</summary>
    public int Position { get; set; }
    public Guid MaterialId { get; set; }
    public Material? Material { get; set; }

    /// <summary>As typed; null is "the rest".</summary>
    public decimal? Amount { get; set; }
    public LineBasis Basis { get; set; }
    public string? Method { get; set; }

    /// <summary>Mass fraction, frozen when the version is released.</summary>
    public decimal? Fraction { get; set; }

    /// <summary>g/mL used for it, frozen when released.</summary>
    public decimal? DensityUsed { get; set; }
}

/// <summary>A size the formula is sold in, with its packaging.</summary>
internal sealed class FormulaSize
{
    public Guid Id { get; set; } = Guid.CreateVersion7();
    public Guid FormulaId { get; set; }
    public required string Name { get; set; }

    /// <summary>Nominal content: one of the two is set.</summary>
    public decimal? NominalMillilitres { get; set; }
    public long? NominalMilligrams { get; set; }
    public long OverfillMilligrams { get; set; }
    public DateTimeOffset? RetiredAt { get; set; }
    public List<FormulaSizePart> Parts { get; } = [];
}

internal sealed class FormulaSizePart
{
    public Guid FormulaSizeId { get; set; }
    public Guid MaterialId { get; set; }
    public Material? Material { get; set; }
    public int CountPerUnit { get; set; }
}

internal sealed class FormulaMap : IEntityTypeConfiguration<Formula>
{
    public void Configure(EntityTypeBuilder<Formula> builder)
    {
        builder.ToTable("formulas", t => t.HasCheckConstraint("enough_scent_sane", "enough_scent_percent > 0 and enough_scent_percent <= 100"));
        builder.Property(f => f.Name).HasMaxLength(80);
        builder.Property(f => f.ProductKind).HasMaxLength(40);
        builder.Property(f => f.Version).IsRowVersion();
        builder.HasMany(f => f.Versions).WithOne(v => v.Formula).HasForeignKey(v => v.FormulaId).OnDelete(DeleteBehavior.Restrict);
        builder.HasMany(f => f.Sizes).WithOne().HasForeignKey(s => s.FormulaId).OnDelete(DeleteBehavior.Restrict);
        builder.HasOne<Material>().WithMany().HasForeignKey(f => f.MakesMaterialId).OnDelete(DeleteBehavior.Restrict);
    }
}

internal sealed class FormulaVersionMap : IEntityTypeConfiguration<FormulaVersion>
{
    public void Configure(EntityTypeBuilder<FormulaVersion> builder)
    {
        builder.ToTable("formula_versions", t =>
        {
            t.HasCheckConstraint("cure_window_ordered", "cure_min_hours >= 0 and cure_ideal_hours >= cure_min_hours");
            t.HasCheckConstraint("ph_sane", "measured_ph is null or measured_ph between 0 and 14");
            t.HasCheckConstraint("viscosity_positive", "measured_viscosity is null or measured_viscosity > 0");
        });
        builder.Property(v => v.State).HasConversion<string>().HasMaxLength(20);
        builder.Property(v => v.Version).IsRowVersion();
        builder.HasMany(v => v.Lines).WithOne().HasForeignKey(l => l.FormulaVersionId).OnDelete(DeleteBehavior.Cascade);
        builder.HasMany(v => v.Overrides).WithOne().HasForeignKey(o => o.FormulaVersionId).OnDelete(DeleteBehavior.Cascade);
        builder.HasIndex(v => new { v.FormulaId, v.Number }).IsUnique();
        builder.HasIndex(v => v.FormulaId).IsUnique().HasFilter("state = 'Draft'").HasDatabaseName("ix_one_draft_a_formula");
    }
}

internal sealed class AdviceOverrideMap : IEntityTypeConfiguration<AdviceOverride>
{
    public void Configure(EntityTypeBuilder<AdviceOverride> builder)
    {
        builder.ToTable("advice_overrides");
        builder.Property(o => o.Rule).HasMaxLength(60);
        builder.Property(o => o.Kind).HasConversion<string>().HasMaxLength(10);
        builder.Property(o => o.Reason).HasMaxLength(200);
    }
}

internal sealed class FormulaLineMap : IEntityTypeConfiguration<FormulaLine>
{
    public void Configure(EntityTypeBuilder<FormulaLine> builder)
    {
        builder.ToTable("formula_lines");
        builder.Property(l => l.Basis).HasConversion<string>().HasMaxLength(30);
        builder.HasOne(l => l.Material).WithMany().HasForeignKey(l => l.MaterialId).OnDelete(DeleteBehavior.Restrict);
    }
}

internal sealed class FormulaSizeMap : IEntityTypeConfiguration<FormulaSize>
{
    public void Configure(EntityTypeBuilder<FormulaSize> builder)
    {
        builder.ToTable("formula_sizes", t => t.HasCheckConstraint("one_nominal", "(nominal_millilitres is null) <> (nominal_milligrams is null)"));
        builder.Property(s => s.Name).HasMaxLength(80);
        builder.HasMany(s => s.Parts).WithOne().HasForeignKey(p => p.FormulaSizeId).OnDelete(DeleteBehavior.Cascade);
    }
}

internal sealed class FormulaSizePartMap : IEntityTypeConfiguration<FormulaSizePart>
{
    public void Configure(EntityTypeBuilder<FormulaSizePart> builder)
    {
        builder.ToTable("formula_size_parts", t => t.HasCheckConstraint("count_positive", "count_per_unit > 0"));
        builder.HasKey(p => new { p.FormulaSizeId, p.MaterialId });
        builder.HasOne(p => p.Material).WithMany().HasForeignKey(p => p.MaterialId).OnDelete(DeleteBehavior.Restrict);
    }
}
