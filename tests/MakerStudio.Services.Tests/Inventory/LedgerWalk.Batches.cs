using MakerStudio.Core.Quantities;
using MakerStudio.Services.Inventory;
using MakerStudio.Services.Schema;
using Microsoft.EntityFrameworkCore;

namespace MakerStudio.Services.Tests.Inventory;

/// <summary>Small batches among the other acts: planned, weighed, weighings taken back, rested, filled.</summary>
internal sealed partial class LedgerWalk
{
    private const int MostBatches = 4;
    private readonly Batches _batches = studio.Get<Batches>();
    private readonly WeighSheets _sheets = studio.Get<WeighSheets>();
    private readonly CureShelf _curing = studio.Get<CureShelf>();
    private readonly Fills _fills = studio.Get<Fills>();
    private readonly List<ModelBatch> _open = [];

    public int Weighed { get; private set; }
    public int TakenBack { get; private set; }
    public int Filled { get; private set; }

    private static async Task<Guid> SizeAsync(TestStudio studio, Guid version, Guid bottle)
    {
        await using var db = studio.Db();
        var formula = await db.FormulaVersions.Where(v => v.Id == version).Select(v => v.FormulaId).SingleAsync();
        var size = new FormulaSize { FormulaId = formula, Name = "10 mL", NominalMillilitres = 10m, Parts = { new FormulaSizePart { MaterialId = bottle, CountPerUnit = 1 } } };
        db.FormulaSizes.Add(size);
        await db.SaveChangesAsync();
        return size.Id;
    }

    private Task StepBatchAsync()
    {
        if (_open.Count == 0 || (_open.Count < MostBatches && random.Next(8) == 0))
        {
            return PlanAsync();
        }

        var batch = _open[random.Next(_open.Count)];
        return (batch.State, random.Next(20)) switch
        {
            (_, 0) when random.Next(4) == 0 => DiscardAsync(batch),
            (BatchState.Weighing, < 2) => TakeBackAsync(batch),
            (BatchState.Weighing, _) => WeighAsync(batch),
            (BatchState.Resting, < 10) => CheckAsync(batch),
            (BatchState.Resting, < 12) => TakeBackAsync(batch),
            (BatchState.Resting, _) => ReleaseAsync(batch),
            _ => FillAsync(batch),
        };
    }

    private async Task PlanAsync()
    {
        var by = Somebody;
        var request = random.Next(2) == 0
            ? new PlanBatch { FormulaVersionId = version, TargetMilligrams = random.Next(-5_000, 60_000) }
            : new PlanBatch { FormulaVersionId = version, FormulaSizeId = size, PlannedUnits = random.Next(0, 4) };
        if (!Tally(await _batches.PlanAsync(by, request), out var planned))
        {
            return;
        }

        if (Tally(await _batches.StartWeighingAsync(by, new StartWeighing { BatchId = planned.BatchId }), out _))
        {
            _open.Add(new ModelBatch { Id = planned.BatchId, Code = planned.Code, By = by, State = BatchState.Weighing });
        }
    }

    private async Task WeighAsync(ModelBatch batch)
    {
        var sheet = (await _sheets.SheetAsync(batch.Code))!;
        if (sheet.CurrentLineId is null)
        {
            await ConfirmAsync(batch);
            return;
        }

        var line = random.Next(6) == 0 ? sheet.Lines[random.Next(sheet.Lines.Count)] : sheet.Current!;
        if (random.Next(20) == 0)
        {
            await WeighAheadAsync(batch, line);
            return;
        }

        var fitting = _shelf.Where(l => l.MaterialId == line.MaterialId && l.OnHand > 0 && (l.MayBeUsed || random.Next(20) == 0)).ToList();
        if (fitting.Count == 0 && random.Next(5) > 0)
        {
            await ReceiveAsync(line.MaterialId);
            return;
        }

        var lot = fitting.Count == 0 || random.Next(10) == 0 ? Pick() : fitting[random.Next(fitting.Count)];
        var net = random.Next(10) switch
        {
            0 => random.Next(-100, 100_000),
            1 => line.RemainingMilligrams + random.Next(0, 2_000),
            2 => line.RemainingMilligrams / 2,
            3 => Math.Min(line.RemainingMilligrams, lot.OnHand),
            _ => line.RemainingMilligrams,
        };
        var outcome = await _sheets.RecordAsync(batch.By, new RecordWeighing
        {
            BatchId = batch.Id, LineId = line.LineId, LotId = lot.Id, NetMilligrams = net, AsTyped = random.Next(3) == 0, OutOfOrder = random.Next(3) > 0,
            Over = (OverChoice)random.Next(3), Reason = random.Next(10) == 0 ? null : "random",
        });
        if (!Tally(outcome, out var recorded))
        {
            return;
        }

        Assert.True(net > 0 && net <= lot.OnHand, $"{net} was weighed from a lot that holds {lot.OnHand}");
        Assert.True(lot.MayBeUsed, "It was weighed from a lot that is not released");
        Assert.Equal(line.MaterialId, lot.MaterialId);
        batch.Weighings.Add((recorded.WeighingId!.Value, lot, net));
        Weighed++;
        await MoveAsync(lot, -net);
    }

    private async Task TakeBackAsync(ModelBatch batch)
    {
        if (batch.Weighings.Count == 0)
        {
            return;
        }

        var index = random.Next(batch.Weighings.Count);
        var (id, lot, net) = batch.Weighings[index];
        var outcome = await _sheets.ReverseAsync(batch.By, new ReverseWeighing { BatchId = batch.Id, WeighingId = id, Reason = "random" });
        Assert.Equal(batch.State == BatchState.Weighing, outcome is Done<Recorded>);
        if (Tally(outcome, out _))
        {
            batch.Weighings.RemoveAt(index);
            TakenBack++;
            await (lot is null ? Task.CompletedTask : MoveAsync(lot, net));
        }
    }

    private async Task ConfirmAsync(ModelBatch batch)
    {
        var outcome = await _sheets.ConfirmLastAdditionAsync(batch.By, new ConfirmLastAddition { BatchId = batch.Id, StirredConfirmed = random.Next(5) > 0 });
        batch.State = Tally(outcome, out _) ? BatchState.Resting : batch.State;
    }

    private async Task CheckAsync(ModelBatch batch)
    {
        var verdict = (CheckVerdict)random.Next(3);
        if (Tally(await _curing.RecordCheckAsync(Somebody, new RecordCheck { BatchId = batch.Id, Strength = random.Next(-1, 7), Clarity = Clarity.Clear, Verdict = verdict, Note = "random" }), out var done)
            && done.State == CureState.Ready)
        {
            batch.State = BatchState.Ready;
        }
    }

    private async Task ReleaseAsync(ModelBatch batch)
    {
        var outcome = await _curing.ReleaseAsync(Somebody, new ReleaseBatch { BatchId = batch.Id, EarlyReason = random.Next(2) == 0 ? null : "random" });
        batch.State = Tally(outcome, out _) ? BatchState.Ready : batch.State;
    }

    private async Task FillAsync(ModelBatch batch)
    {
        var weighed = batch.Weighings.Sum(w => w.Net);
        var count = random.Next(0, 4);
        var outcome = await _fills.RecordAsync(Somebody, new RecordFill
        {
            BatchId = batch.Id, ToFillingGrams = weighed / 1000m + random.Next(-1, 1), FillGrams = decimal.Round(weighed / 1000m / 4m, 1), Filled = count, Rejected = random.Next(0, 2),
            LabourMinutes = 1m,
        });
        if (!Tally(outcome, out _))
        {
            await (outcome.Refusal is PackagingShort ? ReceiveAsync(materials[Bottle]) : Task.CompletedTask);
            return;
        }

        Filled++;
        _open.Remove(batch);
        _units.Add(batch.Id);
        await using var db = studio.Db();
        var taken = await db.Movements.Where(m => m.BatchId == batch.Id && m.FillId != null).Select(m => new { m.LotId, m.Id, m.Change }).ToListAsync();
        var perUnit = await db.BatchParts.Where(p => p.BatchId == batch.Id).SumAsync(p => p.CountPerUnit);
        Assert.Equal(-(long)count * perUnit, taken.Sum(m => m.Change));
        foreach (var movement in taken)
        {
            Move(_shelf.Single(l => l.Id == movement.LotId), movement.Change, movement.Id);
        }
    }

    private async Task DiscardAsync(ModelBatch batch)
    {
        if (Tally(await _batches.DiscardAsync(batch.By, new DiscardBatch { BatchId = batch.Id, Reason = "random" }), out _))
        {
            _open.Remove(batch);
        }
    }

    /// <summary>Moves the model and looks up the entry, which the sheet does not tell.</summary>
    private async Task MoveAsync(ModelLot lot, long change)
    {
        await using var db = studio.Db();
        Move(lot, change, await db.Movements.Where(m => m.LotId == lot.Id).MaxAsync(m => m.Id));
    }
}

internal sealed class ModelBatch
{
    public required Guid Id { get; init; }
    public required string Code { get; init; }
    public required Actor By { get; init; }
    public BatchState State { get; set; }
    /// <summary>Without a lot while its receipt is to follow.</summary>
    public List<(Guid Id, ModelLot? Lot, long Net)> Weighings { get; } = [];
}
