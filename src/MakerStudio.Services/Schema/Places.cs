using MakerStudio.Core.Finished;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace MakerStudio.Services.Schema;

/// <summary>Where finished units stand: the studio's own shelf, a shop on consignment, a stall.</summary>
internal sealed class Place
{
    /// <summary>The studio's own shelf. The migration that made places put it there; every studio has it under this id.</summary>
    public static readonly Guid StudioId = new("0192f000-0000-7000-8000-000000000001");

    public Guid Id { get; set; } = Guid.CreateVersion7();
    public required string Name { get; set; }
    public PlaceKind Kind { get; set; }
    public string? Contact { get; set; }
    public string? Email { get; set; }
    public string? Phone { get; set; }
    public string? Address { get; set; }

    /// <summary>The shop's share of the net, percent; null where nobody sells for us.</summary>
    public decimal? CommissionPercent { get; set; }

    /// <summary>The shop pays our cost for what breaks there.</summary>
    public bool PaysBroken { get; set; }
    public DateTimeOffset? ClosedAt { get; set; }
    public uint Version { get; set; }
}

/// <summary>Somebody who bought and told their name. Nobody has to.</summary>
internal sealed class Customer
{
    public Guid Id { get; set; } = Guid.CreateVersion7();
    public required string Name { get; set; }
    public string? Email { get; set; }
    public string? Phone { get; set; }
    public string? Address { get; set; }
    public string? Note { get; set; }
    public DateTimeOffset AddedAt { get; set; }
    public uint Version { get; set; }
}

/// <summary>
/// Units of a batch at one place in one status. Written by the database alone, as movements are added, and never below
/// zero: see the trigger add_up_units.
/// </summary>
internal sealed class UnitBalance
{
    public Guid BatchId { get; set; }
    public Guid PlaceId { get; set; }
    public UnitStatus Status { get; set; }
    public int Count { get; set; }
}

internal sealed class PlaceMap : IEntityTypeConfiguration<Place>
{
    public void Configure(EntityTypeBuilder<Place> builder)
    {
        builder.ToTable("places", t => t.HasCheckConstraint("commission_is_percent", "commission_percent between 0 and 100"));
        builder.Property(p => p.Name).HasMaxLength(80);
        builder.Property(p => p.Kind).HasConversion<string>().HasMaxLength(20);
        builder.Property(p => p.Contact).HasMaxLength(120);
        builder.Property(p => p.Email).HasMaxLength(200);
        builder.Property(p => p.Phone).HasMaxLength(60);
        builder.Property(p => p.Address).HasMaxLength(400);
        builder.Property(p => p.Version).IsRowVersion();
        builder.HasIndex(p => p.Name).IsUnique();
        builder.HasIndex(p => p.Kind).IsUnique().HasFilter("kind = 'Studio'").HasDatabaseName("ix_places_one_studio");
    }
}

internal sealed class CustomerMap : IEntityTypeConfiguration<Customer>
{
    public void Configure(EntityTypeBuilder<Customer> builder)
    {
        builder.ToTable("customers");
        builder.Property(c => c.Name).HasMaxLength(120);
        builder.Property(c => c.Email).HasMaxLength(200);
        builder.Property(c => c.Phone).HasMaxLength(60);
        builder.Property(c => c.Address).HasMaxLength(400);
        builder.Property(c => c.Note).HasMaxLength(1000);
        builder.Property(c => c.Version).IsRowVersion();
        builder.HasIndex(c => c.Name);
    }
}

internal sealed class UnitBalanceMap : IEntityTypeConfiguration<UnitBalance>
{
    public void Configure(EntityTypeBuilder<UnitBalance> builder)
    {
        builder.ToTable("unit_balances", t => t.HasCheckConstraint("units_never_negative", "count >= 0"));
        builder.HasKey(b => new { b.BatchId, b.PlaceId, b.Status });
        builder.Property(b => b.Status).HasConversion<string>().HasMaxLength(20);
        builder.HasIndex(b => new { b.PlaceId, b.Status });
        builder.HasOne<Batch>().WithMany().HasForeignKey(b => b.BatchId).OnDelete(DeleteBehavior.Restrict);
        builder.HasOne<Place>().WithMany().HasForeignKey(b => b.PlaceId).OnDelete(DeleteBehavior.Restrict);
    }
}
