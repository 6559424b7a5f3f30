using MakerStudio.Core.Workings;

namespace MakerStudio.Core.Labels.Rules;

/// <summary>A square code that leads from the pack to the batch's own record.</summary>
public sealed class SquareCode : LabelRule
{
    public override string Key => "square-code";

    public override string Title => "Square code";

    public override IReadOnlyList<Citation> Sources { get; } = [new("ISO/IEC 18004 (the symbol); the address is the studio's own", DataStatus.Memory)];

    public override LabelExample Example => new("a batch with an address: a picture, no words", LabelExamples.Spray, ElementState.There, "");

    public override LabelElement Judge(LabelFacts facts)
    {
        ArgumentNullException.ThrowIfNull(facts);
        return facts.Batch?.Address is { Length: > 0 } address
            ? There("batch record", [], address)
            : NotNeeded("batch record", "It comes with the batch the label is printed for.");
    }
}
