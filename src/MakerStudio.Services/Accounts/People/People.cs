using MakerStudio.Services.Schema;
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

    /// <summary>Names, in order, of those of these people who are still here.</summary>
    public async Task<IReadOnlyList<string>> NamesAsync(IReadOnlyCollection<Guid> personIds, CancellationToken cancel = default)
    {
        await using var db = await store.ReadAsync(cancel);
        return await db.Users.Where(p => personIds.Contains(p.Id) && p.RemovedAt == null).OrderBy(p => p.DisplayName).Select(p => p.DisplayName).ToListAsync(cancel);
    }

    /// <summary>
    /// Locks everybody present, in id order, and gives them as they are now. Every use case that takes away power goes
    /// through here, so that two owners who remove each other at once meet: the second finds itself gone.
    /// </summary>
    private static async Task<Dictionary<Guid, Person>> LockAllAsync(Command command, CancellationToken cancel)
    {
        var present = await command.Db.Users.FromSql($"select * from people where removed_at is null order by id for update").ToListAsync(cancel);
        return present.ToDictionary(p => p.Id);
    }

    /// <summary>Whether somebody else could still look after the studio.</summary>
    private static bool AnotherOwner(Dictionary<Guid, Person> present, Guid besides) =>
        present.Values.Any(p => p.Role == PersonRole.Owner && p.Id != besides);

    private static void EndSignIns(Person person)
    {
        person.SecurityStamp = Stamp.New();
        person.ConcurrencyStamp = Stamp.New();
    }
}

public sealed record PersonRow(Guid Id, string Name, string Initials, PersonRole Role, DateTimeOffset JoinedAt, DateTimeOffset? RemovedAt)
{
    internal static PersonRow Of(Person person) =>
        new(person.Id, person.DisplayName, person.Initials, person.Role, person.JoinedAt, person.RemovedAt);
}

/// <summary>A studio without an owner could never be looked after again.</summary>
public sealed record LastOwner(string Name) : Refusal
{
    public override string Happened => $"{Name} is the only owner.";
    public override string ToDo => "Make somebody else an owner first.";
}
