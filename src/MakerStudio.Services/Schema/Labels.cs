using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace MakerStudio.Services.Schema;

/// <summary>Labels in the drawer. Millimetres; the sheet's columns are all set or all null.</summary>
internal sealed class LabelStockRow
{
    public Guid Id { get; set; } = Guid.CreateVersion7();
    public required string Name { get; set; }
    public decimal Width { get; set; }
    public decimal Height { get; set; }
    public decimal? PageWidth { get; set; }
    public decimal? PageHeight { get; set; }
    public int? Columns { get; set; }
    public int? Rows { get; set; }
    public decimal? PitchAcross { get; set; }
    public decimal? PitchDown { get; set; }
    public decimal? MarginLeft { get; set; }
    public decimal? MarginTop { get; set; }

    // What this studio's printer needs; a print starts from it.
    public decimal OffsetAcross { get; set; }
    public decimal OffsetDown { get; set; }
    public DateTimeOffset? RetiredAt { get; set; }
    public uint Version { get; set; }
}

/// <summary>The label of one formula version in one size: the maker's words, and what a person confirmed.</summary>
internal sealed class LabelRow
{
    public Guid Id { get; set; } = Guid.CreateVersion7();
    public Guid FormulaVersionId { get; set; }
    public FormulaVersion? FormulaVersion { get; set; }
    public Guid FormulaSizeId { get; set; }
    public FormulaSize? FormulaSize { get; set; }
    public Guid? LabelStockId { get; set; }
    public LabelStockRow? LabelStock { get; set; }

    /// <summary>As JSON: product line, own lines, disposal and choices.</summary>
    public required string Wording { get; set; }
    public string? Ufi { get; set; }

    /// <summary>Frozen content as JSON, without what only a batch knows; null until a person has confirmed it.</summary>
    public string? Confirmed { get; set; }
    public Guid? ConfirmedById { get; set; }
    public DateTimeOffset? ConfirmedAt { get; set; }
    public Guid KeptById { get; set; }
    public DateTimeOffset KeptAt { get; set; }
    public uint Version { get; set; }
}

/// <summary>Labels that were printed: what stood on them, on which stock, how many. Never changed.</summary>
internal sealed class LabelPrint
{
    public Guid Id { get; set; } = Guid.CreateVersion7();
    public Guid BatchId { get; set; }
    public Guid LabelId { get; set; }
    public Guid LabelStockId { get; set; }

    /// <summary>Everything that stood on the label, as JSON.</summary>
    public required string Facts { get; set; }

    /// <summary>Size and sheet as they were, as JSON.</summary>
    public required string Stock { get; set; }
    public int Count { get; set; }
    public int FirstPlace { get; set; }
    public decimal OffsetAcross { get; set; }
    public decimal OffsetDown { get; set; }
    public DateOnly? BestBefore { get; set; }
    public Guid PersonId { get; set; }
    public DateTimeOffset At { get; set; }
    public Guid RequestId { get; set; }
}

internal sealed class LabelStockRowMap : IEntityTypeConfiguration<LabelStockRow>
{
    public void Configure(EntityTypeBuilder<LabelStockRow> builder)
    {
        builder.ToTable("label_stocks", t =>
        {
            t.HasCheckConstraint("label_stock_size", "width between 10 and 420 and height between 10 and 420");
            t.HasCheckConstraint("label_sheet_whole", "num_nulls(page_width, page_height, columns, rows, pitch_across, pitch_down, margin_left, margin_top) in (0, 8)");
        });
        builder.Property(s => s.Name).HasMaxLength(80);
        builder.Property(s => s.Version).IsRowVersion();
    }
}

internal sealed class LabelRowMap : IEntityTypeConfiguration<LabelRow>
{
    public void Configure(EntityTypeBuilder<LabelRow> builder)
    {
        builder.ToTable("labels", t => t.HasCheckConstraint("confirmed_by_somebody", "num_nulls(confirmed, confirmed_by_id, confirmed_at) in (0, 3)"));
        builder.Property(l => l.Wording).HasColumnType("jsonb");
        builder.Property(l => l.Confirmed).HasColumnType("jsonb");
        builder.Property(l => l.Ufi).HasMaxLength(19);
        builder.Property(l => l.Version).IsRowVersion();
        builder.HasIndex(l => new { l.FormulaVersionId, l.FormulaSizeId }).IsUnique();
        builder.HasOne(l => l.FormulaVersion).WithMany().HasForeignKey(l => l.FormulaVersionId).OnDelete(DeleteBehavior.Restrict);
        builder.HasOne(l => l.FormulaSize).WithMany().HasForeignKey(l => l.FormulaSizeId).OnDelete(DeleteBehavior.Restrict);
        builder.HasOne(l => l.LabelStock).WithMany().HasForeignKey(l => l.LabelStockId).OnDelete(DeleteBehavior.Restrict);
    }
}

internal sealed class LabelPrintMap : IEntityTypeConfiguration<LabelPrint>
{
    public void Configure(EntityTypeBuilder<LabelPrint> builder)
    {
        builder.ToTable("label_prints", t => t.HasCheckConstraint("label_print_counts", "count > 0 and first_place > 0"));
        builder.Property(p => p.Facts).HasColumnType("jsonb");
        builder.Property(p => p.Stock).HasColumnType("jsonb");
        builder.HasIndex(p => p.BatchId);
        builder.HasIndex(p => p.RequestId).IsUnique();
        builder.HasOne<Batch>().WithMany().HasForeignKey(p => p.BatchId).OnDelete(DeleteBehavior.Restrict);
        builder.HasOne<LabelRow>().WithMany().HasForeignKey(p => p.LabelId).OnDelete(DeleteBehavior.Restrict);
        builder.HasOne<LabelStockRow>().WithMany().HasForeignKey(p => p.LabelStockId).OnDelete(DeleteBehavior.Restrict);
    }
}
