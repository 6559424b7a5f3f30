namespace MakerStudio.Services.Accounts;

/// <summary>Ends every sign-in of a person, on all devices: one's own, or as an owner anybody's.</summary>
public sealed record SignOutEverywhere : StudioRequest
{
    public Guid PersonId { get; set; }
}

public sealed partial class People
{
    public Task<Outcome<Nothing>> SignOutEverywhereAsync(Actor actor, SignOutEverywhere request, CancellationToken cancel = default) =>
        store.RunAsync<SignOutEverywhere, Nothing>(actor, request, null, async command =>
        {
            var present = await LockAllAsync(command, cancel);
            if (request.PersonId != actor.PersonId && present.GetValueOrDefault(actor.PersonId)?.Role != PersonRole.Owner)
            {
                return new OwnersOnly();
            }

            if (!present.TryGetValue(request.PersonId, out var person))
            {
                return new NotFound("This person");
            }

            EndSignIns(person);
            command.Record("person", person.Id, $"Signed {person.DisplayName} out everywhere", Topics.People);
            return Nothing.Value;
        }, cancel: cancel);
}
