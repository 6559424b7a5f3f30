using MakerStudio.Services.Accounts;
using Microsoft.AspNetCore.Identity;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace MakerStudio.Services.Schema;

internal sealed class Person : IdentityUser<Guid>
{
    public Person() => Id = Guid.CreateVersion7();

    public required string DisplayName { get; set; }

    /// <summary>One to three letters, written beside every act.</summary>
    public required string Initials { get; set; }
    public PersonRole Role { get; set; }
    public DateTimeOffset JoinedAt { get; set; }
    public DateTimeOffset? RemovedAt { get; set; }
}

/// <summary>A one-time link. Only the SHA-256 of its token is stored.</summary>
internal sealed class Invitation
{
    public Guid Id { get; set; } = Guid.CreateVersion7();
    public InvitationPurpose Purpose { get; set; }
    public required byte[] TokenHash { get; set; }
    public string? Name { get; set; }
    public PersonRole Role { get; set; }

    /// <summary>Whose passphrase is to be set anew; only for <see cref="InvitationPurpose.NewPassphrase"/>.</summary>
    public Guid? PersonId { get; set; }
    public Guid? CreatedById { get; set; }
    public DateTimeOffset CreatedAt { get; set; }
    public DateTimeOffset ExpiresAt { get; set; }
    public DateTimeOffset? UsedAt { get; set; }
}

internal sealed class PersonMap : IEntityTypeConfiguration<Person>
{
    public void Configure(EntityTypeBuilder<Person> builder)
    {
        builder.ToTable("people");
        builder.Property(p => p.DisplayName).HasMaxLength(60);
        builder.Property(p => p.Initials).HasMaxLength(3);
        builder.Property(p => p.Role).HasConversion<string>().HasMaxLength(20);
    }
}

internal sealed class InvitationMap : IEntityTypeConfiguration<Invitation>
{
    public void Configure(EntityTypeBuilder<Invitation> builder)
    {
        builder.ToTable("invitations");
        builder.Property(i => i.Purpose).HasConversion<string>().HasMaxLength(20);
        builder.Property(i => i.Role).HasConversion<string>().HasMaxLength(20);
        builder.Property(i => i.Name).HasMaxLength(60);
        builder.HasIndex(i => i.TokenHash).IsUnique();
    }
}
