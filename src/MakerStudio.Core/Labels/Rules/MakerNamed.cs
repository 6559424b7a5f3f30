using MakerStudio.Core.Workings;

namespace MakerStudio.Core.Labels.Rules;

/// <summary>Name, address and telephone of who answers for it; in the US name and place of business.</summary>
public sealed class MakerNamed : LabelRule
{
    public override string Key => "maker";

    public override string Title => "Maker, address, phone";

    public override IReadOnlyList<Citation> Sources { get; } =
        [new("CLP Art. 17(1)(a)", DataStatus.Memory), new("Reg. (EU) 2023/988, Art. 9(6), also an electronic address", DataStatus.Memory), new("16 CFR 500.5", DataStatus.Memory)];

    public override LabelExample Example => new(
        "a maker in Europe", LabelExamples.Spray, ElementState.There, "Quince Yard Studio 4 Quince Yard 00000 Anytown tel.\u00a0000\u00a0000\u00a00000");

    public override LabelElement Judge(LabelFacts facts)
    {
        ArgumentNullException.ThrowIfNull(facts);
        bool needsPhone = !facts.IsUnitedStates;
        List<string> lacking =
        [
            .. string.IsNullOrWhiteSpace(facts.Maker.Address) ? ["the address"] : Array.Empty<string>(),
            .. needsPhone && string.IsNullOrWhiteSpace(facts.Maker.Phone) ? ["the telephone"] : Array.Empty<string>(),
        ];
        return lacking.Count > 0
            ? Missing("Studio", $"Enter {string.Join(" and ", lacking)} in Studio, under Settings.")
            : There("Studio", [LabelText.Of(facts.Maker.Name, isBold: true), .. Lines(facts)]);
    }

    private static IEnumerable<LabelText> Lines(LabelFacts facts)
    {
        foreach (string line in facts.Maker.Address!.Split('\n', StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries))
        {
            yield return LabelText.Of(line);
        }

        if (!string.IsNullOrWhiteSpace(facts.Maker.Phone))
        {
            yield return LabelText.Of($"tel.\u00a0{facts.Maker.Phone.Trim().Replace(' ', '\u00a0')}");
        }
    }
}
