using MakerStudio.Core.Alcoholometry;
using MakerStudio.Core.Blending;
using MakerStudio.Core.Materials;
using MakerStudio.Core.Quantities;
using MakerStudio.Core.Workings;

namespace MakerStudio.Core.FlashPoints;

/// <summary>
/// Flash point of a liquid of one phase: the temperature where Σ x·γ·P(T)/P(T of flash) over the components that burn is
/// 1 (Liaw et al. 2002; Liaw and Chiu 2003 for water in it). Water counts in x and γ only. An estimate, never a test.
/// </summary>
public static class FlashPoint
{
    internal const string Rule = "Flash point";

    /// <summary>Range searched, °C. Above the highest, water boils away and the equation says nothing.</summary>
    private const double LowestCelsius = -60;
    private const double HighestCelsius = 300;
    private const double HighestWithWaterCelsius = 95;

    /// <summary>Above this share by weight, steam thins the vapour and a measurement reads higher.</summary>
    private const double MostlyWater = 0.95;

    /// <summary>Share of water by weight from which oil may part from it; own limit.</summary>
    private const double WaterToPart = 0.02;

    private static readonly Source Method = new(
        "Liaw et al., J. Loss Prev. Process Ind. 15 (2002) 429; Liaw and Chiu, J. Hazard. Mater. A101 (2003) 83", DataStatus.Secondary);

    private static readonly Source Test = new("closed-cup test, as entered", DataStatus.Read);

    /// <param name="measured">A closed-cup value of this formula, °C; it overrides.</param>
    public static FlashPointResult Of(Mixture mixture, Celsius? measured = null)
    {
        ArgumentNullException.ThrowIfNull(mixture);
        if (measured is { } tested)
        {
            return new FlashPointResult.Measured(tested, FlashDecisions.OfMeasured((double)tested.Degrees), [
                new(Rule, $"{tested.Degrees:0.0} °C was measured, and holds.", Test)]);
        }

        FlashComponents components = FlashComponents.Of(mixture);
        if (!components.Known.Any(component => component.FlashKelvin is not null))
        {
            return WithoutFuel(components);
        }

        var activity = new FlashActivity(components.Known);
        double highest = components.Known.Any(component => component.FlashKelvin is null) ? HighestWithWaterCelsius : HighestCelsius;
        double? celsius = Solve(components.Known, activity.Gammas, highest);
        return celsius is { } found
            ? Estimate(mixture, components, activity, found)
            : new FlashPointResult.NoneFound(
                new((decimal)highest),
                FormattableString.Invariant($"No flash point up to {highest:0} °C comes out of what is known. A test may still find one."),
                components.LeftOut,
                []);
    }

    /// <summary>Ethanol and water alone by one model, °C; null where it finds none below 95 °C.</summary>
    public static double? OfEthanolWater(EthanolStrength strength, ActivityModel model)
    {
        ArgumentNullException.ThrowIfNull(model);
        IReadOnlyList<FlashComponent> components =
            FlashComponents.Of(Mixture.Of([MixtureLine.OfAlcohol(Guid.Empty, "ethanol and water", 1, strength)])).Known;
        var activity = new FlashActivity(components);
        return activity.Model == FlashModel.Uniquac
            ? Solve(components, kelvin => activity.GammasBy(model.Of, kelvin), HighestWithWaterCelsius)
            : components[0].FlashKelvin - Antoine.ZeroCelsius;
    }

    private static FlashPointResult WithoutFuel(FlashComponents components) => components.LeftOut.Count > 0
        ? new FlashPointResult.Unknown(
            $"No flash point can be worked out: {string.Join("; ", components.LeftOut.Select(part => $"{part.Name}: {part.Why}"))}.",
            components.LeftOut)
        : new FlashPointResult.NoneFound(new((decimal)HighestWithWaterCelsius), "Nothing in it burns.", [], []);

    private static FlashPointResult.Estimated Estimate(Mixture mixture, FlashComponents components, FlashActivity activity, double celsius)
    {
        (double Lowest, double Highest)? models = activity.Model == FlashModel.Uniquac ? OfFiveModels(components.Known, activity) : null;
        KnownError error = FlashErrors.Of(activity.Model, mixture);
        FlashDecision decision = FlashDecisions.OfEstimate(celsius, error.Largest, mixture, components.LeftOut);
        return new(
            Rounded(celsius),
            activity.Model,
            error,
            models is { } low ? Rounded(low.Lowest) : null,
            models is { } high ? Rounded(high.Highest) : null,
            decision,
            components.LeftOut,
            [.. Warnings(mixture, components, activity.Model, celsius)],
            [.. Workings(components, activity, celsius)]);
    }

    /// <summary>°C where the sum reaches 1; null where it does not up to the highest.</summary>
    private static double? Solve(IReadOnlyList<FlashComponent> components, Func<double, double[]> gammas, double highest)
    {
        (double low, double high) = (LowestCelsius + Antoine.ZeroCelsius, highest + Antoine.ZeroCelsius);
        double Sum(double kelvin)
        {
            double[] gamma = gammas(kelvin);
            double sum = 0;
            for (int i = 0; i < gamma.Length; i++)
            {
                sum += components[i].MoleFraction * gamma[i] * components[i].VapourRatio(kelvin);
            }

            return sum;
        }

        // The logarithm is nearly straight in T, so a few steps find it.
        return Sum(high) < 1 ? null : Root.Rising(kelvin => Math.Log(Sum(kelvin)), 0, low, high) - Antoine.ZeroCelsius;
    }

    private static (double Lowest, double Highest) OfFiveModels(IReadOnlyList<FlashComponent> components, FlashActivity activity)
    {
        double[] found = [.. EthanolWaterActivity.All.Select(model =>
            Solve(components, kelvin => activity.GammasBy(model.Of, kelvin), HighestWithWaterCelsius)).OfType<double>()];
        return (found.Min(), found.Max());
    }

    private static IEnumerable<string> Warnings(Mixture mixture, FlashComponents components, FlashModel model, double celsius)
    {
        bool hasWater = mixture.Water > 0;
        if (model is FlashModel.Ideal or FlashModel.UniquacAndIdeal)
        {
            yield return model == FlashModel.Ideal && hasWater
                ? "Reckoned as if ideal, with water in it. Such an estimate can read far too high, which is the unsafe side. Have it tested."
                : "Not every component has group data, so part of it is reckoned as if ideal. The error is not known.";
        }

        bool parts = mixture.Water > WaterToPart
            && (components.LeftOut.Count > 0 || components.Known.Any(component => !component.Substance.MixesWithWater));
        if (parts)
        {
            yield return "The estimate holds for one clear liquid. If oil and water part, the oily layer has a flash point of its own.";
        }

        if (mixture.Water > MostlyWater)
        {
            yield return "Almost all of it is water: a measured flash point will be higher than this.";
        }

        foreach (LeftOut part in components.LeftOut)
        {
            yield return FormattableString.Invariant($"Left out: {part.Name}, {100 * part.Share:0.##} % by weight; {part.Why}. ")
                + (part.FlashPoint > celsius
                    ? "Its own flash point is higher, so leaving it out makes the estimate lower, the cautious side."
                    : "It may bring the flash point down.");
        }
    }

    private static IEnumerable<WorkingStep> Workings(FlashComponents components, FlashActivity activity, double celsius)
    {
        double kelvin = celsius + Antoine.ZeroCelsius;
        double[] gammas = activity.Gammas(kelvin);
        for (int i = 0; i < gammas.Length; i++)
        {
            FlashComponent part = components.Known[i];
            if (part.FlashKelvin is not { } flash)
            {
                yield return new(Rule, $"{part.Substance.Name}: mole fraction {part.MoleFraction:0.0000}; it does not burn.", Method);
                continue;
            }

            Source source = part.Substance.FlashPoint!.Source;
            yield return new(
                Rule,
                $"{part.Substance.Name}: mole fraction {part.MoleFraction:0.0000} × activity {gammas[i]:0.0000} × vapour {part.VapourRatio(kelvin):0.0000} of that at its own {flash - Antoine.ZeroCelsius:0.#} °C = {part.MoleFraction * gammas[i] * part.VapourRatio(kelvin):0.0000}.",
                source);
        }

        yield return new(Rule, $"At {celsius:0.0} °C these come to 1.", Method);
    }

    private static Celsius Rounded(double celsius) => new(decimal.Round((decimal)celsius, 4));
}
