using MakerStudio.Core.Alcoholometry;
using MakerStudio.Core.Quantities;
using MakerStudio.Core.Workings;

namespace MakerStudio.Core.Blending;

/// <summary>The ethanol in a finished mixture, said in three ways that are not the same.</summary>
/// <param name="PercentMass">Ethanol, % by weight of the whole.</param>
/// <param name="PercentVolume">
/// mL of ethanol, as it would be by itself at 20 °C, in 100 mL of the mixture at 20 °C. Null where the density is not known.
/// </param>
/// <param name="AlcoholPart">Ethanol in the ethanol and water by themselves: what haze depends on. Null without ethanol.</param>
/// <param name="UnknownPercent">% by weight whose composition is not known; it may hold more ethanol.</param>
public sealed record AlcoholContent(
    double PercentMass, double? PercentVolume, EthanolStrength? AlcoholPart, double UnknownPercent, IReadOnlyList<WorkingStep> Workings)
{
    private const string Rule = "Alcohol in the mixture";
    private static readonly Source Lines = new("the lines' shares by weight", DataStatus.Derived);

    /// <param name="density">Of the mixture at 20 °C; null where not known.</param>
    public static AlcoholContent Of(Mixture mixture, Density? density)
    {
        ArgumentNullException.ThrowIfNull(mixture);
        double ethanol = mixture.Ethanol;
        var workings = mixture.Lines.Where(line => line.Ethanol > 0).Select(line => new WorkingStep(
            Rule, $"{line.Name} brings {100 * line.MassFraction * line.Ethanol:0.00} % by weight.", Lines, line.LineId)).ToList();
        double? percentVolume = null;
        if (density is { } known)
        {
            double pure = (double)R22.Of(EthanolStrength.Pure, new((decimal)R22.ReferenceCelsius)).GramsPerMillilitre;
            percentVolume = 100 * ethanol * (double)known.GramsPerMillilitre / pure;
            workings.Add(new(Rule, $"{100 * ethanol:0.00} % by weight × {known.GramsPerMillilitre:0.0000} ÷ {pure:0.0000} g/mL: {percentVolume:0.00} % by volume.", R22.Source));
        }

        if (mixture.AlcoholPart is { } part)
        {
            workings.Add(new(Rule, $"Ethanol and water by themselves are {part.PercentMass:0.00} % by weight, {part.PercentVolume:0.00} % vol at 20 °C.", R22.Source));
        }

        return new(100 * ethanol, percentVolume, mixture.AlcoholPart, 100 * mixture.Lines.Sum(line => line.MassFraction * line.Unknown), workings);
    }
}
