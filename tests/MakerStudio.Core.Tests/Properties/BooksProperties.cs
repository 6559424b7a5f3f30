using CsCheck;
using MakerStudio.Core.Books;
using MakerStudio.Core.Finished;
using MakerStudio.Core.Stock;

namespace MakerStudio.Core.Tests.Properties;

/// <summary>Any history of a studio, valued by any method at any moment: nothing is lost.</summary>
public class BooksProperties
{
    private static readonly DateTimeOffset Start = new(2025, 11, 1, 0, 0, 0, TimeSpan.Zero);
    private static readonly FinancialYears Years = new(4, 6, TimeZoneInfo.Utc);

    [Fact]
    public void AnyHistory_AnyMethod_AnyMoment_LosesNothing() =>
        Gen.Select(Gen.Int[0, int.MaxValue - 1], Gen.Enum<ValuationMethod>(), Gen.Double[0, 1]).Sample(
            (run, method, part) =>
            {
                var history = History.Of(new Random(run), 250);
                var asOf = Start.AddHours(history.Hours * part);
                var books = StudioBooks.Of(method, history.Movements, history.Batches, history.Units, asOf, Years);
                return books.Check.Difference == 0
                    && books.Materials.Sum(m => m.Value) == books.Check.Parts.Materials
                    && books.Materials.All(m => m.Value >= 0) && books.Finished.All(f => f.Value >= 0 && f.Quantity >= 0)
                    && books.WorkInProgress.All(w => w.Value >= 0)
                    && (books.NotCovered.Count == 0 || method == ValuationMethod.SpecificLot);
            },
            iter: 300);

    /// <summary>What happened, in an order in which it could have happened.</summary>
    private sealed class History(Random random)
    {
        private readonly List<Guid> _materials = [.. Enumerable.Range(0, 4).Select(_ => Guid.NewGuid())];
        private readonly Dictionary<(Guid Material, string Lot), decimal> _lots = [];
        private readonly Dictionary<Guid, (List<BookCharge> Charges, List<BookLoss> Losses, DateTimeOffset? Closed)> _open = [];
        private readonly Dictionary<Guid, (int Here, int Sold)> _units = [];
        private long _id;

        public List<BookMovement> Movements { get; } = [];

        public List<BookUnits> Units { get; } = [];

        public List<BookBatch> Batches => [.. _open.Select(b => new BookBatch(b.Key, b.Value.Charges, [], b.Value.Losses, b.Value.Closed))];

        public int Hours { get; private set; }

        private DateTimeOffset Now => Start.AddHours(Hours);

        public static History Of(Random random, int steps)
        {
            var history = new History(random);
            for (var i = 0; i < steps; i++)
            {
                history.Hours += random.Next(0, 60);
                history.Step();
            }

            return history;
        }

        private void Step()
        {
            switch (random.Next(10))
            {
                case 0 or 1:
                    Add(_materials[random.Next(3)], $"P-{_id}", random.Next(1, 5000), random.Next(0, 50_000) / 100m, null);
                    break;
                case 2:
                    _open[Guid.NewGuid()] = ([], [], null);
                    break;
                case 3 or 4 when Open() is { } batch && Lot() is { } lot:
                    Add(lot.Material, lot.Lot, -Part(_lots[lot]), null, batch);
                    break;
                case 5 when Open() is { } worked:
                    _open[worked].Charges.Add(new(Now, random.Next(0, 5000) / 100m));
                    if (random.Next(4) == 0)
                    {
                        _open[worked].Losses.Add(new(Now, random.Next(0, 60) / 100m));
                    }

                    break;
                case 6 when Open() is { } done:
                    _open[done] = _open[done] with { Closed = Now };
                    Finish(done);
                    break;
                case 7 when Lot() is { } spilled:
                    Add(spilled.Material, spilled.Lot, -Part(_lots[spilled]), null, null);
                    if (random.Next(2) == 0)
                    {
                        var undone = Movements[^1];
                        Hours += random.Next(0, 60);
                        Add(undone.MaterialId, undone.Lot, -undone.Quantity, null, null, undone.Id);
                    }

                    break;
                default:
                    MoveUnits();
                    break;
            }
        }

        private void Finish(Guid batch)
        {
            switch (random.Next(4))
            {
                case 0:
                    // A pre-blend: a material that other batches then use.
                    Add(_materials[3], $"A-{_id}", random.Next(1, 3000), null, batch);
                    break;
                case 1:
                    break;
                default:
                    Post(batch, random.Next(1, 60), BookEffect.FromBatch);
                    break;
            }
        }

        private void MoveUnits()
        {
            if (_units.Count == 0)
            {
                return;
            }

            var (batch, (here, sold)) = _units.ElementAt(random.Next(_units.Count));
            var count = random.Next(1, 6);
            switch (random.Next(5))
            {
                case 0 or 1 when here >= count:
                    Post(batch, -count, BookEffect.CostOfSales);
                    _units[batch] = (here - count, sold + count);
                    break;
                case 2 when here >= count:
                    Post(batch, -count, BookEffect.Expensed);
                    break;
                case 3 when sold >= count:
                    Post(batch, count, BookEffect.BackFromSale);
                    _units[batch] = (here + count, sold - count);
                    break;
                case 4 when here >= 2 * count && Lot() is { } box:
                    var kit = Guid.NewGuid();
                    _open[kit] = ([], [], Now);
                    Add(box.Material, box.Lot, -Part(_lots[box]), null, kit);
                    Post(batch, -2 * count, BookEffect.Kit, kit);
                    Post(kit, count, BookEffect.Kit, kit);
                    if (random.Next(2) == 0)
                    {
                        Post(kit, -1, BookEffect.Kit, kit);
                        Post(batch, 2, BookEffect.Kit, kit);
                    }

                    break;
                default:
                    Post(batch, 1, BookEffect.Found);
                    break;
            }
        }

        private void Post(Guid batch, int count, BookEffect effect, Guid? kit = null)
        {
            Units.Add(new(++_id, Now, batch, count, effect, kit));
            var (here, sold) = _units.GetValueOrDefault(batch);
            _units[batch] = (here + count, sold);
        }

        private void Add(Guid material, string lot, decimal quantity, decimal? value, Guid? batch, long? reverses = null)
        {
            if (quantity != 0)
            {
                Movements.Add(new(++_id, Now, material, lot, quantity, value, batch, reverses));
                _lots[(material, lot)] = _lots.GetValueOrDefault((material, lot)) + quantity;
            }
        }

        private Guid? Open() => _open.Where(b => b.Value.Closed is null).Select(b => (Guid?)b.Key).OrderBy(_ => random.Next()).FirstOrDefault();

        private (Guid Material, string Lot)? Lot()
        {
            var full = _lots.Where(l => l.Value > 0).Select(l => l.Key).ToList();
            return full.Count == 0 ? null : full[random.Next(full.Count)];
        }

        private decimal Part(decimal quantity) => random.Next(4) == 0 ? quantity : decimal.Ceiling(quantity * random.Next(1, 100) / 100m);
    }
}
