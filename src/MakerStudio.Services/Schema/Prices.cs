using MakerStudio.Core.Prices;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace MakerStudio.Services.Schema;

/// <summary>The one row of what prices go by; none until it has been chosen. Rates and margins are fractions.</summary>
internal sealed class PriceRules
{
    public const int OnlyId = 1;

    public int Id { get; set; } = OnlyId;

    /// <summary>Offered to a new channel; each channel has its own.</summary>
    public decimal TaxRate { get; set; }
    public TaxBasis TaxBasis { get; set; }

    /// <summary>What a tag ends in, e.g. 0.50; null for any coin.</summary>
    public decimal? Ending { get; set; }

    /// <summary>Watched for every product that has no floor of its own.</summary>
    public decimal? MarginFloor { get; set; }
    public int YearMonth { get; set; } = 1;
    public int YearDay { get; set; } = 1;
    public uint Version { get; set; }
}

/// <summary>A way to sell, with what it takes of a price.</summary>
internal sealed class SalesChannel
{
    public Guid Id { get; set; } = Guid.CreateVersion7();
    public required string Name { get; set; }
    public decimal TaxRate { get; set; }
    public TaxBasis TaxBasis { get; set; }

    /// <summary>Money of each unit sold besides its making: a mailer, a bag.</summary>
    public decimal CostPerUnit { get; set; }

    /// <summary>Part of the net that is ours, above 0, at most 1.</summary>
    public decimal OurShare { get; set; } = 1m;

    /// <summary>Contribution wanted of each unit.</summary>
    public decimal Wanted { get; set; }
    public DateTimeOffset CreatedAt { get; set; }
    public DateTimeOffset? RetiredAt { get; set; }
    public uint Version { get; set; }
    public List<SalesChannelFee> Fees { get; } = [];
}

internal sealed class SalesChannelFee
{
    public Guid SalesChannelId { get; set; }
    public int Position { get; set; }
    public required string Name { get; set; }
    public decimal Rate { get; set; }
    public decimal Fixed { get; set; }
    public FeeBasis Basis { get; set; }
}

/// <summary>A channel as it stood from a moment on, so that a margin of the past is told as it was. Append-only.</summary>
internal sealed class ChannelTerms
{
    public long Id { get; set; }
    public Guid SalesChannelId { get; set; }
    public DateTimeOffset At { get; set; }
    public decimal TaxRate { get; set; }
    public TaxBasis TaxBasis { get; set; }
    public decimal CostPerUnit { get; set; }
    public decimal OurShare { get; set; }

    /// <summary>The fees as they were, as JSON: they are only ever read together.</summary>
    public required string Fees { get; set; }
}

/// <summary>A tag from a day on. Append-only: the newest of the latest day that has come is the one in force.</summary>
internal sealed class PriceTag
{
    public long Id { get; set; }
    public Guid FormulaSizeId { get; set; }
    public Guid SalesChannelId { get; set; }

    /// <summary>Null from when on it is no longer sold there.</summary>
    public decimal? Amount { get; set; }
    public DateOnly FromDay { get; set; }
    public string? Note { get; set; }
    public Guid PersonId { get; set; }
    public DateTimeOffset At { get; set; }
    public Guid RequestId { get; set; }
}

/// <summary>The margin under which a product may not fall. Append-only: the newest is in force.</summary>
internal sealed class MarginFloorEntry
{
    public long Id { get; set; }
    public Guid FormulaSizeId { get; set; }

    /// <summary>A fraction; null gives the product back to the studio's own floor.</summary>
    public decimal? Floor { get; set; }
    public Guid PersonId { get; set; }
    public DateTimeOffset At { get; set; }
    public Guid RequestId { get; set; }
}

internal sealed class PriceRulesMap : IEntityTypeConfiguration<PriceRules>
{
    public void Configure(EntityTypeBuilder<PriceRules> builder)
    {
        builder.ToTable("price_rules", t =>
        {
            t.HasCheckConstraint("only_one_price_rules", "id = 1");
            t.HasCheckConstraint("price_rules_sane", "tax_rate between 0 and 1 and ending >= 0 and ending < 1 and margin_floor >= 0 and margin_floor < 1");
            t.HasCheckConstraint("year_start_sane", "year_month between 1 and 12 and year_day between 1 and 28");
        });
        builder.Property(r => r.Id).ValueGeneratedNever();
        builder.Property(r => r.TaxBasis).HasConversion<string>().HasMaxLength(10);
        builder.Property(r => r.Version).IsRowVersion();
    }
}

internal sealed class SalesChannelMap : IEntityTypeConfiguration<SalesChannel>
{
    public void Configure(EntityTypeBuilder<SalesChannel> builder)
    {
        builder.ToTable("sales_channels", t => t.HasCheckConstraint(
            "channel_sane", "tax_rate between 0 and 1 and cost_per_unit >= 0 and our_share > 0 and our_share <= 1 and wanted >= 0"));
        builder.Property(c => c.Name).HasMaxLength(60);
        builder.Property(c => c.TaxBasis).HasConversion<string>().HasMaxLength(10);
        builder.Property(c => c.Version).IsRowVersion();
        builder.HasIndex(c => c.Name).IsUnique().HasFilter("retired_at is null");
        builder.HasMany(c => c.Fees).WithOne().HasForeignKey(f => f.SalesChannelId).OnDelete(DeleteBehavior.Cascade);
    }
}

internal sealed class SalesChannelFeeMap : IEntityTypeConfiguration<SalesChannelFee>
{
    public void Configure(EntityTypeBuilder<SalesChannelFee> builder)
    {
        builder.ToTable("sales_channel_fees", t => t.HasCheckConstraint("fee_sane", "rate between 0 and 1 and fixed >= 0"));
        builder.HasKey(f => new { f.SalesChannelId, f.Position });
        builder.Property(f => f.Name).HasMaxLength(60);
        builder.Property(f => f.Basis).HasConversion<string>().HasMaxLength(10);
    }
}

internal sealed class ChannelTermsMap : IEntityTypeConfiguration<ChannelTerms>
{
    public void Configure(EntityTypeBuilder<ChannelTerms> builder)
    {
        builder.ToTable("channel_terms");
        builder.Property(t => t.TaxBasis).HasConversion<string>().HasMaxLength(10);
        builder.Property(t => t.Fees).HasColumnType("jsonb");
        builder.HasIndex(t => t.SalesChannelId);
        builder.HasOne<SalesChannel>().WithMany().HasForeignKey(t => t.SalesChannelId).OnDelete(DeleteBehavior.Restrict);
    }
}

internal sealed class PriceTagMap : IEntityTypeConfiguration<PriceTag>
{
    public void Configure(EntityTypeBuilder<PriceTag> builder)
    {
        builder.ToTable("price_tags", t => t.HasCheckConstraint("tag_not_negative", "amount >= 0"));
        builder.Property(t => t.Note).HasMaxLength(200);
        builder.HasIndex(t => new { t.FormulaSizeId, t.SalesChannelId, t.FromDay });
        builder.HasOne<FormulaSize>().WithMany().HasForeignKey(t => t.FormulaSizeId).OnDelete(DeleteBehavior.Restrict);
        builder.HasOne<SalesChannel>().WithMany().HasForeignKey(t => t.SalesChannelId).OnDelete(DeleteBehavior.Restrict);
    }
}

internal sealed class MarginFloorEntryMap : IEntityTypeConfiguration<MarginFloorEntry>
{
    public void Configure(EntityTypeBuilder<MarginFloorEntry> builder)
    {
        builder.ToTable("margin_floors", t => t.HasCheckConstraint("floor_sane", "floor >= 0 and floor < 1"));
        builder.HasIndex(f => f.FormulaSizeId);
        builder.HasOne<FormulaSize>().WithMany().HasForeignKey(f => f.FormulaSizeId).OnDelete(DeleteBehavior.Restrict);
    }
}
