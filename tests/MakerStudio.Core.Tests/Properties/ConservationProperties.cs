using CsCheck;
using MakerStudio.Core.Costing;
using MakerStudio.Core.Finished;
using MakerStudio.Core.Stock;

namespace MakerStudio.Core.Tests.Properties;

public class ConservationProperties
{
    private const int Operations = 10_000;

    private static readonly DateTimeOffset Start = new(2026, 1, 1, 0, 0, 0, TimeSpan.Zero);
    private static readonly FinancialYears Years = new(4, 6, TimeZoneInfo.Utc);

    private static readonly UnitMoveKind[] Moves =
        [.. UnitRules.All.Where(r => r.Effect is not (BookEffect.FromBatch or BookEffect.Kit) && r.Kind is not (UnitMoveKind.RejectedAtFilling or UnitMoveKind.RetainedAtFilling)).Select(r => r.Kind)];

    /// <summary>Ins and outs by the hour, some before anything is there; every fifth out is undone later.</summary>
    private static readonly Gen<ValuedMovement[]> Movements = Gen.Select(Gen.Int[-9, 9], Gen.Int[0, 99_999], Gen.Int[0, 3], Gen.Int[0, 20_000])
        .Where(m => m.Item1 != 0).Array[1, 30].Select(rows => rows.Select((m, i) =>
            new ValuedMovement(i, Start.AddHours(m.Item4), $"{m.Item3}", m.Item1, m.Item1 > 0 ? m.Item2 / 100m : 0m)).ToArray());

    [Theory]
    [InlineData(1)]
    [InlineData(2)]
    [InlineData(3)]
    public void TenThousandRandomOperations_LoseNothing(int run)
    {
        var random = new Random(run);
        var studio = new LedgerModel();
        var done = new Dictionary<string, int>();
        for (var i = 0; i < Operations; i++)
        {
            var what = Step(studio, random);
            done[what] = done.GetValueOrDefault(what) + 1;
            var check = Conservation.Check(studio.Parts);
            Assert.True(check.Difference == 0, $"after {i} operations, the last {what}, {check.Difference} is missing");
        }

        Assert.True(studio.CountsAgree);
        Assert.True(studio.Parts is { Materials: > 0, WorkInProgress: > 0, Finished: > 0, CostOfSales: > 0, Expensed: > 0 });
        // A model in which some operation never happens would prove nothing about it.
        string[] must = ["receive", "use", "spill", "work", "drop", "fill", "kits", "kits undone", "relearn", .. Moves.Select(m => $"{m}")];
        Assert.DoesNotContain(must, m => done.GetValueOrDefault(m) == 0);
    }

    [Fact]
    public void EveryMethod_ReceivedIsEndingAndIssued_AtAnyMoment_InAnyOrderOfTheList() =>
        Gen.Select(Movements, Gen.Enum<ValuationMethod>(), Gen.Int[0, 20_000]).Sample((movements, method, hour) =>
        {
            var value = Valuation.Of(method, movements, Start.AddHours(hour), Years);
            var again = Valuation.Of(method, movements.Reverse(), Start.AddHours(hour), Years);
            return value.Received == value.Ending + value.Issued
                && value.Issued == value.Issues.Values.Sum()
                && value.Issues.Values.All(v => v >= 0)
                && again.Ending == value.Ending && again.Issued == value.Issued
                && value.Quantity == movements.Where(m => m.At <= Start.AddHours(hour)).Sum(m => m.Quantity);
        });

    [Fact]
    public void EveryMethod_AnEntryAndItsReversal_ChangeNothing() =>
        Gen.Select(Movements, Gen.Enum<ValuationMethod>(), Gen.Int[0, 29]).Sample((movements, method, at) =>
        {
            var extra = movements[at % movements.Length] with { Id = 1000 };
            var undo = extra with { Id = 1001, Quantity = -extra.Quantity, Reverses = 1000, At = Start.AddHours(20_001) };
            var with = Valuation.Of(method, [.. movements, extra, undo], Start.AddYears(9), Years);
            var without = Valuation.Of(method, movements, Start.AddYears(9), Years);
            return with.Ending == without.Ending && with.Received == without.Received && with.Issued == without.Issued;
        });

    [Fact]
    public void Fifo_MatchesUnitByUnit() =>
        Gen.Select(Gen.Select(Gen.Int[1, 9], Gen.Int[0, 9999]).Array[1, 8], Gen.Int[1, 72]).Sample((bought, wanted) =>
        {
            var ins = bought.Select((b, i) => new ValuedMovement(i, Start.AddHours(i), "any", b.Item1, b.Item1 * b.Item2)).ToList();
            var units = bought.SelectMany(b => Enumerable.Repeat((decimal)b.Item2, b.Item1)).ToList();
            var sold = Math.Min(wanted, units.Count);
            var value = Valuation.Of(ValuationMethod.Fifo, [.. ins, new(99, Start.AddHours(99), "any", -sold)], Start.AddHours(99), Years);
            return Math.Abs(value.Issued - units.Take(sold).Sum()) < 0.000001m;
        });

    [Fact]
    public void MovingAverage_WithoutRounding_IsTheAverageOfWhatIsThere() =>
        Movements.Sample(movements =>
        {
            // Said anew in doubles, without pools.
            var (quantity, value, short_) = (0.0, 0.0, false);
            foreach (var m in movements.OrderBy(m => m.At).ThenBy(m => m.Id))
            {
                value = m.Quantity > 0 ? value + (double)m.Value : quantity <= 0 ? value : value * (1 + (double)m.Quantity / quantity);
                quantity += (double)m.Quantity;
                short_ |= quantity < 0;
            }

            return short_ || Math.Abs(value - (double)Valuation.Of(ValuationMethod.MovingAverage, movements, Start.AddYears(9), Years).Ending) < 1e-6;
        });

    [Fact]
    public void Pool_SplitInAnyWay_KeepsItsMoney() =>
        Gen.Select(Gen.Int[1, 100_000], Gen.Int[0, 1_000_000], Gen.Int[1, 100_000].Array[0, 20]).Sample((quantity, cents, takes) =>
        {
            var pool = new ValuePool(quantity, cents / 100m);
            var taken = 0m;
            foreach (var take in takes)
            {
                (var part, pool) = pool.Take(Math.Min(take, pool.Quantity));
                taken += part.Value;
            }

            return taken + pool.Value == cents / 100m && pool.Value >= 0 && (pool.Quantity > 0 || pool.Value == 0);
        });

    [Fact]
    public void RoundTogether_AddsUpToTheRoundedSum_EachWithinACoin() =>
        Gen.Int[-1_000_000, 1_000_000].Array[1, 20].Sample(parts =>
        {
            var amounts = parts.Select(p => p / 7m / 100m).ToList();
            var rounded = Apportionment.RoundTogether(amounts);
            return rounded.Sum() == Math.Round(amounts.Sum(), 2, MidpointRounding.AwayFromZero)
                && rounded.Zip(amounts).All(p => Math.Abs(p.First - p.Second) < 0.01m && p.First % 0.01m == 0);
        });

    /// <summary>A total that is printed elsewhere may be a few coins off: the lines still add up to it, in whole coins.</summary>
    [Fact]
    public void RoundTogether_ToAPrintedTotal_AddsUpToIt() =>
        Gen.Select(Gen.Int[-1_000_000, 1_000_000].Array[1, 20], Gen.Int[-40, 40]).Sample((parts, off) =>
        {
            var amounts = parts.Select(p => p / 7m / 100m).ToList();
            var total = Math.Round(amounts.Sum(), 2) + off * 0.01m;
            var rounded = Apportionment.RoundTogether(amounts, sum: total);
            return rounded.Sum() == total && rounded.Zip(amounts).All(p => p.First % 0.01m == 0 && Math.Abs(p.First - p.Second) <= 0.01m * (2 + Math.Abs(off) / parts.Length));
        });

    private static string Step(LedgerModel studio, Random random)
    {
        switch (random.Next(16))
        {
            case 0 or 1:
                studio.Receive(random.Next(1, 5_000_000), random.Next(0, 100_000) / 100m);
                return "receive";
            case 2:
                studio.Batches.Add(0m);
                return "begin";
            case 3 or 4 when studio.Lots.Count > 0 && studio.Batches.Count > 0:
                var lot = random.Next(studio.Lots.Count);
                studio.Use(lot, random.Next(studio.Batches.Count), Part(studio.Lots[lot].Quantity, random));
                return "use";
            case 5 when studio.Lots.Count > 0 && random.Next(4) == 0:
                var spilled = random.Next(studio.Lots.Count);
                studio.Spill(spilled, Part(studio.Lots[spilled].Quantity, random));
                return "spill";
            case 6 when studio.Batches.Count > 0:
                studio.Work(random.Next(studio.Batches.Count), random.Next(0, 9_000) / 100m);
                return "work";
            case 7 when studio.Batches.Count > 0 && random.Next(5) == 0:
                studio.Drop(random.Next(studio.Batches.Count), random.Next(1, 101) / 100m);
                return "drop";
            case 8 when studio.Batches.Count > 3:
                var filled = random.Next(1, 60);
                var rejected = random.Next(0, Math.Min(filled + 1, 4));
                studio.Fill(random.Next(studio.Batches.Count), filled, rejected, random.Next(0, filled - rejected + 1) % 3);
                return "fill";
            case 9 when studio.Made.Count > 1 && studio.Lots.Count > 0:
                var boxes = random.Next(studio.Lots.Count);
                return studio.MakeKits(random.Next(1, 6), Any(studio.Made, random), Any(studio.Made, random), 2, boxes, Part(studio.Lots[boxes].Quantity, random)) ? "kits" : "refused";
            case 10 when studio.Kits.Count > 0:
                var kit = random.Next(studio.Kits.Count);
                return studio.UndoKits(kit, random.Next(1, studio.Kits[kit].Kit.Kits + 1)) ? "kits undone" : "refused";
            case 11 when studio.Made.Count > 0 && random.Next(4) == 0:
                return studio.Relearn(Any(studio.Made, random), random.Next(0, 5_000) / 1000m) ? "relearn" : "refused";
            case >= 12 when studio.Made.Count > 0:
                return Move(studio, random);
            default:
                return "nothing";
        }
    }

    private static string Move(LedgerModel studio, Random random)
    {
        var kind = Moves[random.Next(Moves.Length)];
        var rule = UnitRules.For(kind);
        UnitStatus? status = rule.From.Count > 1 ? rule.From[random.Next(rule.From.Count)] : null;
        var shop = rule.FromPlace == PlaceRule.Shop || rule.ToPlace == PlaceRule.Shop || (rule.FromPlace == PlaceRule.HereOrShop && random.Next(3) == 0);
        return studio.Move(new(Any(studio.Made, random), kind, random.Next(1, 9), status, shop ? LedgerModel.Shop : null)) ? $"{kind}" : "refused";
    }

    private static decimal Part(decimal quantity, Random random) =>
        random.Next(5) == 0 ? quantity : decimal.Floor(quantity * random.Next(0, 100) / 100m);

    private static Guid Any(List<Guid> ids, Random random) => ids[random.Next(ids.Count)];
}
