using FluentValidation;

namespace MakerStudio.Services.Accounts;

/// <summary>Changes a name and initials: one's own, or as an owner anybody's. Written records keep what they say.</summary>
public sealed record RenamePerson : StudioRequest
{
    public Guid PersonId { get; set; }
    public string Name { get; set; } = "";
    public string Initials { get; set; } = "";
}

public sealed class RenamePersonValidator : AbstractValidator<RenamePerson>
{
    public RenamePersonValidator()
    {
        RuleFor(r => r.Name).IsName();
        RuleFor(r => r.Initials).AreInitials();
    }
}

public sealed partial class People
{
    private static readonly RenamePersonValidator RenamePersonShape = new();

    public Task<Outcome<Nothing>> RenameAsync(Actor actor, RenamePerson request, CancellationToken cancel = default) =>
        store.RunAsync<RenamePerson, Nothing>(actor, request, RenamePersonShape, async command =>
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

            var was = person.DisplayName;
            person.DisplayName = request.Name.Trim();
            person.UserName = person.DisplayName;
            person.NormalizedUserName = PersonName.Normal(person.DisplayName);
            person.Initials = request.Initials.Trim();
            person.ConcurrencyStamp = Stamp.New();
            if (await command.SavePersonAsync(person.Id, person.DisplayName, person.Initials) is { } refusal)
            {
                return refusal;
            }

            command.Record("person", person.Id, was == person.DisplayName ? $"Changed the initials of {was} to {person.Initials}" : $"Renamed {was} to {person.DisplayName}", Topics.People);
            return Nothing.Value;
        }, cancel: cancel);
}
