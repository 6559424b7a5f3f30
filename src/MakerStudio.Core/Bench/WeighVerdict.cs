using MakerStudio.Core.Quantities;

namespace MakerStudio.Core.Bench;

/// <summary>How a weighing stands against its target.</summary>
/// <param name="By">Actual less target: negative when under.</param>
/// <param name="Fraction">That difference as a fraction of the target, unrounded.</param>
public abstract record Verdict(Mass By, decimal Fraction)
{
    public sealed record InTolerance(Mass By, decimal Fraction) : Verdict(By, Fraction);

    public sealed record Under(Mass By, decimal Fraction) : Verdict(By, Fraction);

    public sealed record Over(Mass By, decimal Fraction) : Verdict(By, Fraction);
}

public static class WeighVerdict
{
    /// <summary>A weighing exactly at the tolerance is within it.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The target is not above zero or the tolerance is negative.</exception>
    public static Verdict Of(Mass target, Mass tolerance, Mass actual)
    {
        if (target <= Mass.Zero || tolerance < Mass.Zero)
        {
            throw new ArgumentOutOfRangeException(nameof(target), "The target is above zero and the tolerance not below it.");
        }

        Mass by = actual - target;
        decimal fraction = by.Grams / target.Grams;
        if (by.Abs() <= tolerance)
        {
            return new Verdict.InTolerance(by, fraction);
        }

        return by < Mass.Zero ? new Verdict.Under(by, fraction) : new Verdict.Over(by, fraction);
    }
}
