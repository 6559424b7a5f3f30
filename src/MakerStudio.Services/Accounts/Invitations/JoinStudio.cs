using System.Text.Json.Serialization;
using FluentValidation;
using MakerStudio.Services.Schema;

namespace MakerStudio.Services.Accounts;

/// <summary>Accepts an invitation: the link's one use.</summary>
public sealed record JoinStudio : StudioRequest
{
    public string Token { get; set; } = "";
    public string Name { get; set; } = "";
    public string Initials { get; set; } = "";

    [JsonIgnore]
    public string Passphrase { get; set; } = "";
}

public sealed class JoinStudioValidator : AbstractValidator<JoinStudio>
{
    public JoinStudioValidator()
    {
        RuleFor(r => r.Name).IsName();
        RuleFor(r => r.Initials).AreInitials();
        RuleFor(r => r.Passphrase).Custom((passphrase, context) => context.CheckPassphrase(passphrase, context.InstanceToValidate.Name));
    }
}

public sealed partial class Invitations
{
    private static readonly JoinStudioValidator JoinStudioShape = new();

    public Task<Outcome<PersonRow>> JoinAsync(JoinStudio request, CancellationToken cancel = default) =>
        store.RunUnsignedAsync<JoinStudio, PersonRow>(request, JoinStudioShape, async command =>
        {
            if (await SpendAsync(command, request.Token, InvitationPurpose.Join, cancel) is not { } invitation)
            {
                return new LinkSpent();
            }

            if (PassphraseRules.Problem(request.Passphrase, request.Name, command.Studio.Name) is { } problem)
            {
                return new NotAcceptable([new FieldProblem(nameof(request.Passphrase), problem)]);
            }

            var person = NewPerson(command, request.Name, request.Initials, request.Passphrase, invitation.Role);
            if (await command.SavePersonAsync(person.Id, person.DisplayName, person.Initials) is { } refusal)
            {
                return refusal;
            }

            command.Record("person", person.Id, $"{person.DisplayName} joined", Topics.People);
            return PersonRow.Of(person);
        }, cancel);

    /// <summary>Adds a person whose own act this is.</summary>
    internal static Person NewPerson(Command command, string name, string initials, string passphrase, PersonRole role)
    {
        var person = new Person
        {
            DisplayName = name.Trim(), UserName = name.Trim(), NormalizedUserName = PersonName.Normal(name), Initials = initials.Trim(), Role = role,
            PasswordHash = PassphraseHash.Of(passphrase), SecurityStamp = Stamp.New(), LockoutEnabled = true, JoinedAt = command.Now,
        };
        command.Db.Users.Add(person);
        command.PersonId = person.Id;
        return person;
    }
}

internal static class PassphraseCheckExtensions
{
    public static void CheckPassphrase<T>(this ValidationContext<T> context, string passphrase, params string?[] names)
    {
        if (PassphraseRules.Problem(passphrase, names) is { } problem)
        {
            context.AddFailure(problem);
        }
    }
}
