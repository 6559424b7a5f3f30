using FluentValidation;
using MakerStudio.Core.Curing;
using MakerStudio.Services.Schema;
using Microsoft.EntityFrameworkCore;

namespace MakerStudio.Services.Inventory;

/// <summary>
/// Makes a resting batch ready. Time reached and a passed, signed check need no reason; anything less needs one,
/// and the batch record prints it.
/// </summary>
public sealed record ReleaseBatch : StudioRequest
{
    public Guid BatchId { get; set; }
    public string? EarlyReason { get; set; }
}

public sealed class ReleaseBatchValidator : AbstractValidator<ReleaseBatch>
{
    public ReleaseBatchValidator() => RuleFor(r => r.EarlyReason).MaximumLength(500).WithMessage("Keep the reason to 500 letters.");
}

/// <summary>The minimum is not reached, or no check has passed: a reason would lift it.</summary>
public sealed record NeedsReason(string Code, IReadOnlyList<ReadyObstacle> Obstacles, DateTimeOffset DueAt) : Refusal
{
    public override string Happened => $"{Code} is not ready: {string.Join(" and ", Obstacles.Select(Say))}.";
    public override string ToDo => "Record a passed check when the time is reached, or give a reason for an early release; it is printed on the batch record.";

    private static string Say(ReadyObstacle obstacle) => obstacle switch
    {
        ReadyObstacle.TimeNotReached => "its minimum rest is not over",
        ReadyObstacle.OnHold => "it is on hold",
        _ => "no check has passed",
    };
}

public enum ReadyObstacle { TimeNotReached, NoPassedCheck, OnHold }

public sealed partial class CureShelf
{
    private static readonly ReleaseBatchValidator ReleaseBatchShape = new();

    public Task<Outcome<Nothing>> ReleaseAsync(Actor actor, ReleaseBatch request, CancellationToken cancel = default) =>
        store.RunAsync<ReleaseBatch, Nothing>(actor, request, ReleaseBatchShape, async command =>
        {
            var batch = await Ledger.LockBatchAsync(command, request.BatchId);
            if (batch is null)
            {
                return new NotFound("This batch");
            }

            if (batch.State != BatchState.Resting)
            {
                return batch.State == BatchState.Ready ? Nothing.Value : new NotResting(batch.Code, batch.State);
            }

            var reason = Trimmed(request.EarlyReason);
            var obstacles = await ObstaclesAsync(command.Db, batch, command.Now, cancel);
            if (obstacles.Count > 0 && reason is null)
            {
                return new NeedsReason(batch.Code, obstacles, CureClock.DueAt(batch.ClockStartedAt!.Value, WindowOf(batch)));
            }

            batch.State = BatchState.Ready;
            batch.ReadyAt = command.Now;
            batch.ReadyById = command.PersonId;
            batch.HeldReason = null;
            batch.EarlyReason = obstacles.Count > 0 ? reason : null;
            command.Record("batch", batch.Id, obstacles.Count > 0 ? $"Released {batch.Code} early: {reason}" : $"Released {batch.Code}", Topics.Batches);
            return Nothing.Value;
        }, cancel: cancel);

    /// <summary>What stands between the batch and being ready, now.</summary>
    internal static async Task<List<ReadyObstacle>> ObstaclesAsync(StudioDb db, Batch batch, DateTimeOffset now, CancellationToken cancel)
    {
        var checks = await ChecksAsync(db, [batch.Id], cancel);
        var why = CureClock.WhyNotRelease(batch.ClockStartedAt!.Value, WindowOf(batch), now, LastCheck(checks[batch.Id])?.ToCore());
        List<ReadyObstacle> obstacles =
            [.. why.Select(w => w is ReleaseRefusal.TimeNotReached ? ReadyObstacle.TimeNotReached : ReadyObstacle.NoPassedCheck)];
        if (batch.HeldReason is not null)
        {
            obstacles.Add(ReadyObstacle.OnHold);
        }

        return obstacles;
    }
}
