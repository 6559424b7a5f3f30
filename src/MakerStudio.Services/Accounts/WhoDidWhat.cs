using Microsoft.EntityFrameworkCore;

namespace MakerStudio.Services.Accounts;

/// <summary>Reads the record of acts: one line for every command that took effect.</summary>
public sealed class WhoDidWhat(StudioStore store)
{
    public const int PageLength = 50;

    /// <summary>The newest acts before the given one, newest first, at most <see cref="PageLength"/>.</summary>
    /// <param name="before">Id of the last line of the page before; null for the first page.</param>
    public async Task<IReadOnlyList<ActRow>> PageAsync(long? before = null, CancellationToken cancel = default)
    {
        await using var db = await store.ReadAsync(cancel);
        var lines =
            from act in db.Acts
            where before == null || act.Id < before
            join person in db.Users on act.PersonId equals person.Id
            orderby act.Id descending
            select new ActRow(act.Id, act.At, person.DisplayName, person.Initials, act.Subject, act.SubjectId, act.What);
        return await lines.Take(PageLength).ToListAsync(cancel);
    }

    /// <summary>All of them, newest first, as they are read.</summary>
    public async IAsyncEnumerable<ActRow> AllAsync([System.Runtime.CompilerServices.EnumeratorCancellation] CancellationToken cancel = default)
    {
        await using var db = await store.ReadAsync(cancel);
        var lines =
            from act in db.Acts
            join person in db.Users on act.PersonId equals person.Id
            orderby act.Id descending
            select new ActRow(act.Id, act.At, person.DisplayName, person.Initials, act.Subject, act.SubjectId, act.What);
        await foreach (var line in lines.AsAsyncEnumerable().WithCancellation(cancel))
        {
            yield return line;
        }
    }
}

public sealed record ActRow(long Id, DateTimeOffset At, string Name, string Initials, string Subject, Guid? SubjectId, string What);
