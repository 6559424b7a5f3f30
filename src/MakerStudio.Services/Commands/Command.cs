using System.Text.Json;
using MakerStudio.Core.Curing;
using MakerStudio.Services.Schema;
using Microsoft.EntityFrameworkCore;

namespace MakerStudio.Services;

/// <summary>What a use case holds while its transaction is open.</summary>
internal sealed class Command(StudioDb db, DateTimeOffset now, Schema.Studio? studio, Guid personId, Guid requestId, string name)
{
    private readonly List<News> _news = [];

    public StudioDb Db => db;
    public DateTimeOffset Now => now;
    public Guid RequestId => requestId;

    /// <summary>Settable only so that the first person's own act is signed by them.</summary>
    public Guid PersonId { get; set; } = personId;

    public Schema.Studio Studio => studio ?? throw new InvalidOperationException("The studio has not been set up.");

    public TimeZoneInfo Zone => TimeZoneInfo.FindSystemTimeZoneById(Studio.TimeZone);

    /// <summary>Today in the studio's time zone.</summary>
    public DateOnly Today => StudioTime.Today(now, Zone);

    /// <summary>Postgres keeps microseconds: an instant is cut to them so that what is read back is what was written.</summary>
    public static DateTimeOffset ToMicroseconds(DateTimeOffset instant) =>
        new(instant.UtcTicks - (instant.UtcTicks % TimeSpan.TicksPerMicrosecond), TimeSpan.Zero);

    /// <summary>Writes who did what into the acts, and tells other screens.</summary>
    public void Record(string subject, Guid? id, string what, string topic)
    {
        db.Acts.Add(new Act
        {
            RequestId = requestId, Command = name, Subject = subject, SubjectId = id, What = what, PersonId = PersonId, At = now,
        });
        Announce(topic, id);
    }

    /// <summary>Tells other screens of something the recorded act has changed besides its subject.</summary>
    public void Announce(string topic, Guid? id) => _news.Add(new News(topic, id, PersonId));

    /// <summary>The next code of a series: P-1, P-2, … Numbers of refused commands are not used up.</summary>
    public async Task<string> NextCodeAsync(string prefix) => (await NextCodesAsync(prefix, 1))[0];

    /// <inheritdoc cref="NextCodeAsync"/>
    /// <param name="count">Above 0.</param>
    public async Task<IReadOnlyList<string>> NextCodesAsync(string prefix, int count)
    {
        var last = await db.Database.SqlQuery<int>(
            $"insert into code_counters (prefix, last) values ({prefix}, {count}) on conflict (prefix) do update set last = code_counters.last + {count} returning last as \"Value\"")
            .ToListAsync();
        return [.. Enumerable.Range(last[0] - count + 1, count).Select(n => $"{prefix}-{n}")];
    }

    /// <summary>Puts the version the form was opened with in place, so that a stale edit is seen and not overwritten.</summary>
    public void ExpectVersion(object entity, uint version) => db.Entry(entity).Property("Version").OriginalValue = version;

    /// <summary>Saves; false when the row was changed since the expected version.</summary>
    public async Task<bool> TrySaveAsync()
    {
        try
        {
            await db.SaveChangesAsync();
            return true;
        }
        catch (DbUpdateConcurrencyException)
        {
            return false;
        }
    }

    internal async Task FinishAsync(string outcome, CancellationToken cancel)
    {
        await db.SaveChangesAsync(cancel);
        await db.Database.ExecuteSqlAsync(
            $"update handled_requests set outcome = cast({outcome} as jsonb), person_id = {PersonId} where request_id = {requestId}", cancel);
        foreach (var item in _news.Distinct())
        {
            await db.Database.ExecuteSqlAsync($"select pg_notify({StudioNews.Channel}, {JsonSerializer.Serialize(item)})", cancel);
        }
    }
}
