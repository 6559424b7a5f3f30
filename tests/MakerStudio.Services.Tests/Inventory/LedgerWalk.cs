using MakerStudio.Core.Materials;
using MakerStudio.Core.Quantities;
using MakerStudio.Core.Stock;
using MakerStudio.Services.Inventory;
using Microsoft.EntityFrameworkCore;
using static MakerStudio.Services.Tests.Inventory.ReceivingSeed;

namespace MakerStudio.Services.Tests.Inventory;

/// <summary>One random act after the other, with what ought to be on each lot kept beside it.</summary>
internal sealed partial class LedgerWalk(TestStudio studio, Random random, Guid supplier, Guid[] materials, Guid version, Guid size)
{
    private const int MostLots = 60;
    private const int Fig = 0;
    private const int Wax = 1;
    private const int Bottle = 2;
    private const int Dpg = 3;
    private readonly Lots _lots = studio.Get<Lots>();
    private readonly Deliveries _deliveries = studio.Get<Deliveries>();
    private readonly List<ModelLot> _shelf = [];
    private readonly Dictionary<string, int> _whys = [];
    private readonly List<(ModelLot Lot, long Id, long Change)> _entries = [];

    public int Done { get; private set; }
    public int Refused { get; private set; }

    /// <summary>How often each refusal came, the commonest first.</summary>
    public string Whys => string.Join(", ", _whys.OrderByDescending(w => w.Value).Select(w => $"{w.Key} {w.Value}"));

    private Actor Somebody => random.Next(2) == 0 ? studio.Ana : studio.Bo;

    public static async Task<LedgerWalk> NewAsync(TestStudio studio, Random random)
    {
        var supplier = await studio.SupplierAsync();
        Guid[] materials =
        [
            await studio.MaterialAsync("Fig fragrance oil", MaterialKind.FragranceOil, density: 0.98m),
            await studio.MaterialAsync("Soy wax", MaterialKind.Wax),
            await studio.MaterialAsync("Bottle", MaterialKind.Bottle, StockUnit.Each),
            await studio.MaterialAsync("DPG", MaterialKind.Fixative, density: 0.98m),
        ];
        await studio.RequireAsync(materials[Wax], PaperKind.Sds);
        var version = await studio.ReleasedFormulaAsync("Fig", "room-spray-alcohol", (materials[Fig], 20m), (materials[Dpg], 80m));
        return new LedgerWalk(studio, random, supplier, materials, version, await SizeAsync(studio, version, materials[Bottle]));
    }

    public async Task StepAsync()
    {
        studio.Clock.Advance(TimeSpan.FromSeconds(random.Next(1, 600)));
        var kind = _shelf.Count == 0 ? 0 : random.Next(100);
        switch (kind)
        {
            case < 4 when _shelf.Count < MostLots:
                await ReceiveAsync();
                break;
            case < 25:
                await AdjustAsync();
                break;
            case < 40:
                await CountAsync();
                break;
            case < 55:
                await ReverseAsync();
                break;
            case < 75:
                await StepBatchAsync();
                break;
            case < 95:
                await StepGoodsAsync();
                break;
            default:
                await ChangeStatusAsync();
                break;
        }
    }

    public async Task CheckAsync(string when)
    {
        await using var db = studio.Db();
        var balances = await db.LotBalances.ToDictionaryAsync(b => b.LotId, b => b.OnHand);
        var sums = await db.Movements.GroupBy(m => m.LotId).ToDictionaryAsync(g => g.Key, g => g.Sum(m => m.Change));
        Assert.True(balances.Count == _shelf.Count, $"{when}: {balances.Count} lots, the model has {_shelf.Count}");
        foreach (var lot in _shelf)
        {
            Assert.True(balances[lot.Id] == lot.OnHand, $"{when}: {lot.Id} holds {balances[lot.Id]}, the model {lot.OnHand}");
            Assert.True(sums[lot.Id] == lot.OnHand, $"{when}: movements of {lot.Id} add up to {sums[lot.Id]}, the model {lot.OnHand}");
            Assert.True(lot.OnHand >= 0, $"{when}: {lot.Id} is below zero");
        }

        // One handled request for every act that was done and none for a refusal: refusals left no trace.
        Assert.Equal(Done, await db.HandledRequests.CountAsync());
        Assert.Equal(Done, await db.Acts.Select(a => a.RequestId).Distinct().CountAsync());
    }

    private async Task ReceiveAsync()
    {
        var lines = Enumerable.Range(0, random.Next(1, 4)).Select(_ =>
            Line(materials[random.Next(materials.Length)], random.Next(0, 6), (AmountUnit)random.Next(10), random.Next(-1, 500))).ToArray();
        await ReceiveAsync(lines);
    }

    /// <summary>What the bench lacks: a jar, or a box of bottles.</summary>
    private Task ReceiveAsync(Guid material) => ReceiveAsync(
        [Line(material, random.Next(100, 400), material == materials[Bottle] ? AmountUnit.Each : AmountUnit.Gram, random.Next(1, 50))]);

    private async Task ReceiveAsync(DeliveryLineTyped[] lines)
    {
        foreach (var line in lines)
        {
            line.ConfirmedUnitPrice = random.Next(3) == 0 ? null : 1m;
        }

        var outcome = await _deliveries.PostAsync(Somebody, Invoice(supplier, lines) with { Freight = random.Next(0, 3) * 10m, FreightBasis = Core.Costing.FreightBasis.Value });
        if (!Tally(outcome, out var posted))
        {
            return;
        }

        foreach (var (lot, index) in posted.Lots.Select((lot, index) => (lot, index)))
        {
            var row = await studio.LotRowAsync(lot.Code);
            Assert.Equal(Expected(lines[index], row.Unit), row.OnHand);
            _shelf.Add(new ModelLot { Id = lot.LotId, MaterialId = row.MaterialId, Unit = row.Unit, OnHand = row.OnHand, LastEntry = row.LastMovement, MayBeUsed = row.Status == LotStatus.Released });
            _entries.Add((_shelf[^1], row.LastMovement, row.OnHand));
        }
    }

    private static long Expected(DeliveryLineTyped line, StockUnit unit) =>
        AmountConversion.ToStock(line.Quantity, line.Unit, unit, new Density(0.98m)) is ConversionResult.Converted read ? read.Amount.Units : -1;

    private async Task AdjustAsync()
    {
        var lot = Pick();
        var most = lot.Unit == StockUnit.Gram ? 100_000 : 20;
        var change = (random.Next(5) == 0 ? 1 : -1) * (long)random.Next(0, most);
        var reason = (AdjustmentReason)random.Next(10);
        var outcome = await _lots.AdjustAsync(Somebody, new AdjustLot { LotId = lot.Id, Change = change, Reason = reason, Note = "random" });
        var allowed = change != 0 && reason != AdjustmentReason.Count && (change < 0 || AdjustLotValidator.MayAdd.Contains(reason)) && lot.OnHand + change >= 0;
        Assert.Equal(allowed, outcome is Done<LotAdjusted>);
        if (Tally(outcome, out var done))
        {
            Move(lot, change, done.MovementId);
        }
    }

    private async Task CountAsync()
    {
        var lot = Pick();
        var wanted = Math.Max(0, lot.OnHand + random.Next(-5_000, 5_000));
        var stale = random.Next(4) == 0;
        var count = new CountLot { LotId = lot.Id, AsOfMovement = stale ? lot.LastEntry - 1 : lot.LastEntry, Taken = stale && random.Next(2) == 0 ? CountTaken.AfterTheyMoved : CountTaken.NotSaid };
        if (lot.Unit == StockUnit.Each)
        {
            count.Pieces = wanted;
        }
        else
        {
            count.TareMilligrams = random.Next(0, 1_000);
            count.GrossMilligrams = wanted + (random.Next(10) == 0 ? -wanted : count.TareMilligrams);
        }

        var outcome = await _lots.CountAsync(Somebody, count);
        if (Tally(outcome, out var counted))
        {
            var after = count.Pieces ?? (count.GrossMilligrams!.Value - count.TareMilligrams!.Value);
            Assert.Equal(after - lot.OnHand, counted.Variance);
            Move(lot, counted.Variance, counted.MovementId);
        }
    }

    private async Task ReverseAsync()
    {
        if (_entries.Count == 0)
        {
            return;
        }

        var index = random.Next(_entries.Count);
        var (lot, id, change) = _entries[index];
        var outcome = await _lots.ReverseAsync(Somebody, new ReverseMovement { MovementId = id, Reason = random.Next(20) == 0 ? "" : "random" });
        if (Tally(outcome, out var done))
        {
            Move(lot, -change, done.MovementId);
        }
    }

    private async Task ChangeStatusAsync()
    {
        var lot = Pick();
        switch (random.Next(8))
        {
            case 0 or 7:
                lot.MayBeUsed |= Tally(await _lots.ReleaseAsync(Somebody, new ReleaseLot { LotId = lot.Id }), out _);
                break;
            case 1:
                lot.MayBeUsed &= !Tally(await _lots.HoldAsync(Somebody, new HoldLot { LotId = lot.Id, Reason = random.Next(4) == 0 ? "" : "random" }), out _);
                break;
            case 2 or 6:
                lot.MayBeUsed |= Tally(await _lots.LiftHoldAsync(Somebody, new LiftHold { LotId = lot.Id, Reason = "random" }), out var lifted) && lifted.Status == LotStatus.Released;
                break;
            case 3:
                lot.MayBeUsed &= !Tally(await _lots.QuarantineAsync(Somebody, new QuarantineLot { LotId = lot.Id, Reason = "random" }), out _);
                break;
            case 4:
                Tally(await _lots.RetestAsync(Somebody, new RetestLot { LotId = lot.Id, Finding = "random", Days = random.Next(0, 200) }), out _);
                break;
            default:
                Tally(await _lots.MoveAsync(Somebody, new MoveLot { LotId = lot.Id, Shelf = new string('x', random.Next(1, 80)) }), out _);
                break;
        }
    }

    private ModelLot Pick() => _shelf[random.Next(_shelf.Count)];

    private void Move(ModelLot lot, long change, long? entry)
    {
        lot.OnHand += change;
        if (entry is { } id)
        {
            lot.LastEntry = id;
            _entries.Add((lot, id, change));
        }
    }

    private bool Tally<T>(Outcome<T> outcome, [System.Diagnostics.CodeAnalysis.NotNullWhen(true)] out T? value)
    {
        if (outcome is Done<T> done)
        {
            Done++;
            value = done.Value!;
            return true;
        }

        Refused++;
        var why = $"{typeof(T).Name}: {outcome.Refusal!.GetType().Name}";
        _whys[why] = _whys.GetValueOrDefault(why) + 1;
        value = default;
        return false;
    }
}

internal sealed class ModelLot
{
    public required Guid Id { get; init; }
    public required Guid MaterialId { get; init; }
    public required StockUnit Unit { get; init; }
    public long OnHand { get; set; }
    public long LastEntry { get; set; }

    /// <summary>Its status allows it; dates are not looked at here.</summary>
    public bool MayBeUsed { get; set; }
}
