using MakerStudio.Core.Quantities;
using MakerStudio.Core.Workings;

namespace MakerStudio.Core.Alcoholometry;

/// <summary>The amount that is fixed: what there is to start from, or what is wanted in the end, by mass or by volume.</summary>
public sealed record FixedAmount
{
    private FixedAmount(bool isFinal, Mass? mass, Volume? volume) => (IsFinal, Mass, Volume) = (isFinal, mass, volume);

    public bool IsFinal { get; }

    public Mass? Mass { get; }

    /// <summary>At the temperature of the dilution.</summary>
    public Volume? Volume { get; }

    public static FixedAmount Start(Mass mass) => new(false, mass, null);

    public static FixedAmount Start(Volume volume) => new(false, null, volume);

    public static FixedAmount Final(Mass mass) => new(true, mass, null);

    public static FixedAmount Final(Volume volume) => new(true, null, volume);
}

/// <summary>Brings ethanol and water to another strength, weaker or stronger, by adding one other liquid.</summary>
/// <param name="With">What is added: water to weaken, a stronger alcohol to strengthen.</param>
/// <param name="At">Of every volume, −20 to 40 °C. Strengths stay what they are at their own reference temperature.</param>
public sealed record DilutionRequest(
    EthanolStrength From, EthanolStrength With, EthanolStrength To, FixedAmount Fixed, Celsius At);

/// <param name="Volume">At the temperature of the dilution.</param>
public sealed record DilutionPortion(Mass Mass, Volume Volume, EthanolStrength Strength);

public abstract record DilutionResult
{
    /// <param name="Contraction">What the two volumes lose on mixing; below zero where they swell.</param>
    public sealed record Plan(
        DilutionPortion Start,
        DilutionPortion Add,
        DilutionPortion Final,
        Volume Contraction,
        IReadOnlyList<WorkingStep> Workings) : DilutionResult;

    public sealed record NotPossible(string Why) : DilutionResult;
}
