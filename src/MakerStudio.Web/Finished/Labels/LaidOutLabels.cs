using MakerStudio.Core.Labels;
using MakerStudio.Services.Labels;

namespace MakerStudio.Web.Finished;

/// <summary>Labels as their pages and their files show them.</summary>
internal static class LaidOutLabels
{
    /// <summary>Where no labels are chosen yet it is shown on one of the size that the law wishes for.</summary>
    public static LabelStock Wished { get; } = new(52m, 74m, null);

    /// <summary>Null while it has no content.</summary>
    public static LabelLayout? LaidOut(this BatchLabel label, DateOnly? bestBefore) => label.Facts is { } facts
        ? LabelPress.LayOut(facts with { Batch = facts.Batch! with { BestBefore = bestBefore } }, label.Stock?.Stock ?? Wished) : null;

    /// <summary>With the words as they were kept last; null while it has no content.</summary>
    public static LabelLayout? LaidOut(this FormulaLabel label) => label.Facts is { } facts
        ? LabelPress.LayOut(facts with { Batch = FormulaLabels.SampleBatch }, label.Stock ?? Wished) : null;
}
