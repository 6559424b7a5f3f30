using System.Text.Json.Serialization;
using FluentValidation;
using Microsoft.AspNetCore.Identity;
using Microsoft.EntityFrameworkCore;

namespace MakerStudio.Services.Accounts;

/// <summary>Keeps a passkey that the person's device made (WebAuthn registration).</summary>
public sealed record AddPasskey : StudioRequest
{
    /// <summary>What the person calls the device: "Ana's phone".</summary>
    public string Name { get; set; } = "";

    /// <summary>The browser's answer as JSON; its challenge is good for one use.</summary>
    [JsonIgnore]
    public string Credential { get; set; } = "";
}

public sealed class AddPasskeyValidator : AbstractValidator<AddPasskey>
{
    public AddPasskeyValidator() => RuleFor(r => r.Name).Must(n => n.Trim().Length is >= 1 and <= 60).WithMessage("Give the passkey a name of up to 60 letters, such as the device it is on.");
}

public sealed partial class SignIn
{
    private const string NotTaken = "The passkey was not taken.";
    private const string Again = "Ask the device once more; each try is good for a few minutes.";
    private static readonly AddPasskeyValidator AddPasskeyShape = new();

    /// <summary>The options for <c>navigator.credentials.create</c>, as JSON; null when the sign-in has ended.</summary>
    public async Task<string?> PasskeyCreationOptionsAsync(Actor actor, CancellationToken cancel = default)
    {
        await using var db = await _store.ReadAsync(cancel);
        var person = await db.Users.SingleOrDefaultAsync(p => p.Id == actor.PersonId && p.SecurityStamp == actor.Stamp && p.RemovedAt == null, cancel);
        return person is null ? null : await _identity.MakePasskeyCreationOptionsAsync(
            new PasskeyUserEntity { Id = person.Id.ToString(), Name = person.UserName!, DisplayName = person.DisplayName });
    }

    /// <summary>The options for <c>navigator.credentials.get</c>, as JSON; names nobody.</summary>
    public Task<string> PasskeyRequestOptionsAsync() => _identity.MakePasskeyRequestOptionsAsync(null);

    public async Task<Outcome<Nothing>> AddPasskeyAsync(Actor actor, AddPasskey request, CancellationToken cancel = default)
    {
        var attestation = await AnsweredAsync(request.Credential, _identity.PerformPasskeyAttestationAsync);
        if (attestation is not { Succeeded: true } || attestation.UserEntity.Id != actor.PersonId.ToString())
        {
            return new Because(NotTaken, Again);
        }

        var passkey = attestation.Passkey;
        return await _store.RunAsync<AddPasskey, Nothing>(actor, request, AddPasskeyShape, async command =>
        {
            if (await command.Db.UserPasskeys.AnyAsync(p => p.CredentialId == passkey.CredentialId, cancel))
            {
                return new Because("This device already has a passkey here.");
            }

            command.Db.UserPasskeys.Add(new IdentityUserPasskey<Guid>
            {
                UserId = actor.PersonId, CredentialId = passkey.CredentialId,
                Data = new IdentityPasskeyData
                {
                    Name = request.Name.Trim(), PublicKey = passkey.PublicKey, CreatedAt = command.Now, SignCount = passkey.SignCount,
                    Transports = passkey.Transports, IsUserVerified = passkey.IsUserVerified, IsBackupEligible = passkey.IsBackupEligible,
                    IsBackedUp = passkey.IsBackedUp, AttestationObject = passkey.AttestationObject, ClientDataJson = passkey.ClientDataJson,
                },
            });
            command.Record("person", actor.PersonId, $"Added the passkey “{request.Name.Trim()}”", Topics.People);
            return Nothing.Value;
        }, cancel: cancel);
    }

    /// <summary>Signs in with the browser's answer to <see cref="PasskeyRequestOptionsAsync"/>.</summary>
    public async Task<Outcome<PersonRow>> WithPasskeyAsync(string credential, CancellationToken cancel = default)
    {
        var assertion = await AnsweredAsync(credential, _identity.PerformPasskeyAssertionAsync);
        if (assertion is not { Succeeded: true })
        {
            return new Because(NotTaken, Again);
        }

        // The device counts its uses; a copy would be seen by a count that runs back.
        await _identity.UserManager.AddOrUpdatePasskeyAsync(assertion.User, assertion.Passkey);
        return await AdmitAsync(assertion.User.Id, cancel);
    }

    /// <summary>Null for no answer, and for one to a question this browser was not asked: Identity throws on both.</summary>
    private static async Task<T?> AnsweredAsync<T>(string credential, Func<string, Task<T>> check)
        where T : class
    {
        if (credential.Length == 0)
        {
            return null;
        }

        try
        {
            return await check(credential);
        }
        catch (InvalidOperationException)
        {
            return null;
        }
    }
}
