using System.Text.Json.Serialization;
using FluentValidation;
using MakerStudio.Services.Schema;
using Microsoft.EntityFrameworkCore;

namespace MakerStudio.Services.Accounts;

/// <summary>An owner makes a link by which a person sets a new passphrase.</summary>
public sealed record IssueNewPassphrase : StudioRequest
{
    public Guid PersonId { get; set; }

    /// <inheritdoc cref="InvitePerson.Token"/>
    public string Token { get; init; } = OneTimeToken.New();
}

public sealed class IssueNewPassphraseValidator : AbstractValidator<IssueNewPassphrase>
{
    public IssueNewPassphraseValidator() => RuleFor(r => r.Token).Must(OneTimeToken.IsShaped).WithMessage("The link is not complete; reload the page.");
}

/// <summary>The same, asked for at the studio machine by somebody who is locked out.</summary>
public sealed record IssueNewPassphraseByName : StudioRequest
{
    public string Name { get; set; } = "";
    public string Token { get; init; } = OneTimeToken.New();
}

/// <summary>Sets the passphrase: the link's one use. Every other sign-in of the person ends.</summary>
public sealed record SetNewPassphrase : StudioRequest
{
    public string Token { get; set; } = "";

    [JsonIgnore]
    public string Passphrase { get; set; } = "";
}

public sealed class SetNewPassphraseValidator : AbstractValidator<SetNewPassphrase>
{
    public SetNewPassphraseValidator() => RuleFor(r => r.Passphrase).Custom((passphrase, context) => context.CheckPassphrase(passphrase));
}

public sealed partial class Invitations
{
    private static readonly IssueNewPassphraseValidator IssueNewPassphraseShape = new();
    private static readonly SetNewPassphraseValidator SetNewPassphraseShape = new();

    /// <returns>When the link ends; the link is the request's own token.</returns>
    public Task<Outcome<InvitationRow>> IssueNewPassphraseAsync(Actor actor, IssueNewPassphrase request, CancellationToken cancel = default) =>
        store.RunAsync<IssueNewPassphrase, InvitationRow>(actor, request, IssueNewPassphraseShape, async command =>
            await command.Db.Users.SingleOrDefaultAsync(p => p.Id == request.PersonId && p.RemovedAt == null, cancel) is { } person
                ? await IssueAsync(command, person, request.Token, $"Made a new-passphrase link for {person.DisplayName}", cancel)
                : new NotFound("This person"), ownersOnly: true, cancel);

    /// <summary>For the host's command line: whoever reaches the studio machine may let a person in again.</summary>
    public async Task<Outcome<OneTimeLink>> IssueNewPassphraseAsync(string name, CancellationToken cancel = default)
    {
        var request = new IssueNewPassphraseByName { Name = name };
        var outcome = await store.RunUnsignedAsync<IssueNewPassphraseByName, InvitationRow>(request, null, async command =>
        {
            var normal = PersonName.Normal(name);
            var person = await command.Db.Users.SingleOrDefaultAsync(p => p.NormalizedUserName == normal && p.RemovedAt == null, cancel);
            if (person is null)
            {
                return new Because($"Nobody here is called “{name}”.", "Type the name as it stands in Studio, People.");
            }

            command.PersonId = person.Id;
            return await IssueAsync(command, person, request.Token, $"A new-passphrase link for {person.DisplayName} was made at the studio machine", cancel);
        }, cancel);
        return outcome is Done<InvitationRow> done ? new OneTimeLink(done.Value.Name, request.Token, done.Value.ExpiresAt) : outcome.Refusal!;
    }

    public Task<Outcome<PersonRow>> SetNewPassphraseAsync(SetNewPassphrase request, CancellationToken cancel = default) =>
        store.RunUnsignedAsync<SetNewPassphrase, PersonRow>(request, SetNewPassphraseShape, async command =>
        {
            if (await SpendAsync(command, request.Token, InvitationPurpose.NewPassphrase, cancel) is not { } link)
            {
                return new LinkSpent();
            }

            var locked = await command.Db.Users.FromSql($"select * from people where id = {link.PersonId} and removed_at is null for update").ToListAsync(cancel);
            if (locked.SingleOrDefault() is not { } person)
            {
                return new LinkSpent();
            }

            if (PassphraseRules.Problem(request.Passphrase, person.DisplayName, command.Studio.Name) is { } problem)
            {
                return new NotAcceptable([new FieldProblem(nameof(request.Passphrase), problem)]);
            }

            (person.PasswordHash, person.SecurityStamp, person.ConcurrencyStamp) = (PassphraseHash.Of(request.Passphrase), Stamp.New(), Stamp.New());
            (person.AccessFailedCount, person.LockoutEnd) = (0, null);
            command.PersonId = person.Id;
            command.Record("person", person.Id, $"{person.DisplayName} set a new passphrase", Topics.People);
            return PersonRow.Of(person);
        }, cancel);

    /// <summary>A newer link replaces an older one that waits.</summary>
    private static async Task<Outcome<InvitationRow>> IssueAsync(Command command, Person person, string token, string what, CancellationToken cancel)
    {
        await command.Db.Invitations
            .Where(i => i.Purpose == InvitationPurpose.NewPassphrase && i.PersonId == person.Id && i.UsedAt == null).ExecuteDeleteAsync(cancel);
        var link = new Invitation
        {
            Purpose = InvitationPurpose.NewPassphrase, TokenHash = OneTimeToken.Hash(token), Name = person.DisplayName, Role = person.Role, PersonId = person.Id,
            CreatedById = command.PersonId, CreatedAt = command.Now, ExpiresAt = command.Now + NewPassphraseWithin,
        };
        command.Db.Invitations.Add(link);
        command.Record("person", person.Id, what, Topics.People);
        return new InvitationRow(link.Id, person.DisplayName, person.Role, link.ExpiresAt);
    }
}
