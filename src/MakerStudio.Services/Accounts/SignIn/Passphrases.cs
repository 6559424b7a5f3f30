using Microsoft.EntityFrameworkCore;

namespace MakerStudio.Services.Accounts;

/// <summary>
/// Compares a name and a passphrase. Every try is counted before the passphrase is looked at, so tries at the same moment
/// cannot slip past the count; after <see cref="TriesBeforeRest"/> the name rests for <see cref="Rest"/>.
/// </summary>
public sealed partial class Passphrases(StudioStore store)
{
    public const int TriesBeforeRest = 5;
    public static readonly TimeSpan Rest = TimeSpan.FromMinutes(5);

    /// <summary>The person, or <see cref="DoesNotFit"/>: the same answer, after the same work, for whatever the reason is.</summary>
    public async Task<Outcome<PersonRow>> CheckAsync(string? name, string? passphrase, CancellationToken cancel = default)
    {
        await using var db = await store.ReadAsync(cancel);
        var normal = PersonName.Normal(name ?? "");
        var now = Command.ToMicroseconds(store.Clock.GetUtcNow());
        var rested = now + Rest;
        var counted = await db.Users
            .Where(p => p.NormalizedUserName == normal && p.RemovedAt == null && (p.LockoutEnd == null || p.LockoutEnd <= now))
            .ExecuteUpdateAsync(set => set
                .SetProperty(p => p.LockoutEnd, p => p.AccessFailedCount + 1 >= TriesBeforeRest ? rested : (DateTimeOffset?)null)
                .SetProperty(p => p.AccessFailedCount, p => p.AccessFailedCount + 1 >= TriesBeforeRest ? 0 : p.AccessFailedCount + 1), cancel);
        var person = counted == 0 ? null : await db.Users.SingleOrDefaultAsync(p => p.NormalizedUserName == normal, cancel);
        var typed = passphrase is { Length: <= PassphraseRules.Longest } ? passphrase : "";
        if (!PassphraseHash.Fits(person?.PasswordHash, typed))
        {
            return new DoesNotFit();
        }

        await db.Users.Where(p => p.Id == person!.Id).ExecuteUpdateAsync(
            set => set.SetProperty(p => p.AccessFailedCount, 0).SetProperty(p => p.LockoutEnd, (DateTimeOffset?)null), cancel);
        return PersonRow.Of(person!);
    }
}

/// <summary>Says neither whether the name is known nor whether it rests.</summary>
public sealed record DoesNotFit : Refusal
{
    public override string Happened => "This name and this passphrase do not fit together.";
    public override string Kept => "";
    public override string ToDo => "Try again. After five wrong tries a name rests for five minutes, whatever is typed.";
}
