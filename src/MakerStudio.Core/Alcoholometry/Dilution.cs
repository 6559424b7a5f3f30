using MakerStudio.Core.Quantities;
using MakerStudio.Core.Workings;

namespace MakerStudio.Core.Alcoholometry;

/// <summary>
/// Dilution by mass balance: the ethanol in is the ethanol out, and masses add where volumes do not. Volumes follow
/// from OIML R 22 at the temperature of the work.
/// </summary>
public static class Dilution
{
    /// <summary>Most that is worked out, g: a thousand tonnes. Own limit, against a slip of the keyboard.</summary>
    public const double LargestGrams = 1e9;

    private const string Rule = "Dilution";
    private const double MillilitresPerGram = 1000; // ÷ kg/m³

    public static DilutionResult Of(DilutionRequest request)
    {
        ArgumentNullException.ThrowIfNull(request);
        if (WhyNot(request) is { } why)
        {
            return new DilutionResult.NotPossible(why);
        }

        (double start, double add) = Masses(request);
        return start + add > LargestGrams
            ? new DilutionResult.NotPossible("This comes to more than a thousand tonnes. Look at the amount and the strengths again.")
            : PlanOf(request, start, add);
    }

    private static string? WhyNot(DilutionRequest request)
    {
        if (EthanolWaterScope.WhyNotAt(request.At) is { } outside)
        {
            return outside;
        }

        if ((request.Fixed.Mass?.Grams ?? request.Fixed.Volume!.Value.Millilitres) <= 0)
        {
            return "Give an amount above zero.";
        }

        (EthanolStrength from, EthanolStrength with, EthanolStrength to) = (request.From, request.With, request.To);
        if (from == to)
        {
            return null;
        }

        bool between = (from < to && to < with) || (with < to && to < from);
        return between
            ? null
            : $"{to} cannot be reached from {from} by adding {(with == EthanolStrength.Water ? "water" : with.ToString())}. "
                + "The strength wanted must lie between the two.";
    }

    /// <summary>Grams to start from and to add.</summary>
    private static (double Start, double Add) Masses(DilutionRequest request)
    {
        double addPerStart = request.From == request.To
            ? 0
            : (request.From.MassFraction - request.To.MassFraction) / (request.To.MassFraction - request.With.MassFraction);
        EthanolStrength of = request.Fixed.IsFinal ? request.To : request.From;
        double grams = request.Fixed.Mass is { } mass
            ? (double)mass.Grams
            : (double)request.Fixed.Volume!.Value.Millilitres * DensityAt(of, request.At) / MillilitresPerGram;
        double start = request.Fixed.IsFinal ? grams / (1 + addPerStart) : grams;
        return (start, start * addPerStart);
    }

    private static DilutionResult.Plan PlanOf(DilutionRequest request, double startGrams, double addGrams)
    {
        double startVolume = VolumeOf(startGrams, request.From, request.At);
        double addVolume = VolumeOf(addGrams, request.With, request.At);
        double finalVolume = VolumeOf(startGrams + addGrams, request.To, request.At);
        double contraction = startVolume + addVolume - finalVolume;
        double ethanol = (startGrams * request.From.MassFraction) + (addGrams * request.With.MassFraction);
        WorkingStep[] workings =
        [
            new(Rule, $"{startGrams:0.00} g at {request.From.PercentMass:0.000} % by weight and {addGrams:0.00} g at {request.With.PercentMass:0.000} % hold {ethanol:0.00} g of ethanol in {startGrams + addGrams:0.00} g: {request.To.PercentMass:0.000} % by weight.", R22.Source),
            new(Rule, $"At {request.At.Degrees:0.##} °C, {startVolume:0.00} mL and {addVolume:0.00} mL become {finalVolume:0.00} mL: {contraction:0.00} mL less than their sum.", R22.Source),
        ];
        return new(
            Portion(startGrams, startVolume, request.From),
            Portion(addGrams, addVolume, request.With),
            Portion(startGrams + addGrams, finalVolume, request.To),
            Volume.FromMillilitres((decimal)contraction),
            workings);
    }

    private static DilutionPortion Portion(double grams, double millilitres, EthanolStrength strength) =>
        new(Mass.RoundGrams((decimal)grams), Volume.FromMillilitres((decimal)millilitres), strength);

    private static double VolumeOf(double grams, EthanolStrength strength, Celsius at) =>
        grams * MillilitresPerGram / DensityAt(strength, at);

    private static double DensityAt(EthanolStrength strength, Celsius at) =>
        R22.KilogramsPerCubicMetre(strength.MassFraction, (double)at.Degrees);
}
