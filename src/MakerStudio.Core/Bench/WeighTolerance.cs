using MakerStudio.Core.Quantities;

namespace MakerStudio.Core.Bench;

public static class WeighTolerance
{
    /// <summary>Usual tolerance, per cent of the target. Common practice, no source.</summary>
    public const decimal UsualPercent = 0.5m;

    /// <summary>Usual tolerance in divisions of the scale. Common practice, no source.</summary>
    public const int UsualDivisions = 2;

    /// <summary>
    /// Least sensible weighing in divisions of the scale: one division is then 1 % of it. Common practice, no source.
    /// </summary>
    public const int LeastSensibleDivisions = 100;

    /// <summary>How far a weighing may lie from its target: the larger of a share of it and some scale divisions.</summary>
    /// <param name="readability">One division of the scale.</param>
    public static Mass Of(Mass target, Mass readability, decimal percent = UsualPercent, int divisions = UsualDivisions)
    {
        if (target < Mass.Zero || readability < Mass.Zero || percent is < 0 or > 100 || divisions is < 0 or > 1000)
        {
            throw new ArgumentException("Target and readability are not negative, per cent runs to 100, divisions to 1,000.");
        }

        Mass byShare = target.Times(percent / 100m);
        Mass byScale = readability.Times(divisions);
        return byShare > byScale ? byShare : byScale;
    }

    /// <summary>The smallest target a scale weighs to 1 %.</summary>
    public static Mass LeastSensible(Mass readability) => readability.Times(LeastSensibleDivisions);
}
