using MakerStudio.Core.Bench;
using MakerStudio.Core.Quantities;
using MakerStudio.Core.Stock;
using MakerStudio.Services.Schema;
using Microsoft.EntityFrameworkCore;

namespace MakerStudio.Services.Inventory;

/// <summary>A batch with its row locked and what has been weighed into it, while a command works on it.</summary>
internal sealed class OpenSheet
{
    private readonly Command _command;

    private OpenSheet(Command command, Batch batch, List<Schema.Weighing> weighings)
    {
        _command = command;
        Batch = batch;
        Weighings = weighings;
        Lines = [.. batch.Lines.OrderBy(l => l.Position)];
    }

    public Batch Batch { get; }
    public IReadOnlyList<BatchLine> Lines { get; }

    /// <summary>Those that stand; reversed ones are left out.</summary>
    public List<Schema.Weighing> Weighings { get; }

    public BatchLine? NextOpen => Lines.FirstOrDefault(l => l.DoneAt is null);

    /// <summary>Locks the batch and checks that it is being weighed, by this person.</summary>
    public static async Task<(OpenSheet? Sheet, Refusal? Why)> OfAsync(Command command, Guid batchId)
    {
        var batch = await Ledger.LockBatchAsync(command, batchId);
        if (batch is null)
        {
            return (null, new NotFound("This batch"));
        }

        if (batch.State != BatchState.Weighing)
        {
            return (null, new NotWeighing(batch.Code, batch.State));
        }

        if (batch.WeighingById != command.PersonId)
        {
            var other = await command.Db.Users.Where(p => p.Id == batch.WeighingById).Select(p => p.DisplayName).SingleOrDefaultAsync();
            return (null, new WeighedByPartner(batch.Code, other ?? "Nobody"));
        }

        return (await OfLockedAsync(command, batch), null);
    }

    public static async Task<OpenSheet> OfLockedAsync(Command command, Batch batch)
    {
        var weighings = await command.Db.Weighings.Where(w => w.BatchId == batch.Id && w.ReversedAt == null).ToListAsync();
        return new OpenSheet(command, batch, weighings);
    }

    public BatchLine? Line(Guid id) => Lines.FirstOrDefault(l => l.Id == id);

    public long Recorded(BatchLine line) => Weighings.Where(w => w.BatchLineId == line.Id).Sum(w => w.NetMilligrams);

    public Mass Tolerance(BatchLine line) => WeighTolerance.Of(
        Mass.FromMilligrams(line.TargetMilligrams), Mass.FromMilligrams(Batch.ReadabilityMilligrams), Batch.TolerancePercent, Batch.ToleranceDivisions);

    public Verdict Verdict(BatchLine line, long recorded) =>
        WeighVerdict.Of(Mass.FromMilligrams(line.TargetMilligrams), Tolerance(line), Mass.FromMilligrams(recorded));

    /// <summary>Marks each line done or open by what stands on it now.</summary>
    public void Settle(IEnumerable<BatchLine> lines)
    {
        foreach (var line in lines)
        {
            var recorded = Recorded(line);
            line.DoneAt = recorded > 0 && Verdict(line, recorded) is Verdict.InTolerance ? line.DoneAt ?? _command.Now : null;
        }
    }

    /// <summary>Writes a weighing and, where there is a lot, takes it from the lot and opens that if it was closed.</summary>
    public Schema.Weighing Weigh(BatchLine line, Lot? lot, long net, long? tare, decimal unitCost)
    {
        var weighing = new Schema.Weighing
        {
            BatchId = Batch.Id, BatchLineId = line.Id, LotId = lot?.Id, NetMilligrams = net, TareMilligrams = tare, UnitCost = unitCost,
            At = _command.Now, PersonId = _command.PersonId, RequestId = _command.RequestId,
        };
        _command.Db.Weighings.Add(weighing);
        Weighings.Add(weighing);
        if (lot is not null)
        {
            Ledger.Post(_command, lot, MovementKind.Use, -net, m => (m.BatchId, m.WeighingId) = (Batch.Id, weighing.Id));
            if (lot.OpenedOn is null)
            {
                lot.OpenedOn = _command.Today;
                _command.Db.LotEvents.Add(new LotEvent
                {
                    LotId = lot.Id, Kind = LotEventKind.Opened, What = $"Opened for {Batch.Code}", NewDate = _command.Today,
                    PersonId = _command.PersonId, At = _command.Now,
                });
            }
        }

        return weighing;
    }

    public void Deviate(BatchLine? line, DeviationChoice choice, string what, string? reason, decimal factor = 1m) =>
        _command.Db.Deviations.Add(new Deviation
        {
            BatchId = Batch.Id, BatchLineId = line?.Id, Choice = choice, What = what, Factor = factor, Reason = reason?.Trim(),
            PersonId = _command.PersonId, At = _command.Now,
        });

    public void Tell(string what, Lot? lot = null)
    {
        _command.Record("batch", Batch.Id, what, Topics.Batches);
        if (lot is not null)
        {
            _command.Announce(Topics.Lots, lot.Id);
        }
    }

    public Recorded Answer(Schema.Weighing? weighing, BatchLine line)
    {
        var recorded = Recorded(line);
        return new(
            weighing?.Id, line.Id, recorded, line.TargetMilligrams, line.DoneAt is not null, Math.Max(0, line.TargetMilligrams - recorded),
            Weighings.Sum(w => w.NetMilligrams), Batch.TargetMilligrams, NextOpen?.Id);
    }
}

/// <summary>What stands after an act on a line. Masses are milligrams.</summary>
/// <param name="NextLineId">The first open line in order of addition; null when all are done.</param>
public sealed record Recorded(
    Guid? WeighingId, Guid LineId, long LineMilligrams, long TargetMilligrams, bool LineDone, long RemainingMilligrams,
    long TotalMilligrams, long BatchTargetMilligrams, Guid? NextLineId);
