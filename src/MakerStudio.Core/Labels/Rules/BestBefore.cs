using System.Globalization;
using MakerStudio.Core.Workings;

namespace MakerStudio.Core.Labels.Rules;

/// <summary>Month and year, where the maker gives one. No law read here asks for it on home fragrance.</summary>
public sealed class BestBefore : LabelRule
{
    public override string Key => "best-before";

    public override string Title => "Best before";

    public override IReadOnlyList<Citation> Sources { get; } = [new("The maker's own promise", DataStatus.CommonPractice)];

    public override LabelExample Example => new("to the end of October 2027", LabelExamples.Spray, ElementState.There, "best before\u00a010/2027");

    public override LabelElement Judge(LabelFacts facts)
    {
        ArgumentNullException.ThrowIfNull(facts);
        return facts.Batch?.BestBefore is { } date
            ? There("typed for this batch", $"best before\u00a0{date.ToString("MM/yyyy", CultureInfo.InvariantCulture)}")
            : NotNeeded("typed for the batch", "No date is given for this batch.");
    }
}
