using System.Text.Json.Serialization;
using FluentValidation;
using Microsoft.EntityFrameworkCore;

namespace MakerStudio.Services.Accounts;

/// <summary>One's own passphrase, changed while signed in. Every sign-in of the person ends; the page signs its own device in again.</summary>
public sealed record ChangePassphrase : StudioRequest
{
    [JsonIgnore]
    public string Current { get; set; } = "";

    [JsonIgnore]
    public string Passphrase { get; set; } = "";
}

public sealed class ChangePassphraseValidator : AbstractValidator<ChangePassphrase>
{
    public ChangePassphraseValidator()
    {
        RuleFor(r => r.Passphrase).Custom((passphrase, context) => context.CheckPassphrase(passphrase));
        RuleFor(r => r.Passphrase).NotEqual(r => r.Current).WithMessage("This is the passphrase you have. Choose another.");
    }
}

public sealed partial class Passphrases
{
    private static readonly ChangePassphraseValidator ChangeShape = new();

    /// <summary>A wrong present passphrase counts as a try to sign in, so that an open page is no place to guess from.</summary>
    public async Task<Outcome<PersonRow>> ChangeAsync(Actor actor, ChangePassphrase request, CancellationToken cancel = default)
    {
        if (ChangeShape.Validate(request) is { IsValid: false } shape)
        {
            return new NotAcceptable([.. shape.Errors.Select(e => new FieldProblem(e.PropertyName, e.ErrorMessage))]);
        }

        if (await NameOfAsync(actor, cancel) is not { } name)
        {
            return new SignedOut();
        }

        if (await CheckAsync(name, request.Current, cancel) is not Done<PersonRow>)
        {
            return new NotAcceptable([new FieldProblem(
                nameof(request.Current), "This is not your present passphrase. After five wrong tries your name rests for five minutes, whatever is typed.")]);
        }

        return await store.RunAsync<ChangePassphrase, PersonRow>(actor, request, null, async command =>
        {
            var locked = await command.Db.Users.FromSql($"select * from people where id = {actor.PersonId} and removed_at is null for update").ToListAsync(cancel);
            if (locked.SingleOrDefault() is not { } person || person.SecurityStamp != actor.Stamp)
            {
                return new SignedOut();
            }

            if (PassphraseRules.Problem(request.Passphrase, person.DisplayName, command.Studio.Name) is { } problem)
            {
                return new NotAcceptable([new FieldProblem(nameof(request.Passphrase), problem)]);
            }

            (person.PasswordHash, person.SecurityStamp, person.ConcurrencyStamp) = (PassphraseHash.Of(request.Passphrase), Stamp.New(), Stamp.New());
            command.Record("person", person.Id, $"{person.DisplayName} changed their passphrase", Topics.People);
            return PersonRow.Of(person);
        }, cancel: cancel);
    }

    private async Task<string?> NameOfAsync(Actor actor, CancellationToken cancel)
    {
        await using var db = await store.ReadAsync(cancel);
        return await db.Users.Where(p => p.Id == actor.PersonId && p.SecurityStamp == actor.Stamp && p.RemovedAt == null)
            .Select(p => p.DisplayName).SingleOrDefaultAsync(cancel);
    }
}
