using MakerStudio.Core.Hazards.Label;
using MakerStudio.Core.Workings;

namespace MakerStudio.Core.Labels.Rules;

/// <summary>At most six precautionary statements; the one on disposal is completed by the maker.</summary>
public sealed class PrecautionsSaid : LabelRule
{
    /// <summary>Stands in a statement for what the maker must say.</summary>
    private const string Open = "…";

    public override string Key => "precautions";

    public override string Title => "Precautions";

    public override IReadOnlyList<Citation> Sources { get; } = [PrecautionChoice.Source, SmallPackRelief.Source, UsPrecautions.Source];

    public override LabelExample Example => new(
        "a US spray", LabelExamples.UsSpray, ElementState.There,
        "Keep away from heat, sparks and open flames. Keep out of eyes. First aid: rinse with water for 15 minutes; if it still hurts, get medical help. Keep out of the reach of children.");

    public override LabelElement Judge(LabelFacts facts)
    {
        ArgumentNullException.ThrowIfNull(facts);
        IReadOnlyList<CodedText> chosen = facts.Hazards.Precautions;
        if (chosen.Count == 0)
        {
            return NotNeeded("assessment", "No class asks for one.");
        }

        List<CodedText> said = [.. chosen.Where(each => !SmallPack.LeavesOut(facts, each.Code)).Select(each => Completed(each, facts.Wording.Disposal.Trim()))];
        if (said.Find(each => each.Text.Contains(Open, StringComparison.Ordinal)) is { } open)
        {
            return Missing("assessment", $"{open.Code} wants you to say where the empty pack goes; enter it in the label's words.");
        }

        string count = $"{said.Count} of {chosen.Count}";
        return said.Count == 0
            ? NotNeeded("assessment", SmallPack.Note(facts, chosen)!)
            : There($"assessment, {count}", [CodedParagraph.Of(said)], SmallPack.Note(facts, chosen));
    }

    private static CodedText Completed(CodedText statement, string disposal) => disposal.Length == 0
        ? statement
        : statement with { Text = statement.Text.Replace($" {Open}", $" {disposal.TrimEnd('.')}.", StringComparison.Ordinal) };
}
