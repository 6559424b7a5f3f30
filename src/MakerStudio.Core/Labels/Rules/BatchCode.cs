using MakerStudio.Core.Workings;

namespace MakerStudio.Core.Labels.Rules;

/// <summary>The batch, so that one pack leads back to everything that went into it.</summary>
public sealed class BatchCode : LabelRule
{
    public override string Key => "batch";

    public override string Title => "Batch";

    public override IReadOnlyList<Citation> Sources { get; } = [new("Reg. (EU) 2023/988, Art. 9(5)", DataStatus.Memory)];

    public override LabelExample Example => new("batch RS-1", LabelExamples.Spray, ElementState.There, "Batch\u00a0RS-1");

    public override LabelElement Judge(LabelFacts facts)
    {
        ArgumentNullException.ThrowIfNull(facts);
        return facts.Batch is { } batch
            ? There("batch record", [LabelText.Of($"Batch\u00a0{batch.Code}", isBold: true)])
            : Missing("batch record", "It comes with the batch the label is printed for.");
    }
}
