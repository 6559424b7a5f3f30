using MakerStudio.Services.Exchange;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace MakerStudio.Services.Schema;

/// <summary>A file of materials, lots or formulas as it was uploaded: what was looked through is what is brought in.</summary>
internal sealed class BroughtFile
{
    public Guid Id { get; set; } = Guid.CreateVersion7();
    public BringInKind Kind { get; set; }
    public required string Name { get; set; }
    public required byte[] Content { get; set; }
    public required byte[] Sha256 { get; set; }
    public Guid PersonId { get; set; }
    public DateTimeOffset At { get; set; }
    public DateTimeOffset? BroughtInAt { get; set; }
    public Guid? BroughtInById { get; set; }

    /// <summary>In words: "23 materials".</summary>
    public string? BroughtIn { get; set; }
}

internal sealed class BroughtFileMap : IEntityTypeConfiguration<BroughtFile>
{
    public void Configure(EntityTypeBuilder<BroughtFile> builder)
    {
        builder.ToTable("brought_files");
        builder.Property(f => f.Kind).HasConversion<string>().HasMaxLength(20);
        builder.Property(f => f.Name).HasMaxLength(200);
        builder.Property(f => f.BroughtIn).HasMaxLength(200);
        builder.HasIndex(f => f.At);
        builder.HasIndex(f => f.Sha256);
    }
}
