using MakerStudio.Core.Assessing;
using MakerStudio.Core.Materials;
using MakerStudio.Core.Workings;

namespace MakerStudio.Core.Advice.Rules;

/// <summary>
/// A paper the material asks for and does not have.
/// </summary>
public sealed class MissingPapers : AdviceRule
{
    public override string Key => "missing-paper";

    public override string Title => "Papers missing";

    public override string AppliesTo =>
        "Any material that asks for a paper it does not have.";

    public override string Reason =>
        "Without its papers hazards, limits and allergens rest on guesses, and so does the label.";

    public override Citation Source => new("Good manufacturing practice: materials released on their papers", DataStatus.CommonPractice);

    public override AdviceExample Example => new(
        "A fragrance oil without its certificate, about to be released.",
        ExampleLines.Spray(ExampleLines.Line(ExampleLines.OilMaterial with { MissingPapers = [PaperKind.FragranceCertificate] }, 12m), ExampleLines.Alcohol(88m)),
        [
            (AdviceKind.Stop, "Fig oil lacks its fragrance certificate. The label would rest on guesses. Ask the supplier and file it."),
        ], IsBeingReleased: true);

    public override IEnumerable<AdviceGiven> Judge(AdviceBasis basis)
    {
        ArgumentNullException.ThrowIfNull(basis);
        AssessedLine[] lacking = [.. basis.Lines.Where(line => line.Material.MissingPapers.Count > 0)];
        if (lacking.Length == 0)
        {
            yield break;
        }

        int count = lacking.DistinctBy(line => line.Material.Id).Sum(line => line.Material.MissingPapers.Count);
        string papers = string.Join(", ", lacking.SelectMany(line => line.Material.MissingPapers).Distinct().Order().Select(PaperKinds.Name));
        yield return Give(
            basis.IsBeingReleased ? AdviceKind.Stop : AdviceKind.Warn,
            $"{Names(lacking)} {Verb(lacking, "lacks its", "lack some of their papers:")} {papers}. The label would rest on guesses. Ask the supplier and file it.",
            lacking,
            count,
            [.. lacking.Select(line => Step($"{line.Material.Name}: {string.Join(", ", line.Material.MissingPapers.Select(PaperKinds.Name))} missing.", line))]);
    }
}
