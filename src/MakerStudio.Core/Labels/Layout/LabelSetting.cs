namespace MakerStudio.Core.Labels.Layout;

/// <summary>What a label is set in.</summary>
/// <param name="Letter">Size of running text, mm.</param>
/// <param name="PictogramSide">mm.</param>
/// <param name="IsLean">Smaller name, signal word and square code.</param>
/// <param name="HasCodes">The codes of statements stand before their words.</param>
internal sealed record LabelSetting(double Letter, double PictogramSide, bool IsLean, bool HasCodes)
{
    /// <summary>From the richest to the leanest: codes go before pictograms shrink, as the law wishes for their size and not for codes.</summary>
    public static IEnumerable<LabelSetting> FromRichest(LabelMinimums minimums)
    {
        for (double side = minimums.PictogramWanted; ; side = Math.Max(minimums.PictogramSide, side - 1))
        {
            yield return new(minimums.Letter, side, false, true);
            yield return new(minimums.Letter, side, true, true);
            yield return new(minimums.Letter, side, true, false);
            if (side <= minimums.PictogramSide)
            {
                yield break;
            }
        }
    }
}
