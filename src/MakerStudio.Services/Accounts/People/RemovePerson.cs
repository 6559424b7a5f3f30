using Microsoft.EntityFrameworkCore;

namespace MakerStudio.Services.Accounts;

/// <summary>Takes a person's sign-in away for good. The records keep their name. Owners only.</summary>
public sealed record RemovePerson : StudioRequest
{
    public Guid PersonId { get; set; }
}

public sealed partial class People
{
    public Task<Outcome<Nothing>> RemoveAsync(Actor actor, RemovePerson request, CancellationToken cancel = default) =>
        store.RunAsync<RemovePerson, Nothing>(actor, request, null, async command =>
        {
            var present = await LockAllAsync(command, cancel);
            if (!present.TryGetValue(actor.PersonId, out var acting) || acting.SecurityStamp != actor.Stamp)
            {
                return new SignedOut();
            }

            if (acting.Role != PersonRole.Owner)
            {
                return new OwnersOnly();
            }

            if (!present.TryGetValue(request.PersonId, out var person))
            {
                return new NotFound("This person");
            }

            if (!AnotherOwner(present, person.Id))
            {
                return new LastOwner(person.DisplayName);
            }

            person.RemovedAt = command.Now;
            person.UserName = null;
            person.NormalizedUserName = null;
            person.PasswordHash = null;
            EndSignIns(person);
            await command.Db.UserPasskeys.Where(p => p.UserId == person.Id).ExecuteDeleteAsync(cancel);
            await command.Db.Invitations.Where(i => i.PersonId == person.Id && i.UsedAt == null).ExecuteDeleteAsync(cancel);
            command.Record("person", person.Id, $"Removed {person.DisplayName}", Topics.People);
            return Nothing.Value;
        }, ownersOnly: true, cancel);
}
