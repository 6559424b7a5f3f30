using MakerStudio.Core.Quantities;
using MakerStudio.Core.Workings;

namespace MakerStudio.Core.FlashPoints;

/// <summary>How the components' activity was reckoned.</summary>
public enum FlashModel
{
    /// <summary>One substance: its own flash point.</summary>
    PureSubstance,

    /// <summary>Ethanol and water, with at most a trace of other things.</summary>
    Uniquac,

    /// <summary>Every component split into groups.</summary>
    Unifac,

    /// <summary>Ethanol and water by UNIQUAC, the rest as if ideal.</summary>
    UniquacAndIdeal,

    /// <summary>All as if ideal (Raoult).</summary>
    Ideal,
}

/// <param name="Largest">Largest difference from published measurements, °C; null where nobody has measured.</param>
/// <param name="Says">In words, with the range it holds for.</param>
public sealed record KnownError(double? Largest, string Says, Source Source);

/// <summary>What a flash point says about the class.</summary>
/// <param name="TakeAs">The class to label by meanwhile: where two are possible, the stricter. EU classes.</param>
/// <param name="IsDecided">False where only a closed-cup test decides.</param>
public sealed record FlashDecision(FlammableCategory TakeAs, bool IsDecided, string Says);

/// <summary>Something that could not be reckoned with.</summary>
/// <param name="Share">Of the mixture by weight.</param>
/// <param name="FlashPoint">Its own, °C; null where not known.</param>
public sealed record LeftOut(string Name, double Share, double? FlashPoint, string Why);

public abstract record FlashPointResult
{
    /// <summary>A measured value overrides every estimate.</summary>
    public sealed record Measured(Celsius Value, FlashDecision Decision, IReadOnlyList<WorkingStep> Workings) : FlashPointResult;

    /// <param name="LowestOfModels">Lowest of five models of ethanol and water; null for other mixtures.</param>
    public sealed record Estimated(
        Celsius Value,
        FlashModel Model,
        KnownError Error,
        Celsius? LowestOfModels,
        Celsius? HighestOfModels,
        FlashDecision Decision,
        IReadOnlyList<LeftOut> LeftOut,
        IReadOnlyList<string> Warnings,
        IReadOnlyList<WorkingStep> Workings) : FlashPointResult;

    /// <summary>Nothing in it is known to burn below the temperature searched.</summary>
    public sealed record NoneFound(Celsius UpTo, string Says, IReadOnlyList<LeftOut> LeftOut, IReadOnlyList<WorkingStep> Workings)
        : FlashPointResult;

    public sealed record Unknown(string Why, IReadOnlyList<LeftOut> LeftOut) : FlashPointResult;
}
