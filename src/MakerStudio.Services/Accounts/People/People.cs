using Microsoft.EntityFrameworkCore;

namespace MakerStudio.Services.Accounts;

/// <summary>Who works here: one file a use case in this folder.</summary>
public sealed partial class People(StudioStore store)
{
    /// <summary>Everybody who ever worked here, those present first, by name.</summary>
    public async Task<IReadOnlyList<PersonRow>> ListAsync(CancellationToken cancel = default)
    {
        await using var db = await store.ReadAsync(cancel);
        return await db.Users.OrderBy(p => p.RemovedAt != null).ThenBy(p => p.DisplayName).ThenBy(p => p.Id)
            .Select(p => new PersonRow(p.Id, p.DisplayName, p.Initials, p.Role, p.JoinedAt, p.RemovedAt)).ToListAsync(cancel);
    }

    /// <summary>One person, removed or not; null when there is none of this id.</summary>
    public async Task<PersonRow?> FindAsync(Guid personId, CancellationToken cancel = default)
    {
        await using var db = await store.ReadAsync(cancel);
        return await db.Users.Where(p => p.Id == personId)
            .Select(p => new PersonRow(p.Id, p.DisplayName, p.Initials, p.Role, p.JoinedAt, p.RemovedAt)).SingleOrDefaultAsync(cancel);
    }

    /// <summary>Whether a sign-in still has power: the person is here and the stamp is the present one.</summary>
    public async Task<bool> IsSignedInAsync(Actor actor, CancellationToken cancel = default)
    {
        await using var db = await store.ReadAsync(cancel);
        return await db.Users.AnyAsync(p => p.Id == actor.PersonId && p.SecurityStamp == actor.Stamp && p.RemovedAt == null, cancel);
    }
}

public sealed record PersonRow(Guid Id, string Name, string Initials, PersonRole Role, DateTimeOffset JoinedAt, DateTimeOffset? RemovedAt);
