using MakerStudio.Core.Hazards.Us;
using MakerStudio.Core.Workings;

namespace MakerStudio.Core.Labels;

/// <summary>
/// The measures to take that the US Act asks for beside each principal hazard, first aid where it helps; wording our
/// own. Example: "FLAMMABLE" asks to keep away from heat, sparks and flames.
/// </summary>
public static class UsPrecautions
{
    public static Citation Source { get; } = new("FHSA section 2(p)(1)(E) to (J) (what is asked for; wording our own)", DataStatus.Memory);

    private static readonly (string Hazard, string Measure)[] Rows =
    [
        ("FLAMMABLE", "Keep away from heat, sparks and open flames."),
        ("COMBUSTIBLE", "Keep away from heat and open flames."),
        ("BURNS", "Keep off skin, out of eyes and off clothing. First aid: rinse at once with much water and get medical help."),
        ("EYE", "Keep out of eyes. First aid: rinse with water for 15 minutes; if it still hurts, get medical help."),
        ("SKIN", "Keep off skin. First aid: wash with soap and water."),
        ("SWALLOWED", "Do not drink. First aid: if swallowed, call a poison center or doctor at once; do not make the person vomit."),
        ("INHALED", "Use with fresh air. First aid: if breathing is hard, go into fresh air and get medical help."),
    ];

    /// <param name="statements">The principal hazards, in capitals.</param>
    public static IReadOnlyList<string> For(IReadOnlyCollection<CodedText> statements) => statements.Count == 0
        ? []
        : [.. Rows.Where(row => statements.Any(each => each.Text.Contains(row.Hazard, StringComparison.Ordinal))).Select(row => row.Measure), FhsaLabel.KeepOutOfReach];
}
