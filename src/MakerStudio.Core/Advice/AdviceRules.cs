using MakerStudio.Core.Advice.Rules;

namespace MakerStudio.Core.Advice;

/// <summary>Every rule of advice. A new rule is a file and a line here.</summary>
public static class AdviceRules
{
    public static IReadOnlyList<AdviceRule> All { get; } =
    [
        new WaterWithoutSolubiliser(),
        new AlcoholTooWeak(),
        new IsopropanolBase(),
        new WitchHazelBase(),
        new WaterWithoutPreservative(),
        new SolubiliserRatio(),
        new WetWax(),
        new WaxLoad(),
        new FlashAndPour(),
        new VanillinWick(),
        new DiffuserAlcohol(),
        new DiffuserWater(),
        new LinenStain(),
        new SachetFixative(),
        new SachetEssentialOil(),
        new SachetWater(),
        new LoadAboveUsual(),
        new LoadAboveEnough(),
        new CitrusOxidation(),
        new VanillinBrowning(),
        new MissingPapers(),
        new Drops(),
        new PhthalateStatement(),
        new CmrStatement(),
        new DensityUnknown(),
        new CompositionUnknown(),
        new AlcoholStrengthUnknown(),
        new FlammableHeat(),
        new Plastics(),
        new ClearLikely(),
    ];

    /// <summary>The gravest first; of the same kind in the order of the rules.</summary>
    public static IReadOnlyList<AdviceGiven> Judge(AdviceBasis basis)
    {
        ArgumentNullException.ThrowIfNull(basis);
        return [.. All.SelectMany(rule => rule.Judge(basis)).OrderByDescending(given => given.Kind)];
    }

    /// <exception cref="KeyNotFoundException">No rule has this key.</exception>
    public static AdviceRule Get(string key) =>
        All.FirstOrDefault(rule => rule.Key == key) ?? throw new KeyNotFoundException("No rule of advice has this key.");
}
