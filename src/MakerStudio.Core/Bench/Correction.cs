using MakerStudio.Core.Quantities;

namespace MakerStudio.Core.Bench;

/// <param name="Actual">What was weighed in, or null while the line waits.</param>
public sealed record WeighLine(Guid LineId, Mass Target, Mass? Actual);

/// <param name="NewTarget">The line's mass in the enlarged batch.</param>
/// <param name="TopUp">Still to be added to a line already weighed; null while the line waits.</param>
public sealed record CorrectedLine(Guid LineId, Mass NewTarget, Mass? TopUp);

/// <param name="Factor">How much larger the batch becomes, 1 or more.</param>
/// <param name="NewTotal">The sum of the new targets.</param>
/// <param name="Extra">How much more material that is than the first plan.</param>
/// <param name="AcceptedFraction">The over line's true share if nothing is corrected and the rest is on target.</param>
public sealed record CorrectionPlan(
    decimal Factor, IReadOnlyList<CorrectedLine> Lines, Mass NewTotal, Mass Extra, decimal AcceptedFraction);

/// <summary>Brings an overshoot back to the formula with the least extra material.</summary>
public static class Correction
{
    /// <summary>
    /// Enlarges the batch until the overshoot fits the formula. The smallest factor that asks nobody to take material
    /// out is the largest actual ÷ target among the weighed lines.
    /// </summary>
    /// <exception cref="ArgumentException">The over line is not among the lines, is not over, or a target is not above zero.</exception>
    public static CorrectionPlan ScaleRest(IReadOnlyList<WeighLine> lines, Guid overLine, Mass actual)
    {
        ArgumentNullException.ThrowIfNull(lines);
        WeighLine[] weighed = lines.Select(line => line.LineId == overLine ? line with { Actual = actual } : line).ToArray();
        WeighLine over = weighed.SingleOrDefault(line => line.LineId == overLine)
            ?? throw new ArgumentException("The over line is not among the lines.", nameof(overLine));
        if (weighed.Any(line => line.Target <= Mass.Zero) || actual <= over.Target)
        {
            throw new ArgumentException("Every target is above zero and the line to correct is over its own.", nameof(lines));
        }

        decimal factor = weighed.Max(line => line.Actual is { } mass ? mass.Grams / line.Target.Grams : 0);
        CorrectedLine[] corrected = weighed.Select(line => Correct(line, factor)).ToArray();
        Mass newTotal = corrected.Select(line => line.NewTarget).Sum();
        Mass asItStands = weighed.Select(line => line.Actual ?? line.Target).Sum();
        return new(
            factor,
            corrected,
            newTotal,
            newTotal - weighed.Select(line => line.Target).Sum(),
            actual.Grams / asItStands.Grams);
    }

    private static CorrectedLine Correct(WeighLine line, decimal factor)
    {
        Mass target = line.Target.Times(factor);
        return new(line.LineId, target, target - line.Actual);
    }
}
