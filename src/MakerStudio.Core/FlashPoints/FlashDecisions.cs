using MakerStudio.Core.Alcoholometry;
using MakerStudio.Core.Blending;

namespace MakerStudio.Core.FlashPoints;

/// <summary>
/// What may be concluded from a flash point. A calculated one may stand instead of a test only where it lies at least
/// 5 °C above the limit (CLP Annex I 2.6.4.2; its further conditions from memory). Below the limits the stricter class is
/// taken until a test says otherwise.
/// </summary>
internal static class FlashDecisions
{
    /// <summary>°C an estimate must lie above a limit (CLP Annex I 2.6.4.2).</summary>
    internal const double Margin = 5;

    /// <summary>
    /// Between these strengths of ethanol in water the models set the 23 °C limit at different places, 52 to 71 % vol,
    /// so no estimate decides. Whole % vol at 20 °C.
    /// </summary>
    internal const double UndecidedFrom = 50;
    internal const double UndecidedTo = 75;

    private const string AskTest = "Only a closed-cup test decides.";

    /// <summary>Boiling point taken for the class; nothing in the table of substances boils as low as 35 °C.</summary>
    private const double BoilsAboveLimit = FlammableBands.BoilingLimit + 1;

    internal static FlashDecision OfMeasured(double celsius)
    {
        FlammableBand band = FlammableBands.Of(FlammableScheme.EuClp, celsius, BoilsAboveLimit);
        return new(band.Category, true, band.Category == FlammableCategory.Category2
            ? "By the measured value: Category 2, or Category 1 if it starts to boil at 35 °C or below."
            : $"By the measured value: {InWords(band.Category)}.");
    }

    internal static FlashDecision OfEstimate(double celsius, double? error, Mixture mixture, IReadOnlyList<LeftOut> leftOut)
    {
        double reach = ReachOf(error);
        // Above the limits the estimate has to clear the margin; below them its own error is enough.
        FlammableCategory takeAs = celsius < FlammableBands.LowLimit + reach ? FlammableCategory.Category2
            : celsius <= FlammableBands.HighLimit + reach ? FlammableCategory.Category3
            : FlammableCategory.NotClassified;
        if (leftOut.FirstOrDefault(part => !(part.FlashPoint > celsius)) is { } unsure)
        {
            return new(takeAs, false, $"{unsure.Name} is left out and may bring the flash point down. {AskTest} Until then take {InWords(takeAs)} or stricter.");
        }

        if (error is null && mixture.Lines.Count > 0 && takeAs != FlammableCategory.Category2)
        {
            return new(takeAs, false, $"The error of this estimate is not known. {AskTest}");
        }

        if (takeAs == FlammableCategory.Category2 && (IsUndecidedStrength(mixture) || celsius + (error ?? Margin) >= FlammableBands.LowLimit))
        {
            return new(takeAs, false, $"The estimate cannot decide between Category 2 and Category 3: the limit of 23 °C is within its reach. {AskTest} Until then take Category 2, the stricter.");
        }

        bool nearUpper = celsius > FlammableBands.HighLimit && takeAs == FlammableCategory.Category3;
        return nearUpper
            ? new(takeAs, false, $"The estimate cannot decide whether it is classified: the limit of 60 °C is within its reach. {AskTest} Until then take Category 3.")
            : new(takeAs, true, $"By the estimate, {InWords(takeAs)}. A closed-cup test overrides.");
    }

    /// <summary>°C that an estimate must lie above a limit to decide.</summary>
    internal static double ReachOf(double? error) => Math.Max(Margin, error ?? Margin);

    private static bool IsUndecidedStrength(Mixture mixture) =>
        mixture.AlcoholPart is EthanolStrength part && Math.Round(part.PercentVolume) is >= UndecidedFrom and <= UndecidedTo;

    private static string InWords(FlammableCategory category) => category switch
    {
        FlammableCategory.Category1 => "Category 1",
        FlammableCategory.Category2 => "Category 2",
        FlammableCategory.Category3 => "Category 3",
        _ => "not a flammable liquid in the EU",
    };
}
