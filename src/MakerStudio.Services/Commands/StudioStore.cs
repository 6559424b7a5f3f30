using System.Security.Cryptography;
using System.Text.Json;
using System.Text.Json.Serialization;
using FluentValidation;
using MakerStudio.Services.Accounts;
using MakerStudio.Services.Schema;
using Microsoft.EntityFrameworkCore;
using Npgsql;

namespace MakerStudio.Services;

/// <summary>
/// One command, one context, one transaction. Every service reads and writes through here; outside this project it is opaque.
/// </summary>
public sealed class StudioStore
{
    private const int Attempts = 5;
    private static readonly JsonSerializerOptions Json = new(JsonSerializerDefaults.Web) { Converters = { new JsonStringEnumConverter() } };
    private readonly IDbContextFactory<StudioDb> _contexts;

    internal StudioStore(IDbContextFactory<StudioDb> contexts, TimeProvider clock)
    {
        _contexts = contexts;
        Clock = clock;
    }

    internal TimeProvider Clock { get; }

    /// <summary>The same database by another clock: the sample studio goes through its weeks on one.</summary>
    internal StudioStore OnClock(TimeProvider clock) => new(_contexts, clock);

    /// <summary>A context for reading; nothing is tracked.</summary>
    internal async Task<StudioDb> ReadAsync(CancellationToken cancel = default)
    {
        var db = await _contexts.CreateDbContextAsync(cancel);
        db.ChangeTracker.QueryTrackingBehavior = QueryTrackingBehavior.NoTracking;
        return db;
    }

    /// <summary>
    /// Runs a command: checks shape, person and request id, then <paramref name="act"/>, then commits.
    /// A refusal rolls back and is not remembered; what was done is remembered and answered again to a repeat.
    /// </summary>
    internal Task<Outcome<T>> RunAsync<TRequest, T>(
        Actor actor, TRequest request, IValidator<TRequest>? validator, Func<Command, Task<Outcome<T>>> act,
        bool ownersOnly = false, CancellationToken cancel = default)
        where TRequest : StudioRequest
    {
        var problems = Problems(request, validator);
        return problems is not null
            ? Task.FromResult<Outcome<T>>(problems)
            : RetryAsync(db => AttemptAsync(db, actor, request, act, ownersOnly, cancel), cancel);
    }

    /// <summary>For the few requests made before anybody is signed in (first person, an invitation, a new passphrase).</summary>
    internal Task<Outcome<T>> RunUnsignedAsync<TRequest, T>(
        TRequest request, IValidator<TRequest>? validator, Func<Command, Task<Outcome<T>>> act, CancellationToken cancel = default)
        where TRequest : StudioRequest
    {
        var problems = Problems(request, validator);
        return problems is not null
            ? Task.FromResult<Outcome<T>>(problems)
            : RetryAsync(db => AttemptAsync(db, null, request, act, false, cancel), cancel);
    }

    private static NotAcceptable? Problems<TRequest>(TRequest request, IValidator<TRequest>? validator)
    {
        var result = validator?.Validate(request);
        return result is null || result.IsValid
            ? null
            : new NotAcceptable([.. result.Errors.Select(e => new FieldProblem(e.PropertyName, e.ErrorMessage))]);
    }

    /// <summary>Each attempt has a fresh context: a reused one would count what it tracked twice.</summary>
    private async Task<Outcome<T>> RetryAsync<T>(Func<StudioDb, Task<Outcome<T>>> attempt, CancellationToken cancel)
    {
        for (var n = 1; ; n++)
        {
            try
            {
                await using var db = await _contexts.CreateDbContextAsync(cancel);
                return await attempt(db);
            }
            catch (Exception e) when (IsPassing(e))
            {
                if (n == Attempts)
                {
                    return new TryAgain();
                }

                await Task.Delay(TimeSpan.FromMilliseconds(20 * n * n), cancel);
            }
        }
    }

    private static bool IsPassing(Exception e) => e switch
    {
        PostgresException p => p.SqlState is PostgresErrorCodes.SerializationFailure or PostgresErrorCodes.DeadlockDetected || p.IsTransient,
        NpgsqlException n => n.IsTransient || n.InnerException is IOException or System.Net.Sockets.SocketException,
        _ => e.InnerException is not null && IsPassing(e.InnerException),
    };

    private async Task<Outcome<T>> AttemptAsync<TRequest, T>(
        StudioDb db, Actor? actor, TRequest request, Func<Command, Task<Outcome<T>>> act, bool ownersOnly, CancellationToken cancel)
        where TRequest : StudioRequest
    {
        await using var transaction = await db.Database.BeginTransactionAsync(cancel);
        if (actor is not null && await RefuseAsync(db, actor, ownersOnly, cancel) is { } refusal)
        {
            return refusal;
        }

        var hash = HashOf(request, actor);
        var name = typeof(TRequest).Name;
        var now = Command.ToMicroseconds(Clock.GetUtcNow());
        if (!await ClaimAsync(db, request.RequestId, name, hash, actor?.PersonId ?? Guid.Empty, now, cancel))
        {
            return await RepeatAsync<T>(db, request.RequestId, hash, cancel);
        }

        var studio = await db.Studio.AsNoTracking().SingleOrDefaultAsync(cancel);
        var command = new Command(db, now, studio, actor?.PersonId ?? Guid.Empty, request.RequestId, name);
        var outcome = await act(command);
        if (outcome is not Done<T> done)
        {
            return outcome;
        }

        await command.FinishAsync(JsonSerializer.Serialize(done.Value, Json), cancel);
        await transaction.CommitAsync(cancel);
        return outcome;
    }

    private static async Task<Refusal?> RefuseAsync(StudioDb db, Actor actor, bool ownersOnly, CancellationToken cancel)
    {
        var person = await db.Users.Where(p => p.Id == actor.PersonId)
            .Select(p => new { p.SecurityStamp, p.RemovedAt, p.Role }).SingleOrDefaultAsync(cancel);
        return person is null || person.RemovedAt is not null || person.SecurityStamp != actor.Stamp ? new SignedOut()
            : ownersOnly && person.Role != PersonRole.Owner ? new OwnersOnly()
            : null;
    }

    /// <summary>A concurrent request with the same id waits here until the first one has committed or given up.</summary>
    private static async Task<bool> ClaimAsync(
        StudioDb db, Guid id, string name, byte[] hash, Guid person, DateTimeOffset now, CancellationToken cancel) =>
        await db.Database.ExecuteSqlAsync(
            $"insert into handled_requests (request_id, command, body_hash, person_id, at) values ({id}, {name}, {hash}, {person}, {now}) on conflict do nothing",
            cancel) == 1;

    private static async Task<Outcome<T>> RepeatAsync<T>(StudioDb db, Guid id, byte[] hash, CancellationToken cancel)
    {
        var first = await db.HandledRequests.AsNoTracking().SingleAsync(r => r.RequestId == id, cancel);
        return first.BodyHash.AsSpan().SequenceEqual(hash)
            ? JsonSerializer.Deserialize<T>(first.Outcome!, Json)!
            : new IdUsedForAnother();
    }

    private static byte[] HashOf<TRequest>(TRequest request, Actor? actor)
    {
        var body = JsonSerializer.SerializeToUtf8Bytes(new { Command = typeof(TRequest).FullName, actor?.PersonId, Request = request }, Json);
        return SHA256.HashData(body);
    }
}
