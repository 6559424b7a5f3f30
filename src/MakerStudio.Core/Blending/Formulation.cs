using MakerStudio.Core.Quantities;

namespace MakerStudio.Core.Blending;

/// <summary>One line of a formula as it was typed.</summary>
/// <param name="Amount">In the words of <paramref name="Basis"/>; null means "the rest", in the percentages only.</param>
/// <param name="Density">Needed where the line is typed by volume.</param>
/// <param name="IsWax">Whether the line belongs to the wax that "% of wax" counts from.</param>
/// <param name="DropMassMilligrams">Mass of one drop, mg, from weighing twenty; needed where the line is typed in drops.</param>
public sealed record TypedLine(
    Guid LineId, decimal? Amount, LineBasis Basis, Density? Density = null, bool IsWax = false, decimal? DropMassMilligrams = null);

/// <param name="Fraction">Share of the total by weight, 12 decimals; the lines sum to exactly 1.</param>
/// <param name="PercentShown">Per cent by weight, 2 decimals; the lines sum to exactly 100.00.</param>
public sealed record NormalisedLine(Guid LineId, decimal Fraction, decimal PercentShown);

/// <param name="LineId">The line to mend, or null where the formula as a whole is meant.</param>
public sealed record LineProblem(Guid? LineId, string Problem);

public abstract record FormulationResult
{
    /// <summary>In the order given.</summary>
    public sealed record Normalised(IReadOnlyList<NormalisedLine> Lines) : FormulationResult;

    public sealed record CannotNormalise(IReadOnlyList<LineProblem> Problems) : FormulationResult;
}

/// <summary>Turns typed lines into shares of the total by weight, the one way a formula is kept.</summary>
public static class Formulation
{
    /// <summary>Fractions are kept to 12 decimals: one in a million million, below 1 mg in 1,000 kg.</summary>
    public const long FractionUnits = 1_000_000_000_000;

    /// <summary>Units of 0.01 % in the whole.</summary>
    public const long PercentUnits = 10_000;

    /// <summary>
    /// The lines' shares by weight. The order of lines does not change any share: equal remainders go by line id.
    /// </summary>
    /// <exception cref="ArgumentException">Two lines bear one id.</exception>
    public static FormulationResult Normalise(IReadOnlyList<TypedLine> lines)
    {
        ArgumentNullException.ThrowIfNull(lines);
        TypedLine[] ordered = lines.OrderBy(line => line.LineId).ToArray();
        if (ordered.Select(line => line.LineId).Distinct().Count() != ordered.Length)
        {
            throw new ArgumentException("Two lines bear one id.", nameof(lines));
        }

        LineMasses masses = LineMasses.Of(ordered);
        if (masses.Problems.Count > 0)
        {
            return new FormulationResult.CannotNormalise(masses.Problems);
        }

        Dictionary<Guid, NormalisedLine> byId = Shares(ordered, masses.Values).ToDictionary(line => line.LineId);
        return new FormulationResult.Normalised(lines.Select(line => byId[line.LineId]).ToArray());
    }

    private static IEnumerable<NormalisedLine> Shares(TypedLine[] lines, IReadOnlyList<decimal> masses)
    {
        IReadOnlyList<long> fractions = LargestRemainder.Share(FractionUnits, masses);
        IReadOnlyList<long> percents = LargestRemainder.Share(PercentUnits, fractions.Select(units => (decimal)units).ToArray());
        return lines.Select((line, i) => new NormalisedLine(
            line.LineId,
            (decimal)fractions[i] / FractionUnits,
            percents[i] / 100m));
    }
}
