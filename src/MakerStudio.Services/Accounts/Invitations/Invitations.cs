using MakerStudio.Services.Schema;
using Microsoft.EntityFrameworkCore;

namespace MakerStudio.Services.Accounts;

/// <summary>One-time links for people: one file a use case in this folder.</summary>
public sealed partial class Invitations(StudioStore store)
{
    public static readonly TimeSpan JoinWithin = TimeSpan.FromDays(7);
    public static readonly TimeSpan NewPassphraseWithin = TimeSpan.FromMinutes(30);

    /// <summary>Invitations that still wait, the newest first.</summary>
    public async Task<IReadOnlyList<InvitationRow>> WaitingAsync(CancellationToken cancel = default)
    {
        var now = store.Clock.GetUtcNow();
        await using var db = await store.ReadAsync(cancel);
        return await db.Invitations.Where(i => i.Purpose == InvitationPurpose.Join && i.UsedAt == null && i.ExpiresAt > now)
            .OrderByDescending(i => i.Id).Select(i => new InvitationRow(i.Id, i.Name!, i.Role, i.ExpiresAt)).ToListAsync(cancel);
    }

    /// <summary>Whose link this is, for the page it opens; null when it opens nothing.</summary>
    public async Task<InvitationRow?> FindAsync(string? token, InvitationPurpose purpose, CancellationToken cancel = default)
    {
        var hash = OneTimeToken.Hash(token);
        var now = store.Clock.GetUtcNow();
        await using var db = await store.ReadAsync(cancel);
        return await db.Invitations.Where(i => i.TokenHash == hash && i.Purpose == purpose && i.UsedAt == null && i.ExpiresAt > now)
            .Select(i => new InvitationRow(i.Id, i.Name ?? "", i.Role, i.ExpiresAt)).SingleOrDefaultAsync(cancel);
    }

    /// <summary>Locks the link's row and marks it used, so that of two who open it at once one gets in.</summary>
    /// <returns>Null when it opens nothing.</returns>
    internal static async Task<Invitation?> SpendAsync(Command command, string? token, InvitationPurpose purpose, CancellationToken cancel)
    {
        var hash = OneTimeToken.Hash(token);
        var found = await command.Db.Invitations.FromSql($"select * from invitations where token_hash = {hash} for update").ToListAsync(cancel);
        if (found.SingleOrDefault() is not { UsedAt: null } link || link.Purpose != purpose || link.ExpiresAt <= command.Now)
        {
            return null;
        }

        link.UsedAt = command.Now;
        return link;
    }
}

public sealed record InvitationRow(Guid Id, string Name, PersonRole Role, DateTimeOffset ExpiresAt);
