namespace MakerStudio.Services.Accounts;

/// <summary>Makes a person owner or maker. Owners only.</summary>
public sealed record ChangeRole : StudioRequest
{
    public Guid PersonId { get; set; }
    public PersonRole Role { get; set; }
}

public sealed partial class People
{
    public Task<Outcome<Nothing>> ChangeRoleAsync(Actor actor, ChangeRole request, CancellationToken cancel = default) =>
        store.RunAsync<ChangeRole, Nothing>(actor, request, null, async command =>
        {
            var present = await LockAllAsync(command, cancel);
            if (!present.TryGetValue(actor.PersonId, out var acting) || acting.Role != PersonRole.Owner)
            {
                return new OwnersOnly();
            }

            if (!present.TryGetValue(request.PersonId, out var person))
            {
                return new NotFound("This person");
            }

            if (request.Role != PersonRole.Owner && !AnotherOwner(present, person.Id))
            {
                return new LastOwner(person.DisplayName);
            }

            person.Role = request.Role;
            person.ConcurrencyStamp = Stamp.New();
            var role = request.Role == PersonRole.Owner ? "an owner" : "a maker";
            command.Record("person", person.Id, $"Made {person.DisplayName} {role}", Topics.People);
            return Nothing.Value;
        }, ownersOnly: true, cancel);
}
