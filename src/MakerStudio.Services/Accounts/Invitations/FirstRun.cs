using MakerStudio.Services.Schema;
using Microsoft.EntityFrameworkCore;

namespace MakerStudio.Services.Accounts;

/// <summary>A studio nobody has set up yet: one link for the first person, which dies with them.</summary>
public sealed partial class FirstRun(StudioStore store)
{
    /// <summary>A link not used for this long is replaced by starting the studio again.</summary>
    public static readonly TimeSpan LinkWithin = TimeSpan.FromDays(7);

    /// <summary>True until the first person is there.</summary>
    public async Task<bool> IsWaitingAsync(CancellationToken cancel = default)
    {
        await using var db = await store.ReadAsync(cancel);
        return !await db.Users.AnyAsync(cancel);
    }

    /// <summary>
    /// Makes the one-time token for <c>/first-run?token=…</c>; one made before stops working.
    /// </summary>
    /// <returns>Null when somebody is here already.</returns>
    public async Task<string?> IssueLinkAsync(CancellationToken cancel = default)
    {
        await using var db = await store.ReadAsync(cancel);
        await using var transaction = await db.Database.BeginTransactionAsync(cancel);
        if (await db.Users.AnyAsync(cancel))
        {
            return null;
        }

        await db.Invitations.Where(i => i.Purpose == InvitationPurpose.FirstPerson).ExecuteDeleteAsync(cancel);
        var token = OneTimeToken.New();
        var now = Command.ToMicroseconds(store.Clock.GetUtcNow());
        db.Invitations.Add(new Invitation
        {
            Purpose = InvitationPurpose.FirstPerson, TokenHash = OneTimeToken.Hash(token), Role = PersonRole.Owner, CreatedAt = now, ExpiresAt = now + LinkWithin,
        });
        await db.SaveChangesAsync(cancel);
        await transaction.CommitAsync(cancel);
        return token;
    }
}
