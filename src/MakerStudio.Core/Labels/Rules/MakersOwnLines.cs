using MakerStudio.Core.Workings;

namespace MakerStudio.Core.Labels.Rules;

/// <summary>Whatever else the maker wants to say.</summary>
public sealed class MakersOwnLines : LabelRule
{
    public override string Key => "own-lines";

    public override string Title => "Your own lines";

    public override IReadOnlyList<Citation> Sources { get; } = [new("The maker's own words", DataStatus.CommonPractice)];

    public override LabelExample Example => new(
        "one line", LabelExamples.Spray with { Wording = LabelWording.Usual with { ExtraLines = ["Shake before use."] } }, ElementState.There, "Shake before use.");

    public override LabelElement Judge(LabelFacts facts)
    {
        ArgumentNullException.ThrowIfNull(facts);
        List<LabelText> lines = [.. facts.Wording.ExtraLines.Select(line => line.Trim()).Where(line => line.Length > 0).Select(line => LabelText.Of(line))];
        return lines.Count == 0 ? NotNeeded("your words", "None typed.") : There("your words", lines);
    }
}
