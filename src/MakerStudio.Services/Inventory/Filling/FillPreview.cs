using MakerStudio.Core.Costing;
using MakerStudio.Core.Filling;
using MakerStudio.Core.Quantities;
using MakerStudio.Core.Stock;

namespace MakerStudio.Services.Inventory;

/// <param name="Unit">Name of one piece of packaging.</param>
/// <param name="Missing">Pieces that no usable lot can give; 0 when there are enough.</param>
/// <param name="Cost">Of the pieces there are, at each lot's own landed cost.</param>
public sealed record PartUse(string Unit, long Needed, long Usable, long Missing, IReadOnlyList<string> Lots, decimal Cost);

/// <summary>
/// What a filling would come to, from the numbers on the form and the real weighings. The same sums run again when it
/// is recorded; nothing here is rounded.
/// </summary>
/// <param name="InUnits">Mass in the filled units; null while count or fill is missing.</param>
/// <param name="MassYield">Of what was weighed in.</param>
/// <param name="Left">Reached filling and is in no unit; below zero when more is filled than there was.</param>
/// <param name="Lost">Weighed in and did not reach filling.</param>
/// <param name="Sheet">Null until the count is known.</param>
public sealed record FillPreview(
    Mass? InUnits, decimal? MassYield, Mass? Left, Mass? Lost, IReadOnlyList<PartUse> Parts, BatchCostSheet? Sheet, CheckWeightSummary? Checks)
{
    public static FillPreview Of(FillForm form, RecordFill typed)
    {
        ArgumentNullException.ThrowIfNull(form);
        ArgumentNullException.ThrowIfNull(typed);
        var filled = typed.Filled is > 0 and <= RecordFillValidator.MostUnits ? typed.Filled : null;
        Mass? fill = InRange(typed.FillGrams);
        Mass? toFilling = InRange(typed.ToFillingGrams);
        Mass? inUnits = filled is { } count && fill is { } one ? one.Times(count) : null;
        var weighed = Mass.FromMilligrams(form.WeighedMilligrams);
        var parts = form.Parts.Select(p => UseOf(p, filled ?? 0, form.Today)).ToList();
        return new FillPreview(
            inUnits,
            inUnits is { } mass && !weighed.IsZero ? (decimal)mass.Milligrams / weighed.Milligrams : null,
            toFilling is { } reached && inUnits is { } gone ? reached - gone : null,
            toFilling is { } arrived ? weighed - arrived : null,
            [.. parts.Select(p => p.Use)],
            filled is { } n ? SheetOf(form, typed, n, [.. parts.SelectMany(p => p.Costs)]) : null,
            FillChecks.Summary(form.ProductKind, form.NominalMass, [.. typed.CheckWeightsGrams.Select(g => Mass.RoundGrams(g))]));
    }

    private static BatchCostSheet? SheetOf(FillForm form, RecordFill typed, int filled, IReadOnlyList<CostedUse> packaging) =>
        typed.Rejected < 0 || typed.Retained < 0 || (long)typed.Rejected + typed.Retained > filled || typed.LabourMinutes is < 0
            ? null
            : BatchCost.Of(
                form.Costs.Materials, packaging, typed.LabourMinutes ?? 0m, form.Costs.LabourRatePerHour, form.Costs.OverheadPerBatch,
                form.Costs.OverheadPerUnit, filled, typed.Rejected, typed.Retained);

    private static (PartUse Use, List<CostedUse> Costs) UseOf(FillPart part, int filled, DateOnly today)
    {
        var needed = (long)part.CountPerUnit * filled;
        var lots = part.Lots.ToDictionary(l => l.LotId, l => l.UnitCost);
        var plan = LotChoice.For(new StockAmount(needed, StockUnit.Each), part.Lots.Select(l => l.OnShelf()), today);
        var costs = plan.Picks.Select(p => new CostedUse(part.Name, p.Amount.Units, lots[p.LotId])).ToList();
        return (new PartUse(part.Name, needed, part.Usable(today), plan.Shortfall.Units, [.. plan.Picks.Select(p => p.Code)], costs.Sum(c => c.Cost)), costs);
    }

    private static Mass? InRange(decimal? grams) => grams is > 0 and < 10_000_000 ? Mass.RoundGrams(grams.Value) : null;
}
