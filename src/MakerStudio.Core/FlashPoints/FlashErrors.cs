using MakerStudio.Core.Blending;
using MakerStudio.Core.Workings;

namespace MakerStudio.Core.FlashPoints;

/// <summary>How far the estimate was found from published measurements. See docs/science/flash-point.md.</summary>
internal static class FlashErrors
{
    /// <summary>Ethanol and water, 20 to 90 % vol, list read as % vol: largest 1.2, mean 0.5 °C.</summary>
    private const double EthanolWater = 1.2;

    /// <summary>Above 90 % vol the list disagrees with itself (17 or 13 °C at 96 %).</summary>
    private const double StrongEthanol = 1.8;

    /// <summary>Below 20 % vol: 2.6 °C too low at 5 and 10 %.</summary>
    private const double WeakEthanol = 2.6;

    /// <summary>UNIFAC, four pairs of organic liquids: largest 5.5, mean 1.3 to 2.7 °C.</summary>
    private const double Groups = 5.5;

    // In whole % vol.
    private const double WeakBelow = 20;
    private const double StrongAbove = 90;

    private static readonly Source List = new(
        "published list of ethanol–water flash points (NFPA 325 as passed on), read as % vol; sources disagree on the percentage", DataStatus.Secondary);

    private static readonly Source Pairs = new(
        "measured pairs ethanol–toluene, toluene–propan-2-ol, n-octane–ethanol, ethyl acetate–ethanol", DataStatus.Secondary);

    private static readonly Source Own = new("the substance's own published flash points", DataStatus.Read);
    private static readonly Source None = new("no published check", DataStatus.Derived);

    internal static KnownError Of(FlashModel model, Mixture mixture) => model switch
    {
        FlashModel.PureSubstance => new(null, "The flash point of the substance itself. Lists differ by a few °C.", Own),
        FlashModel.Uniquac => OfEthanolWater(mixture.AlcoholPart?.PercentVolume ?? 0),
        FlashModel.Unifac => new(Groups, "Within 5.5 °C of four measured pairs of liquids, mostly below them. None of them held fragrance.", Pairs),
        FlashModel.UniquacAndIdeal => new(null, "The error is not known: part of it is reckoned as if ideal.", None),
        _ => new(null, "The error is not known: reckoned as if ideal. With water such an estimate reads 8 to 27 °C too high.", None),
    };

    private static KnownError OfEthanolWater(double percentVolume) => Math.Round(percentVolume) switch
    {
        < WeakBelow => new(WeakEthanol, "Below 20 % vol the estimate was up to 2.6 °C too low, the cautious side.", List),
        > StrongAbove => new(StrongEthanol, "Above 90 % vol the published list disagrees with itself; within 1.8 °C of it.", List),
        _ => new(EthanolWater, "Within 1.2 °C of the published list from 20 to 90 % vol.", List),
    };
}
