using System.Diagnostics;
using System.Globalization;
using MakerStudio.Core.Materials;
using MakerStudio.Core.Quantities;
using MakerStudio.Core.Stock;
using MakerStudio.Services.Inventory;
using Microsoft.EntityFrameworkCore;
using Xunit.Abstractions;
using static MakerStudio.Services.Tests.Inventory.ReceivingSeed;

namespace MakerStudio.Services.Tests.Inventory;

/// <summary>
/// Ten thousand acts, sensible and not, beside a model that knows nothing of the database: what the model says is on
/// hand is what the balance says and what the movements add up to, and a refusal leaves no trace.
/// </summary>
public class LedgerPropertyTests(ITestOutputHelper output)
{
    private const int Acts = 10_000;
    private const int ActsBetweenChecks = 1_000;

    [Fact]
    public async Task OnHand_AfterTenThousandRandomActs_EqualsTheSumOfMovements()
    {
        var start = int.TryParse(Environment.GetEnvironmentVariable("STUDIO_RANDOM_START"), CultureInfo.InvariantCulture, out var given)
            ? given
            : Random.Shared.Next();
        output.WriteLine($"Random start {start}; run again with STUDIO_RANDOM_START={start}");
        await using var studio = await TestStudio.NewAsync();
        var walk = await Walk.NewAsync(studio, new Random(start));
        var watch = Stopwatch.StartNew();
        for (var n = 1; n <= Acts; n++)
        {
            await walk.StepAsync();
            if (n % ActsBetweenChecks == 0)
            {
                output.WriteLine($"{n} acts after {watch.Elapsed.TotalSeconds:0.0} s");
                await walk.CheckAsync($"start {start}, after {n} acts");
            }
        }

        output.WriteLine($"{Acts} acts in {watch.Elapsed.TotalSeconds:0.0} s: {walk.Done} done, {walk.Refused} refused");
        Assert.InRange(walk.Refused, Acts / 10, Acts * 9 / 10);
        Assert.True((await studio.Get<Verify>().RunAsync()).Agrees);
    }

    private sealed class Walk(TestStudio studio, Random random, Guid supplier, Guid[] materials)
    {
        private const int MostLots = 40;
        private readonly Lots _lots = studio.Get<Lots>();
        private readonly Deliveries _deliveries = studio.Get<Deliveries>();
        private readonly List<ModelLot> _shelf = [];
        private readonly List<(ModelLot Lot, long Id, long Change)> _entries = [];

        public int Done { get; private set; }
        public int Refused { get; private set; }

        private Actor Somebody => random.Next(2) == 0 ? studio.Ana : studio.Bo;

        public static async Task<Walk> NewAsync(TestStudio studio, Random random)
        {
            var supplier = await studio.SupplierAsync();
            Guid[] materials =
            [
                await studio.MaterialAsync("Fig fragrance oil", MaterialKind.FragranceOil, density: 0.98m),
                await studio.MaterialAsync("Soy wax", MaterialKind.Wax),
                await studio.MaterialAsync("Bottle", MaterialKind.Bottle, StockUnit.Each),
            ];
            await studio.RequireAsync(materials[1], PaperKind.Sds);
            return new Walk(studio, random, supplier, materials);
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
                case < 50:
                    await AdjustAsync();
                    break;
                case < 70:
                    await CountAsync();
                    break;
                case < 88:
                    await ReverseAsync();
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
                Line(materials[random.Next(3)], random.Next(0, 6), (AmountUnit)random.Next(10), random.Next(-1, 500))).ToArray();
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
                _shelf.Add(new ModelLot { Id = lot.LotId, Unit = row.Unit, OnHand = row.OnHand, LastEntry = row.LastMovement });
                _entries.Add((_shelf[^1], row.LastMovement, row.OnHand));
            }
        }

        private static long Expected(DeliveryLineTyped line, StockUnit unit) =>
            AmountConversion.ToStock(line.Quantity, line.Unit, unit, new Density(0.98m)) is ConversionResult.Converted read ? read.Amount.Units : -1;

        private async Task AdjustAsync()
        {
            var lot = Pick();
            var most = lot.Unit == StockUnit.Gram ? 400_000 : 40;
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
            switch (random.Next(6))
            {
                case 0:
                    Tally(await _lots.ReleaseAsync(Somebody, new ReleaseLot { LotId = lot.Id }), out _);
                    break;
                case 1:
                    Tally(await _lots.HoldAsync(Somebody, new HoldLot { LotId = lot.Id, Reason = random.Next(4) == 0 ? "" : "random" }), out _);
                    break;
                case 2:
                    Tally(await _lots.LiftHoldAsync(Somebody, new LiftHold { LotId = lot.Id, Reason = "random" }), out _);
                    break;
                case 3:
                    Tally(await _lots.QuarantineAsync(Somebody, new QuarantineLot { LotId = lot.Id, Reason = "random" }), out _);
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
            value = default;
            return false;
        }
    }

    private sealed class ModelLot
    {
        public required Guid Id { get; init; }
        public required StockUnit Unit { get; init; }
        public long OnHand { get; set; }
        public long LastEntry { get; set; }
    }
}
