using MakerStudio.Services.Schema;
using Microsoft.AspNetCore.Identity;
using Microsoft.EntityFrameworkCore;

namespace MakerStudio.Services.Accounts;

/// <summary>Puts the sign-in cookie on the present HTTP request and takes it off. Not for circuits: they cannot set cookies.</summary>
public sealed partial class SignIn
{
    private readonly StudioStore _store;
    private readonly Passphrases _passphrases;
    private readonly SignInManager<Person> _identity;

    internal SignIn(StudioStore store, Passphrases passphrases, SignInManager<Person> identity) =>
        (_store, _passphrases, _identity) = (store, passphrases, identity);

    public async Task<Outcome<PersonRow>> WithPassphraseAsync(string? name, string? passphrase, CancellationToken cancel = default)
    {
        var outcome = await _passphrases.CheckAsync(name, passphrase, cancel);
        return outcome is Done<PersonRow> done ? await AdmitAsync(done.Value.Id, cancel) : outcome;
    }

    /// <summary>Changes one's passphrase: every other device is signed out, this one is signed in anew.</summary>
    public async Task<Outcome<PersonRow>> ChangePassphraseAsync(Actor actor, ChangePassphrase request, CancellationToken cancel = default)
    {
        var outcome = await _passphrases.ChangeAsync(actor, request, cancel);
        return outcome is Done<PersonRow> done ? await AdmitAsync(done.Value.Id, cancel) : outcome;
    }

    public Task OutAsync() => _identity.SignOutAsync();

    private async Task<Outcome<PersonRow>> AdmitAsync(Guid personId, CancellationToken cancel)
    {
        await using var db = await _store.ReadAsync(cancel);
        var person = await db.Users.SingleOrDefaultAsync(p => p.Id == personId && p.RemovedAt == null, cancel);
        if (person is null)
        {
            return new DoesNotFit();
        }

        await _identity.SignInAsync(person, isPersistent: true);
        return PersonRow.Of(person);
    }
}
