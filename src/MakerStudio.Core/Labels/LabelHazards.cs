using MakerStudio.Core.Hazards;
using MakerStudio.Core.Hazards.Label;
using MakerStudio.Core.Hazards.Rules;
using MakerStudio.Core.Hazards.Us;

namespace MakerStudio.Core.Labels;

/// <param name="Code">"H225"; empty where the scheme has none.</param>
public sealed record CodedText(string Code, string Text);

/// <summary>
/// The hazard elements of a label as plain values. What was confirmed is kept in this form and compared with what the
/// materials say later.
/// </summary>
/// <param name="Signal">"Danger", "Warning"; in the US "DANGER", "WARNING", "CAUTION"; null for none.</param>
/// <param name="Names">Substances to name beside the classes.</param>
/// <param name="MayLeaveOut">Codes that a small pack may leave out.</param>
/// <param name="NeedsUfi">Classed for a health or physical hazard, and sold where Annex VIII applies.</param>
/// <param name="OnThePack">What the pack itself must have: closure, tactile triangle.</param>
/// <param name="Unknown">What nobody knows, in sentences.</param>
public sealed record LabelHazards(
    string? Signal,
    IReadOnlyList<Pictogram> Pictograms,
    IReadOnlyList<CodedText> Statements,
    IReadOnlyList<CodedText> Precautions,
    IReadOnlyList<CodedText> Supplemental,
    IReadOnlyList<string> Names,
    IReadOnlyList<string> MayLeaveOut,
    bool NeedsUfi,
    IReadOnlyList<string> OnThePack,
    IReadOnlyList<string> Unknown)
{
    /// <summary>Names that normally suffice (CLP Art. 18(3)(b)).</summary>
    private const int NamesThatSuffice = 4;

    public static LabelHazards None { get; } = new(null, [], [], [], [], [], [], false, [], []);

    public bool HasAny => Signal is not null || Statements.Count > 0 || Supplemental.Count > 0;

    /// <summary>By EU or GB CLP.</summary>
    public static LabelHazards Of(HazardLabel label, IReadOnlyList<string> unknown)
    {
        ArgumentNullException.ThrowIfNull(label);
        return new(
            label.Signal == SignalWord.None ? null : label.Signal.ToString(),
            label.Pictograms,
            [.. label.HazardStatements.Select(each => new CodedText(each.Code, each.Text))],
            [.. label.Precautions.Chosen.Select(each => new CodedText(each.Code, each.Text))],
            [.. label.Supplemental.Where(each => each.Text.Length > 0 && each.Code != AllergensNamed.NamesOnly).Select(each => new CodedText(each.Code, each.Text))],
            [.. label.SubstancesToName.Take(NamesThatSuffice).Concat(label.Supplemental.Where(each => each.Code == AllergensNamed.NamesOnly).SelectMany(each => each.Names)).Distinct()],
            [.. label.SmallPack.HazardStatements, .. label.SmallPack.Precautions],
            label.NeedsUfi,
            [.. OnPack(label)],
            unknown);
    }

    /// <summary>By the US Act.</summary>
    public static LabelHazards Of(FhsaLabel label)
    {
        ArgumentNullException.ThrowIfNull(label);
        IReadOnlyList<CodedText> statements = [.. label.Statements.Select(each => new CodedText("", each.Text))];
        return new(
            label.Signal, label.ShowsPoison ? [Pictogram.Ghs06] : [], statements,
            [.. UsPrecautions.For(statements).Select(text => new CodedText("", text))], [], [], [], false, [], label.Unknown);
    }

    /// <summary>How the elements differ from those confirmed before, each in a few words; empty where they are the same.</summary>
    public IReadOnlyList<string> DifferencesFrom(LabelHazards confirmed)
    {
        ArgumentNullException.ThrowIfNull(confirmed);
        return
        [
            .. Signal == confirmed.Signal ? Array.Empty<string>() : [$"signal word {confirmed.Signal ?? "none"} → {Signal ?? "none"}"],
            .. Changes("pictogram", Pictograms.Select(Hazards.Pictograms.Code), confirmed.Pictograms.Select(Hazards.Pictograms.Code)),
            .. Changes("", Statements.Select(Said), confirmed.Statements.Select(Said)),
            .. Changes("", Precautions.Select(Said), confirmed.Precautions.Select(Said)),
            .. Changes("", Supplemental.Select(Said), confirmed.Supplemental.Select(Said)),
            .. Changes("name of", Names, confirmed.Names),
            .. Changes("", OnThePack, confirmed.OnThePack),
            .. NeedsUfi == confirmed.NeedsUfi ? Array.Empty<string>() : [NeedsUfi ? "a UFI is needed" : "no UFI is needed"],
        ];
    }

    private static string Said(CodedText each) => each.Code.Length > 0 ? $"{each.Code} “{each.Text}”" : $"“{each.Text}”";

    private static IEnumerable<string> Changes(string what, IEnumerable<string> now, IEnumerable<string> before)
    {
        string Named(string each) => what.Length > 0 ? $"{what} {each}" : each;
        List<string> after = [.. now];
        List<string> earlier = [.. before];
        return after.Except(earlier).Select(each => $"{Named(each)} is new").Concat(earlier.Except(after).Select(each => $"{Named(each)} has gone"));
    }

    private static IEnumerable<string> OnPack(HazardLabel label)
    {
        if (label.ChildResistant.IsNeeded)
        {
            yield return $"A child-resistant closure ({string.Join(", ", label.ChildResistant.Because)})";
        }

        if (label.Tactile.IsNeeded)
        {
            yield return $"The raised warning triangle for those who cannot see ({string.Join(", ", label.Tactile.Because)})";
        }
    }
}
