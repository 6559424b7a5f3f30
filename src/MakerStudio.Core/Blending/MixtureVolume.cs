using MakerStudio.Core.Alcoholometry;
using MakerStudio.Core.Quantities;
using MakerStudio.Core.Workings;

namespace MakerStudio.Core.Blending;

public abstract record DensityResult
{
    /// <param name="Density">To use: the measured one where there is one.</param>
    /// <param name="IsMeasured">Whether it was weighed.</param>
    /// <param name="Estimate">What the lines give, beside a measured one; null where they give none.</param>
    public sealed record Known(
        Density Density, bool IsMeasured, Density? Estimate, IReadOnlyList<string> Warnings, IReadOnlyList<WorkingStep> Workings)
        : DensityResult;

    /// <param name="Why">A sentence for each line that stands in the way.</param>
    public sealed record Unknown(IReadOnlyList<string> Why) : DensityResult;
}

/// <summary>
/// Density of a mixture: ethanol and water together by OIML R 22, everything else by its own volume. Ideal mixing
/// between the two is assumed, and no published check of that exists for fragrance; so weigh a known volume once.
/// </summary>
public static class MixtureVolume
{
    /// <summary>Temperature of a line's density, °C.</summary>
    public const double LineCelsius = 20;

    private const string Rule = "Mixture density";
    private const double KilogramsPerCubicMetre = 1000; // in 1 g/mL

    /// <summary>A density no liquid in the trade has, g/mL; own limits, to catch a density that belies the composition.</summary>
    private const double LeastCredible = 0.3;
    private const double MostCredible = 3;

    private static readonly Source LineDensities = new("the lines' own densities at 20 °C, volumes added", DataStatus.Derived);
    private static readonly Source Weighed = new("measured on a batch", DataStatus.Read);

    /// <param name="measured">Density weighed on a batch of this formula; it overrides.</param>
    public static DensityResult Of(Mixture mixture, Celsius at, Density? measured = null)
    {
        ArgumentNullException.ThrowIfNull(mixture);
        var problems = new List<string>();
        var warnings = new List<string>();
        var workings = new List<WorkingStep>();
        Density? estimate = Estimate(mixture, at, problems, warnings, workings);
        if (measured is { } weighed)
        {
            workings.Insert(0, new(Rule, $"{weighed.GramsPerMillilitre:0.####} g/mL was measured, and holds.", Weighed));
            return new DensityResult.Known(weighed, true, estimate, [], workings);
        }

        return estimate is { } worked
            ? new DensityResult.Known(worked, false, worked, warnings, workings)
            : new DensityResult.Unknown(problems);
    }

    private static Density? Estimate(Mixture mixture, Celsius at, List<string> problems, List<string> warnings, List<WorkingStep> workings)
    {
        double alcohol = mixture.Ethanol + mixture.Water;
        if (alcohol > 0 && EthanolWaterScope.WhyNotAt(at) is { } outside)
        {
            problems.Add(outside);
            return null;
        }

        double celsius = (double)at.Degrees;
        double volume = mixture.Lines.Sum(line => RestVolume(line, celsius, problems, warnings, workings));
        if (problems.Count > 0)
        {
            return null;
        }

        if (alcohol > 0)
        {
            double density = R22.KilogramsPerCubicMetre(mixture.Ethanol / alcohol, celsius) / KilogramsPerCubicMetre;
            volume += alcohol / density;
            workings.Add(new(Rule, $"Ethanol and water, {100 * alcohol:0.00} % by weight, are {density:0.0000} g/mL together at {at.Degrees:0.##} °C.", R22.Source));
        }

        if (alcohol is > 0 and < 1 - EthanolWaterScope.TraceShare)
        {
            warnings.Add("An estimate: how alcohol and fragrance shrink or swell together is not published. Weigh a known volume once and enter it.");
        }

        workings.Add(new(Rule, $"1 g takes {volume:0.0000} mL: {1 / volume:0.0000} g/mL.", LineDensities));
        return new Density(decimal.Round((decimal)(1 / volume), 6));
    }

    /// <summary>mL that what is not ethanol or water in a line takes, in a gram of the mixture.</summary>
    private static double RestVolume(MixtureLine line, double celsius, List<string> problems, List<string> warnings, List<WorkingStep> workings)
    {
        double alcohol = line.Ethanol + line.Water;
        double rest = 1 - alcohol;
        if (rest <= MixtureLine.RoundingShare)
        {
            return 0;
        }

        if (line.Density is not { } density)
        {
            problems.Add($"{line.Name} has no density. Enter one, or weigh a known volume of it.");
            return 0;
        }

        double alcoholVolume = alcohol > 0
            ? alcohol * KilogramsPerCubicMetre / R22.KilogramsPerCubicMetre(line.Ethanol / alcohol, LineCelsius)
            : 0;
        double volume = (1 / (double)density.GramsPerMillilitre) - alcoholVolume;
        // A small rest carries the rounding of the whole line's density, so only a large one can belie it.
        bool credible = volume > 0 && rest / volume is >= LeastCredible and <= MostCredible;
        if (!credible && alcohol > 0 && rest > EthanolWaterScope.TraceShare)
        {
            problems.Add($"{line.Name}: its density does not go with its share of alcohol and water. Check both.");
            return 0;
        }

        double expansion = 1 + ((line.ExpansionPerKelvin ?? 0) * (celsius - LineCelsius));
        if (line.ExpansionPerKelvin is null && celsius != LineCelsius)
        {
            warnings.Add($"{line.Name} is taken at its density of 20 °C: how much it swells with warmth is not known.");
        }

        workings.Add(new(Rule, $"{line.Name}: {100 * line.MassFraction * rest:0.00} % by weight takes {line.MassFraction * volume * expansion:0.0000} mL of a gram.", LineDensities, line.LineId));
        return line.MassFraction * volume * expansion;
    }
}
