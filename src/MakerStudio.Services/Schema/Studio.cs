using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace MakerStudio.Services.Schema;

/// <summary>The one row of studio-wide settings.</summary>
internal sealed class Studio
{
    public const int OnlyId = 1;

    public int Id { get; set; } = OnlyId;
    public required string Name { get; set; }
    public string? Address { get; set; }
    public string? Phone { get; set; }

    /// <summary>IANA time zone; decides what "today" is and how instants are shown.</summary>
    public string TimeZone { get; set; } = "Europe/Berlin";

    /// <summary>BCP 47 culture for numbers and dates on screen.</summary>
    public string Culture { get; set; } = "en-IE";

    /// <summary>ISO 4217. Cannot change once a delivery is posted.</summary>
    public string Currency { get; set; } = "EUR";

    /// <summary>Money per hour of active work.</summary>
    public decimal LabourRatePerHour { get; set; } = 18.00m;
    public decimal OverheadPerBatch { get; set; } = 9.00m;
    public decimal OverheadPerUnit { get; set; } = 0.15m;

    /// <summary>Weighing tolerance, percent of target. Common practice, no source.</summary>
    public decimal TolerancePercent { get; set; } = 0.5m;

    /// <summary>Weighing tolerance in scale divisions; the larger of the two applies.</summary>
    public int ToleranceDivisions { get; set; } = 2;

    /// <summary>Batch masses are rounded up to a multiple of this.</summary>
    public long RoundBatchUpToMilligrams { get; set; } = 100_000;

    public bool IsSample { get; set; }
    public uint Version { get; set; }
}

/// <summary>A scale on the bench.</summary>
internal sealed class Scale
{
    public Guid Id { get; set; } = Guid.CreateVersion7();
    public required string Name { get; set; }
    public long CapacityMilligrams { get; set; }

    /// <summary>Readability: the smallest step shown, in milligrams.</summary>
    public long ReadabilityMilligrams { get; set; }
    public DateTimeOffset? RetiredAt { get; set; }
    public uint Version { get; set; }
}

/// <summary>Something typed and not yet posted: kept as it was typed, one row a thing.</summary>
internal sealed class Draft
{
    public Guid Id { get; set; } = Guid.CreateVersion7();

    /// <summary>What it is a draft of: "delivery", "formula"…</summary>
    public required string Kind { get; set; }
    public required string Body { get; set; }
    public Guid KeptById { get; set; }
    public DateTimeOffset KeptAt { get; set; }
}

internal sealed class CodeCounter
{
    public required string Prefix { get; set; }
    public int Last { get; set; }
}

internal sealed class StudioMap : IEntityTypeConfiguration<Studio>
{
    public void Configure(EntityTypeBuilder<Studio> builder)
    {
        builder.ToTable("studio", t => t.HasCheckConstraint("only_one_studio", "id = 1"));
        builder.Property(s => s.Id).ValueGeneratedNever();
        builder.Property(s => s.Name).HasMaxLength(120);
        builder.Property(s => s.Version).IsRowVersion();
    }
}

internal sealed class ScaleMap : IEntityTypeConfiguration<Scale>
{
    public void Configure(EntityTypeBuilder<Scale> builder)
    {
        builder.ToTable("scales", t => t.HasCheckConstraint("scale_sane", "readability_milligrams > 0 and capacity_milligrams > readability_milligrams"));
        builder.Property(s => s.Name).HasMaxLength(60);
        builder.Property(s => s.Version).IsRowVersion();
    }
}

internal sealed class DraftMap : IEntityTypeConfiguration<Draft>
{
    public void Configure(EntityTypeBuilder<Draft> builder)
    {
        builder.ToTable("drafts");
        builder.Property(d => d.Kind).HasMaxLength(40);
        builder.Property(d => d.Body).HasColumnType("jsonb");
        builder.HasIndex(d => new { d.Kind, d.KeptAt });
    }
}

internal sealed class CodeCounterMap : IEntityTypeConfiguration<CodeCounter>
{
    public void Configure(EntityTypeBuilder<CodeCounter> builder)
    {
        builder.ToTable("code_counters");
        builder.HasKey(c => c.Prefix);
        builder.Property(c => c.Prefix).HasMaxLength(8);
    }
}
