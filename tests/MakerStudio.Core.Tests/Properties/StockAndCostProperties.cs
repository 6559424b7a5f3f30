using CsCheck;
using MakerStudio.Core.Costing;
using MakerStudio.Core.Quantities;
using MakerStudio.Core.Stock;

namespace MakerStudio.Core.Tests.Properties;

public class StockAndCostProperties
{
    private static readonly DateOnly Today = new(2026, 11, 25);

    private static readonly Gen<decimal> Money = Gen.Int[0, 1_000_000].Select(cents => cents / 100m);

    private static readonly Gen<decimal> Weight = Gen.Int[1, 1_000_000].Select(grams => grams / 1000m);

    private static readonly Gen<LotOnShelf> AnyLot = Gen.Select(
        Gen.Guid,
        Gen.Int[0, 99],
        Gen.Enum<LotStatus>(),
        Gen.Long[0, 50],
        Gen.Int[-3, 6],
        Gen.Bool,
        (id, number, status, milligrams, expiresIn, open) => new LotOnShelf(
            id,
            $"P-{number}",
            status,
            new StockAmount(milligrams, StockUnit.Gram),
            expiresIn == 6 ? null : Today.AddDays(expiresIn),
            open,
            Today.AddDays(-number)));

    [Fact]
    public void FreightShares_AddUpExactly_AndEachIsWithinACoinOfItsPart() =>
        Gen.Select(Money, Weight.Array[1, 20]).Sample((freight, weights) =>
        {
            var shares = Apportionment.Share(freight, weights);
            var total = weights.Sum();
            return shares.Sum() == freight
                && shares.Zip(weights).All(p => Math.Abs(p.First - freight * p.Second / total) < 0.01m);
        });

    [Fact]
    public void FreightShares_DoNotDependOnTheOrderOfTheLines() =>
        // Lines of equal weight may swap the last coin between them, so compare shares weight by weight.
        Gen.Select(Money, Weight.Array[1, 20]).Sample((freight, weights) =>
        {
            var there = Pairs(freight, weights);
            var back = Pairs(freight, [.. weights.Reverse()]);
            return there.SequenceEqual(back);
        });

    [Fact]
    public void Landed_TotalEqualsTheBill() =>
        Gen.Select(Money, Gen.Select(Money, Weight, Money, Money, Weight).Array[1, 12]).Sample((freight, rows) =>
        {
            var lines = rows.Select(r => new InvoiceLine(r.Item1, r.Item2, r.Item3, r.Item4, 0, r.Item5)).ToList();
            var bill = freight + lines.Sum(l => l.Price + l.Duty + l.Surcharge);
            return LandedCost.Allocate(lines, freight, FreightBasis.Weight).Total == bill;
        });

    [Fact]
    public void PickPlan_NeverTakesMoreThanIsThere_AndGivesAllThereIs() =>
        Gen.Select(Gen.Long[0, 300], AnyLot.Array[0, 12]).Sample((wanted, lots) =>
        {
            var plan = LotChoice.For(new StockAmount(wanted, StockUnit.Gram), lots, Today);
            var usable = lots.Where(MayBeUsed).Sum(l => l.OnHand.Units);
            var picked = plan.Picks.Sum(p => p.Amount.Units);
            return picked == Math.Min(wanted, usable)
                && picked + plan.Shortfall.Units == wanted
                && plan.Picks.All(p => p.Amount.IsPositive && p.Amount.Units <= Of(lots, p).OnHand.Units)
                && plan.Picks.All(p => MayBeUsed(Of(lots, p)))
                && plan.Picks.Select(p => p.LotId).Distinct().Count() == plan.Picks.Count;
        });

    [Fact]
    public void PickPlan_NeverTouchesALaterLotWhileAnEarlierHasStock() =>
        Gen.Select(Gen.Long[0, 300], AnyLot.Array[0, 12]).Sample((wanted, lots) =>
        {
            var plan = LotChoice.For(new StockAmount(wanted, StockUnit.Gram), lots, Today);
            var taken = plan.Picks.ToDictionary(p => p.LotId, p => p.Amount.Units);
            var latest = plan.Picks.Select(p => Expiry(Of(lots, p))).DefaultIfEmpty(DateOnly.MinValue).Max();
            return lots.Where(l => MayBeUsed(l) && Expiry(l) < latest)
                .All(l => taken.GetValueOrDefault(l.LotId) == l.OnHand.Units);
        });

    [Fact]
    public void BatchCost_TotalEqualsTheSumOfItsParts() =>
        Gen.Select(Uses, Uses, Money, Money, Gen.Int[0, 500]).Sample((materials, packaging, perBatch, perUnit, filled) =>
        {
            // 60 an hour makes a minute cost 1, so that the parts can be added up another way.
            var sheet = BatchCost.Of(materials, packaging, 45, 60m, perBatch, perUnit, filled, 0, 0);
            var parts = materials.Concat(packaging).Sum(u => u.Quantity * u.UnitCost) + 45 + perBatch + filled * perUnit;
            return sheet.Total == parts
                && sheet.Total == sheet.MaterialsTotal + sheet.PackagingTotal + sheet.Labour + sheet.Overhead;
        });

    [Fact]
    public void Variance_PartsAddUpExactly_AndYieldIsWhatTheBroughtPlanCostsBeyond() =>
        Gen.Select(Uses, Uses, Gen.Int[1, 60], Gen.Int[0, 9], Gen.Int[0, 9], Gen.Int[1, 60]).Sample((planned, used, filled, lost, dropped, plannedUnits) =>
        {
            var items = Enumerable.Range(0, 20).Select(_ => Guid.NewGuid()).ToList();
            var rejected = Math.Min(lost, filled);
            var plan = new PlannedBatch(
                [.. planned.Select((u, i) => new PlannedLine(new(CostKind.Material, items[i]), u.Label, u.Quantity, u.UnitCost, i % 3 == 0))], plannedUnits, plannedUnits);
            var actual = BatchRollUp.Of(new(
                [.. used.Select((u, i) => new LotUse(items[i], u.Label, "any", u.Quantity, u.UnitCost))], [], 7m, 20m, 1m, 0.1m,
                filled, rejected, 0, null, 0m, 0m, Math.Min(dropped, filled - rejected)));
            var variance = BatchVariance.Of(plan, actual);
            var brought = planned.Select((u, i) => u.Cost * (i % 3 == 0 ? filled : 1)).Sum();
            return variance.Difference == variance.Price + variance.Quantity + variance.Yield - variance.Abnormal
                && Math.Abs(variance.Yield - (brought - variance.Planned)) < 1e-8m
                && actual.InStock + actual.Expensed == actual.Total;
        });

    private static Gen<CostedUse[]> Uses =>
        Gen.Select(Weight, Money, (quantity, cost) => new CostedUse("Any", quantity, cost)).Array[0, 10];

    private static IEnumerable<(decimal, decimal)> Pairs(decimal freight, decimal[] weights) =>
        weights.Zip(Apportionment.Share(freight, weights)).Order();

    // Said anew here, so that the rule is not checked against itself.
    private static bool MayBeUsed(LotOnShelf lot) =>
        lot.Status == LotStatus.Released && Expiry(lot) >= Today && lot.OnHand.Units > 0;

    private static DateOnly Expiry(LotOnShelf lot) => lot.EffectiveExpiry ?? DateOnly.MaxValue;

    private static LotOnShelf Of(LotOnShelf[] lots, LotPick pick) => lots.Single(l => l.LotId == pick.LotId);
}
