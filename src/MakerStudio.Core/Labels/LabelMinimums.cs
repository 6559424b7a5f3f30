using MakerStudio.Core.Assessing;
using MakerStudio.Core.Hazards.Label;
using MakerStudio.Core.Hazards.Us;
using MakerStudio.Core.Labels.Type;
using MakerStudio.Core.Workings;

namespace MakerStudio.Core.Labels;

/// <summary>The smallest sizes a label may be set in, in mm.</summary>
/// <param name="Letter">Smallest size of running text, as a font size.</param>
/// <param name="LetterHeight">What that comes from: height of a small x in Europe, of a capital in the US.</param>
/// <param name="Signal">Height of the signal word's capitals; 0 for no rule of its own.</param>
/// <param name="Hazard">Height of the US hazard statement's capitals; 0 for no rule of its own.</param>
/// <param name="Net">Height of the figures of the net quantity.</param>
/// <param name="PictogramSide">Below it no pictogram may be.</param>
/// <param name="PictogramWanted">Asked for where there is room.</param>
public sealed record LabelMinimums(
    double Letter, double LetterHeight, double Signal, double Hazard, double Net, double PictogramSide, double PictogramWanted)
{
    private const double MillimetresPerInch = 25.4;

    /// <summary>From a capacity of up to, mL or g: height of the figures, mm.</summary>
    private static readonly (decimal UpTo, double Height)[] FigureRows = [(50m, 2), (200m, 3), (1000m, 4), (decimal.MaxValue, 6)];

    public static Citation FiguresSource { get; } = new("Directive 76/211/EEC, Annex I 3.1", DataStatus.Memory);

    /// <summary>Example: 100 mL in Europe on 60 × 80 mm: x of 1.2 mm, figures of 3 mm, pictograms of 10 mm, 16 mm where there is room.</summary>
    public static LabelMinimums For(LabelFacts facts, LabelStock stock)
    {
        ArgumentNullException.ThrowIfNull(facts);
        ArgumentNullException.ThrowIfNull(stock);
        return facts.Scheme == LabelScheme.UnitedStates ? InTheUs(facts, stock) : InEurope(facts, stock);
    }

    private static LabelMinimums InEurope(LabelFacts facts, LabelStock stock)
    {
        // A pack sold by weight: a gram is taken as a millilitre; both lie in the row up to half a litre.
        LabelSize size = LabelSizes.For(facts.Net.Amount);
        double smallest = (double)size.PictogramSideMillimetres;
        double wanted = Math.Min((double)(size.PictogramSideIfPossible ?? size.PictogramSideMillimetres), LabelSizes.PictogramSide((double)(stock.Width * stock.Height)));
        double letter = (double)size.LetterHeightMillimetres;
        return new(
            letter / LabelFace.Regular.XHeight, letter, 0, 0, FigureRows.First(row => facts.Net.Amount <= row.UpTo).Height,
            smallest, Math.Max(smallest, wanted));
    }

    private static LabelMinimums InTheUs(LabelFacts facts, LabelStock stock)
    {
        DisplayPanel panel = PanelOf(facts, stock);
        CautionTypeSize caution = TypeSizes.Caution(panel);
        double letter = caution.Other * MillimetresPerInch;
        const double skull = 10;
        return new(
            letter / LabelFace.Regular.CapitalHeight, letter, caution.SignalWord * MillimetresPerInch, caution.Hazard * MillimetresPerInch,
            TypeSizes.NetQuantityInches(panel) * MillimetresPerInch, skull, skull);
    }

    internal static DisplayPanel PanelOf(LabelFacts facts, LabelStock stock) =>
        DisplayPanel.OfFront(facts.Wording.PanelSquareMillimetres ?? (double)(stock.Width * stock.Height), 1);
}
