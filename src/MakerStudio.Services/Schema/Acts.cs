using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace MakerStudio.Services.Schema;

/// <summary>A state-changing request that took effect: its repeat is answered from here.</summary>
internal sealed class HandledRequest
{
    public Guid RequestId { get; set; }
    public required string Command { get; set; }

    /// <summary>SHA-256 of person and body: the same id with another body is refused.</summary>
    public required byte[] BodyHash { get; set; }
    public string? Outcome { get; set; }
    public Guid PersonId { get; set; }
    public DateTimeOffset At { get; set; }
}

/// <summary>Who did what, when: one row for every command that took effect. Append-only.</summary>
internal sealed class Act
{
    public long Id { get; set; }
    public Guid RequestId { get; set; }
    public required string Command { get; set; }

    /// <summary>Subject word, e.g. "lot", "batch".</summary>
    public required string Subject { get; set; }
    public Guid? SubjectId { get; set; }
    public required string What { get; set; }
    public Guid PersonId { get; set; }
    public DateTimeOffset At { get; set; }
}

internal sealed class HandledRequestMap : IEntityTypeConfiguration<HandledRequest>
{
    public void Configure(EntityTypeBuilder<HandledRequest> builder)
    {
        builder.ToTable("handled_requests");
        builder.HasKey(r => r.RequestId);
        builder.Property(r => r.Command).HasMaxLength(80);
        builder.Property(r => r.Outcome).HasColumnType("jsonb");
        builder.HasIndex(r => r.At);
    }
}

internal sealed class ActMap : IEntityTypeConfiguration<Act>
{
    public void Configure(EntityTypeBuilder<Act> builder)
    {
        builder.ToTable("acts");
        builder.Property(a => a.Command).HasMaxLength(80);
        builder.Property(a => a.Subject).HasMaxLength(40);
        builder.HasIndex(a => new { a.Subject, a.SubjectId, a.Id });
        builder.HasIndex(a => a.At);
    }
}
