using MakerStudio.Core.Blending;
using MakerStudio.Core.FlashPoints;
using MakerStudio.Core.Hazards;
using MakerStudio.Core.Workings;

namespace MakerStudio.Core.Assessing;

/// <summary>What an assessment could not say, gathered from all its parts.</summary>
internal static class AssessmentUnknowns
{
    /// <summary>Shares are kept to 12 decimals; a sum is off when it is so by more than their last digits.</summary>
    private const decimal SumTolerance = 0.000001m;

    internal static IReadOnlyList<NotKnown> Of(Assessment assessment) =>
    [
        .. Sum(assessment.Typed),
        .. NotRead(assessment.Formula),
        .. OfDensity(assessment.Density),
        .. OfFlash(assessment.Flash),
        .. assessment.Hazards.Unknown.Select(each => new NotKnown(each.What, each.Means, each.Percent, [])),
        .. SealedSpray(assessment),
        .. assessment.Voc.Unknown,
        .. assessment.Fragrance.Unknown,
        .. assessment.Allergens.Unknown,
    ];

    internal static bool AddsUp(AssessedFormula formula) => Math.Abs(formula.Lines.Sum(line => line.Fraction) - 1) <= SumTolerance;

    private static IEnumerable<NotKnown> Sum(AssessedFormula typed)
    {
        if (!AddsUp(typed))
        {
            string percent = (100 * typed.Lines.Sum(line => line.Fraction)).ToString("0.####", System.Globalization.CultureInfo.InvariantCulture);
            yield return new(
                $"The lines come to {percent} %, not to 100 %.",
                "Everything here is worked out as if they stood to one another as they do and made up the whole. Correct the amounts.",
                null,
                []);
        }
    }

    private static IEnumerable<NotKnown> NotRead(AssessedFormula formula) =>
        from line in formula.Lines
        where line.Fraction > 0
        from said in PreparedMaterial.Of(line.Material).NotRead
        select new NotKnown(
            $"{line.Material.Name}: {said}",
            "It is left out of the classification, which may be too mild. Correct it on the material's page.",
            100 * line.Fraction,
            [line.LineId]);

    private static IEnumerable<NotKnown> OfDensity(DensityResult density) => density is DensityResult.Unknown unknown
        ? unknown.Why.Select(why => new NotKnown(why, "The density, and with it % by volume and the fill weight, cannot be worked out until then.", null, []))
        : [];

    private static IEnumerable<NotKnown> OfFlash(FlashPointResult? flash) => flash switch
    {
        FlashPointResult.Unknown unknown => [new(unknown.Why, "A closed-cup test decides.", null, [])],
        FlashPointResult.Estimated { Decision.IsDecided: false } estimated => [new(estimated.Decision.Says, "The stricter class is taken meanwhile.", null, [])],
        FlashPointResult.NoneFound { LeftOut.Count: > 0 } none => [new(none.Says, "A closed-cup test decides.", null, [])],
        _ => [],
    };

    private static IEnumerable<NotKnown> SealedSpray(Assessment assessment)
    {
        if (assessment.Formula.HasSealedSpray is null && assessment.Hazards.In(HazardClass.Aspiration) is not null && assessment.Formula.Kind.IsSprayed)
        {
            yield return new(
                "Whether the sprayer is sealed on is not said.",
                "It is taken as one that can be unscrewed, so H304 stands on the label and the closure is to be child-resistant.",
                null,
                []);
        }
    }
}
