using MakerStudio.Core.Assessing;
using MakerStudio.Core.FlashPoints;
using MakerStudio.Core.Hazards.Ufi;
using MakerStudio.Core.Workings;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace MakerStudio.Services.Schema;

/// <summary>The one row of where the studio sells and which limits it holds itself to; none until it has been chosen.</summary>
internal sealed class Market
{
    public const int OnlyId = 1;

    public int Id { get; set; } = OnlyId;
    public LabelScheme Scheme { get; set; }

    /// <summary>Keys of rows of the table of VOC limits.</summary>
    public List<string> VocLimits { get; set; } = [];

    /// <summary>Share of the finished product from which an allergen is declared, per cent by weight.</summary>
    public decimal? AllergenPercent { get; set; }

    /// <summary>Whose number goes into the formula identifiers; null where none is used.</summary>
    public UfiEntity? UfiEntity { get; set; }

    /// <summary>Digits of the VAT number without its country letters, or the company key.</summary>
    public string? UfiNumber { get; set; }
    public uint Version { get; set; }
    public List<OwnSubstanceLimit> SubstanceLimits { get; } = [];
    public List<OwnFlammableLimit> FlammableLimits { get; } = [];
}

/// <summary>A limit of the studio's own for one restricted substance, or for a group whose total counts.</summary>
internal sealed class OwnSubstanceLimit
{
    public int MarketId { get; set; } = Market.OnlyId;
    public int Position { get; set; }
    public required string Name { get; set; }
    public List<string> Cas { get; set; } = [];
    public required string Amendment { get; set; }
    public bool IsPhototoxic { get; set; }
    public List<OwnSubstanceCategory> Categories { get; } = [];
}

internal sealed class OwnSubstanceCategory
{
    public int MarketId { get; set; } = Market.OnlyId;
    public int Position { get; set; }
    public required string Category { get; set; }

    /// <summary>Per cent of the finished product by weight.</summary>
    public decimal MaxPercent { get; set; }
}

/// <summary>How much flammable liquid the studio allows itself, by mass or by volume.</summary>
internal sealed class OwnFlammableLimit
{
    public int MarketId { get; set; } = Market.OnlyId;
    public int Position { get; set; }
    public required string Name { get; set; }
    public List<FlammableCategory> Counts { get; set; } = [];
    public long? MaxMilligrams { get; set; }
    public decimal? MaxMillilitres { get; set; }

    /// <summary>Where the limit is from, when it was taken from the reference table.</summary>
    public string? Citation { get; set; }
    public DataStatus? Status { get; set; }
}

internal sealed class MarketMap : IEntityTypeConfiguration<Market>
{
    public void Configure(EntityTypeBuilder<Market> builder)
    {
        builder.ToTable("market", t =>
        {
            t.HasCheckConstraint("only_one_market", "id = 1");
            t.HasCheckConstraint("allergen_percent_sane", "allergen_percent > 0 and allergen_percent <= 100");
            t.HasCheckConstraint("ufi_never_bare", "(ufi_entity is null) = (ufi_number is null)");
        });
        builder.Property(m => m.Id).ValueGeneratedNever();
        builder.Property(m => m.Scheme).HasConversion<string>().HasMaxLength(20);
        builder.Property(m => m.UfiEntity).HasConversion<string>().HasMaxLength(20);
        builder.Property(m => m.UfiNumber).HasMaxLength(20);
        builder.Property(m => m.Version).IsRowVersion();
        builder.HasMany(m => m.SubstanceLimits).WithOne().HasForeignKey(l => l.MarketId).OnDelete(DeleteBehavior.Cascade);
        builder.HasMany(m => m.FlammableLimits).WithOne().HasForeignKey(l => l.MarketId).OnDelete(DeleteBehavior.Cascade);
    }
}

internal sealed class OwnSubstanceLimitMap : IEntityTypeConfiguration<OwnSubstanceLimit>
{
    public void Configure(EntityTypeBuilder<OwnSubstanceLimit> builder)
    {
        builder.ToTable("own_substance_limits");
        builder.HasKey(l => new { l.MarketId, l.Position });
        builder.Property(l => l.Name).HasMaxLength(160);
        builder.Property(l => l.Amendment).HasMaxLength(20);
        builder.HasMany(l => l.Categories).WithOne().HasForeignKey(c => new { c.MarketId, c.Position }).OnDelete(DeleteBehavior.Cascade);
    }
}

internal sealed class OwnSubstanceCategoryMap : IEntityTypeConfiguration<OwnSubstanceCategory>
{
    public void Configure(EntityTypeBuilder<OwnSubstanceCategory> builder)
    {
        builder.ToTable("own_substance_categories", t => t.HasCheckConstraint("own_percent", "max_percent between 0 and 100"));
        builder.HasKey(c => new { c.MarketId, c.Position, c.Category });
        builder.Property(c => c.Category).HasMaxLength(4);
    }
}

internal sealed class OwnFlammableLimitMap : IEntityTypeConfiguration<OwnFlammableLimit>
{
    public void Configure(EntityTypeBuilder<OwnFlammableLimit> builder)
    {
        builder.ToTable("own_flammable_limits", t => t.HasCheckConstraint(
            "one_most", "(max_milligrams is null) <> (max_millilitres is null) and coalesce(max_milligrams, max_millilitres) > 0"));
        builder.HasKey(l => new { l.MarketId, l.Position });
        builder.Property(l => l.Name).HasMaxLength(160);
        builder.PrimitiveCollection(l => l.Counts).ElementType(e => e.HasConversion<string>());
        builder.Property(l => l.Citation).HasMaxLength(200);
        builder.Property(l => l.Status).HasConversion<string>().HasMaxLength(20);
    }
}
