using MakerStudio.Core.Labels.Drawing;
using MakerStudio.Core.Labels.Layout;
using MakerStudio.Core.Labels.Type;

namespace MakerStudio.Core.Labels;

/// <summary>
/// A label with everything in its place, at the largest sizes that fit: first the pictograms, then the letters. Nothing
/// is made smaller than its minimum; what then runs over is said in <see cref="Problems"/>.
/// </summary>
/// <param name="Drawing">As high as the words need, which is more than the stock where they do not fit.</param>
/// <param name="Letter">Size of running text, mm.</param>
/// <param name="PictogramSide">mm.</param>
/// <param name="HasCodes">The codes of statements stand before their words; they are left out where the words need the room.</param>
/// <param name="Problems">What keeps it from fitting, in sentences; empty where it fits.</param>
/// <param name="WaysOut">What a maker can do about it.</param>
public sealed record LabelLayout(
    LabelContent Content,
    LabelStock Stock,
    LabelMinimums Minimums,
    LabelDrawing Drawing,
    double Letter,
    double PictogramSide,
    bool HasCodes,
    IReadOnlyList<string> Problems,
    IReadOnlyList<string> WaysOut)
{
    /// <summary>Letters grow no further than this over their minimum, however large the label. Own choice.</summary>
    private const double MostGrowth = 1.35;

    /// <summary>Nearness at which growing stops, and what counts as fitting, mm.</summary>
    private const double Near = 0.01;

    private const int MostTries = 20;

    public bool Fits => Problems.Count == 0;

    /// <param name="code">The square code's modules, or null for none.</param>
    public static LabelLayout Of(LabelContent content, LabelStock stock, CodeModules? code)
    {
        ArgumentNullException.ThrowIfNull(content);
        ArgumentNullException.ThrowIfNull(stock);
        LabelMinimums minimums = LabelMinimums.For(content.Facts, stock);
        Composed At(LabelSetting setting, double height) => new LabelComposer(content, stock, minimums, code, setting, height).Compose();
        bool Fits(LabelSetting setting) => At(setting, (double)stock.Height) is { Over: <= Near, TooWide: <= Near };
        LabelSetting? fitting = LabelSetting.FromRichest(minimums).FirstOrDefault(Fits);
        LabelSetting setting = fitting is null ? LabelSetting.FromRichest(minimums).Last() : LargestLetter(fitting, Fits);
        Composed composed = At(setting, (double)stock.Height);
        for (int i = 0; i < MostTries && composed.Over > Near; i++)
        {
            composed = At(setting, composed.Drawing.Height + composed.Over);
        }

        IReadOnlyList<string> problems = [.. ProblemsOf(content, stock, minimums, composed)];
        return new(
            content, stock, minimums, composed.Drawing, setting.Letter, setting.PictogramSide, setting.HasCodes,
            problems, problems.Count == 0 ? [] : [.. Ways(content.Facts)]);
    }

    /// <summary>By halving: more never fits where less does not.</summary>
    private static LabelSetting LargestLetter(LabelSetting smallest, Func<LabelSetting, bool> fitsWith)
    {
        double fits = smallest.Letter;
        double doesNot = smallest.Letter * MostGrowth;
        if (fitsWith(smallest with { Letter = doesNot }))
        {
            return smallest with { Letter = doesNot };
        }

        while (doesNot - fits > Near)
        {
            double middle = (fits + doesNot) / 2;
            (fits, doesNot) = fitsWith(smallest with { Letter = middle }) ? (middle, doesNot) : (fits, middle);
        }

        return smallest with { Letter = fits };
    }

    private static IEnumerable<string> ProblemsOf(LabelContent content, LabelStock stock, LabelMinimums minimums, Composed composed)
    {
        if (composed.Drawing.Height > (double)stock.Height)
        {
            string letters = content.Facts.IsUnitedStates ? "capitals" : "small x";
            yield return $"At the smallest letters it may have ({letters} of {Mm(minimums.LetterHeight)} mm) the words need {Mm(composed.Drawing.Height)} mm of height, and the label has {Mm((double)stock.Height)} mm.";
        }

        if (composed.TooWide > Near)
        {
            yield return $"A word or figure is {Mm(composed.TooWide)} mm wider than the label at its smallest size.";
        }

        foreach (string lacking in Lacking(content))
        {
            yield return $"The label's letters have no “{lacking}”. Write it another way.";
        }
    }

    private static IEnumerable<string> Lacking(LabelContent content) => content.Elements
        .SelectMany(element => element.Texts.SelectMany((text, index) => element.Key == "name" && index == 0
            ? LabelFace.Scent.Lacks(text.ToString())
            : LabelFace.Regular.Lacks(text.ToString())))
        .Distinct();

    private static IEnumerable<string> Ways(LabelFacts facts)
    {
        yield return "Take a larger label.";
        if (facts.Hazards.MayLeaveOut.Count > 0 && !facts.Wording.UsesSmallPackRelief)
        {
            yield return $"Use the relief of a small pack: {string.Join(", ", facts.Hazards.MayLeaveOut)} may be left out (CLP Annex I, 1.5.2.1.1).";
        }

        if (facts.Wording.ExtraLines.Count > 0)
        {
            yield return "Shorten your own lines.";
        }

        yield return facts.IsUnitedStates
            ? "Put the cautions on another panel, and say on the front where they are (16 CFR 1500.121; from memory of the text)."
            : "Where the pack is too small or odd in shape: a fold-out label, a tie-on tag, or the outer box (CLP Art. 29(1) and Annex I, 1.5.1).";
    }

    private static string Mm(double length) => length.ToString("0.0", System.Globalization.CultureInfo.InvariantCulture);
}
