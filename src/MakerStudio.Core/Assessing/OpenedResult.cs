using MakerStudio.Core.Blending;
using MakerStudio.Core.FlashPoints;
using MakerStudio.Core.Hazards;
using MakerStudio.Core.Workings;

namespace MakerStudio.Core.Assessing;

/// <summary>A result with the steps that made it, for a page that opens it.</summary>
/// <param name="Key">"density", "alcohol", "flash-point", "hazards", "voc", "fragrance", "allergens", "advice".</param>
/// <param name="Title">As a heading.</param>
/// <param name="Steps">In the order they were taken; each names its rule, its source and, where it is about one, its line.</param>
public sealed record OpenedResult(string Key, string Title, IReadOnlyList<WorkingStep> Steps);

public static class OpenedResults
{
    /// <summary>Every result of the assessment that has steps to show.</summary>
    public static IReadOnlyList<OpenedResult> Workings(this Assessment assessment)
    {
        ArgumentNullException.ThrowIfNull(assessment);
        OpenedResult[] all =
        [
            new("density", "Density", assessment.Density is DensityResult.Known known ? known.Workings : []),
            new("alcohol", "Alcohol", assessment.Alcohol.Workings),
            new("flash-point", "Flash point", Steps(assessment.Flash)),
            new("hazards", "Hazard classes", assessment.Hazards.Workings()),
            new("voc", "VOC", assessment.Voc.Workings),
            new("fragrance", "Fragrance limits", assessment.Fragrance.Workings),
            new("allergens", "Declared allergens", assessment.Allergens.Workings),
            new("advice", "Advice", [.. assessment.Advice.SelectMany(given => given.Workings)]),
        ];
        return [.. all.Where(result => result.Steps.Count > 0)];
    }

    private static IReadOnlyList<WorkingStep> Steps(FlashPointResult? flash) => flash switch
    {
        FlashPointResult.Measured measured => measured.Workings,
        FlashPointResult.Estimated estimated => estimated.Workings,
        FlashPointResult.NoneFound none => none.Workings,
        _ => [],
    };
}
