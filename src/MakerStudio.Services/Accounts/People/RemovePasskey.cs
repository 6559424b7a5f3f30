using System.Buffers.Text;
using Microsoft.EntityFrameworkCore;

namespace MakerStudio.Services.Accounts;

/// <summary>A device that may sign in without a passphrase. <paramref name="Id"/> is base64url.</summary>
public sealed record PasskeyRow(string Id, string Name, DateTimeOffset AddedAt);

/// <summary>Takes away one of one's own passkeys.</summary>
public sealed record RemovePasskey : StudioRequest
{
    public string PasskeyId { get; set; } = "";
}

public sealed partial class People
{
    public async Task<IReadOnlyList<PasskeyRow>> PasskeysAsync(Guid personId, CancellationToken cancel = default)
    {
        await using var db = await store.ReadAsync(cancel);
        var rows = await db.UserPasskeys.Where(p => p.UserId == personId).ToListAsync(cancel);
        return [.. rows.OrderBy(p => p.Data.CreatedAt).Select(p => new PasskeyRow(Base64Url.EncodeToString(p.CredentialId), p.Data.Name ?? "Passkey", p.Data.CreatedAt))];
    }

    public Task<Outcome<Nothing>> RemovePasskeyAsync(Actor actor, RemovePasskey request, CancellationToken cancel = default) =>
        store.RunAsync<RemovePasskey, Nothing>(actor, request, null, async command =>
        {
            var id = Base64Url.IsValid(request.PasskeyId) ? Base64Url.DecodeFromChars(request.PasskeyId) : [];
            var passkey = await command.Db.UserPasskeys.SingleOrDefaultAsync(p => p.UserId == actor.PersonId && p.CredentialId == id, cancel);
            if (passkey is null)
            {
                return new NotFound("This passkey");
            }

            command.Db.UserPasskeys.Remove(passkey);
            command.Record("person", actor.PersonId, $"Removed the passkey “{passkey.Data.Name}”", Topics.People);
            return Nothing.Value;
        }, cancel: cancel);
}
