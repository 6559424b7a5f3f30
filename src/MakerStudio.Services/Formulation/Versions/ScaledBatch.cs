using MakerStudio.Core.Blending;
using MakerStudio.Core.Quantities;

namespace MakerStudio.Services.Formulation;

/// <summary>The sums behind scaling a version; pure.</summary>
internal static class ScaledBatch
{
    public static Outcome<ScalePlan> Plan(ScaleWish wish, VersionRow version, Worked worked, SizeRow? size, UsableLot? lot, Mass roundUpTo) => wish.By switch
    {
        ScaleBy.Bottles => ForBottles(wish.Bottles!.Value, version, size, size is null ? null : worked.Fill(size), roundUpTo),
        ScaleBy.Mass => Scaling.ToMass(Mass.FromGrams(wish.Grams!.Value)),
        _ => ForLot(version, worked, lot),
    };

    public static ScaleSheet Sheet(
        ScalePlan plan, VersionRow version, Worked worked, SizeRow? size, IReadOnlyDictionary<Guid, LineMaterial> materials)
    {
        var masses = plan.Lines([.. worked.Shares.Select(s => s.Fraction)]);
        var needs = version.Lines.Zip(masses).GroupBy(l => l.First.MaterialId).ToDictionary(g => g.Key, g => g.Select(l => l.Second).Sum());
        var lines = version.Lines.Zip(worked.Shares, masses).Select(l =>
        {
            var material = materials[l.First.MaterialId];
            return new ScaledLine(
                l.First.LineId, material, l.Second.PercentShown, l.Third, Missing(needs[material.Id], material), l.Third.Grams * material.UnitCost);
        }).ToArray();
        var fill = size is null ? null : worked.Fill(size);
        var bottles = plan.Bottles ?? Filled(plan.Total, fill, version.ExpectedLossPercent);
        return new(
            fill, plan.Needed, plan.Total, bottles, version.ExpectedLossPercent, lines, Parts(size, bottles ?? 0, materials),
            lines.Any(l => l.Cost is null) ? null : lines.Sum(l => l.Cost!.Value),
            worked.Largest, worked.Largest is { } largest ? Filled(largest.Total, fill, version.ExpectedLossPercent) : null,
            size is { Parts.Count: > 0 } ? size.Parts.Min(p => Math.Max(0, materials[p.MaterialId].Available) / p.CountPerUnit) : null);
    }

    private static Outcome<ScalePlan> ForBottles(int bottles, VersionRow version, SizeRow? size, Mass? fill, Mass roundUpTo)
    {
        if (size is null)
        {
            return new NotFound("This size");
        }

        if (fill is not { } mass)
        {
            return new Because(
                "The weight of one fill is not known: the mixture has no density.",
                "Give every material a density, or measure the mixture and write its density down.");
        }

        var loss = version.ExpectedLossPercent / 100m;
        return Scaling.WhyNot(bottles, mass, loss, roundUpTo) is { } why
            ? new Because(why)
            : Scaling.ToBottles(bottles, mass, loss, roundUpTo);
    }

    /// <summary>A lot is used up where its material stands on one line or on several.</summary>
    private static Outcome<ScalePlan> ForLot(VersionRow version, Worked worked, UsableLot? lot)
    {
        if (lot is null)
        {
            return new Because("This lot cannot be weighed from today.", "Choose a lot of this formula that is released, unexpired and not empty.");
        }

        var share = version.Lines.Zip(worked.Shares).Where(l => l.First.MaterialId == lot.MaterialId).Sum(l => l.Second.Fraction);
        return Scaling.LargestFrom([share, 1m - share], [Mass.FromMilligrams(lot.OnHand), null]) is { } largest && largest.Total > Mass.Zero
            ? Scaling.ToMass(largest.Total)
            : new Because("Nothing of this lot goes into the formula.", "Choose a lot of one of its lines.");
    }

    private static ScaledPart[] Parts(SizeRow? size, int bottles, IReadOnlyDictionary<Guid, LineMaterial> materials) =>
        [.. (size?.Parts ?? []).Select(p =>
        {
            var needed = (long)p.CountPerUnit * bottles;
            return new ScaledPart(materials[p.MaterialId], needed, Math.Max(0, needed - Math.Max(0, materials[p.MaterialId].Available)));
        })];

    private static Mass Missing(Mass needed, LineMaterial material)
    {
        var missing = needed - Mass.FromMilligrams(Math.Max(0, material.Available));
        return missing > Mass.Zero ? missing : Mass.Zero;
    }

    /// <summary>Whole fills a batch gives after its expected loss.</summary>
    private static int? Filled(Mass total, Mass? fill, decimal lossPercent) => fill is { } mass && mass > Mass.Zero
        ? (int)decimal.Floor(total.Milligrams * (1m - (lossPercent / 100m)) / mass.Milligrams)
        : null;
}
