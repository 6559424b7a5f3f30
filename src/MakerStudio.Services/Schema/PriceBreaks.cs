using MakerStudio.Core.Quantities;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace MakerStudio.Services.Schema;

/// <summary>
/// What a supplier asks for a quantity. Append-only: of one supplier, quantity and unit the one typed last is in force.
/// </summary>
internal sealed class PriceBreak
{
    public long Id { get; set; }
    public Guid MaterialId { get; set; }
    public Guid SupplierId { get; set; }

    /// <summary>In <see cref="Unit"/>, as it was typed.</summary>
    public decimal Quantity { get; set; }
    public AmountUnit Unit { get; set; }

    /// <summary>Null from when on it is no longer asked.</summary>
    public decimal? Price { get; set; }
    public Inventory.PriceIs PriceIs { get; set; }

    /// <summary>Of the whole quantity, as <see cref="Charges"/>; null when not said.</summary>
    public decimal? Freight { get; set; }
    public decimal? Charges { get; set; }
    public DateOnly AskedOn { get; set; }
    public string? Note { get; set; }
    public Guid PersonId { get; set; }
    public DateTimeOffset At { get; set; }
    public Guid RequestId { get; set; }
}

internal sealed class PriceBreakMap : IEntityTypeConfiguration<PriceBreak>
{
    public void Configure(EntityTypeBuilder<PriceBreak> builder)
    {
        builder.ToTable("price_breaks", t => t.HasCheckConstraint("price_break_sane", "quantity > 0 and price > 0 and freight >= 0 and charges >= 0"));
        builder.Property(b => b.Unit).HasConversion<string>().HasMaxLength(30);
        builder.Property(b => b.PriceIs).HasConversion<string>().HasMaxLength(10);
        builder.Property(b => b.Note).HasMaxLength(200);
        builder.HasIndex(b => new { b.MaterialId, b.SupplierId });
        builder.HasOne<Material>().WithMany().HasForeignKey(b => b.MaterialId).OnDelete(DeleteBehavior.Restrict);
        builder.HasOne<Supplier>().WithMany().HasForeignKey(b => b.SupplierId).OnDelete(DeleteBehavior.Restrict);
    }
}
