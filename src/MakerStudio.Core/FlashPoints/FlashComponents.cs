using MakerStudio.Core.Blending;
using MakerStudio.Core.Materials;

namespace MakerStudio.Core.FlashPoints;

/// <summary>A substance in the liquid, and how it burns.</summary>
/// <param name="FlashKelvin">Null for water.</param>
internal sealed record FlashComponent(Substance Substance, double MassFraction, double MoleFraction, double? FlashKelvin)
{
    private readonly double _pascalAtFlash =
        FlashKelvin is { } flash ? Substance.AntoineNear(flash)!.Pascal(flash) : double.PositiveInfinity;

    /// <summary>
    /// Share of what it needs to flash by itself that its ideal vapour gives at a temperature, per mole fraction; 0 for
    /// what does not burn.
    /// </summary>
    internal double VapourRatio(double kelvin) =>
        FlashKelvin is null ? 0 : Substance.AntoineNear(kelvin)!.Pascal(kelvin) / _pascalAtFlash;
}

/// <summary>The substances of a mixture that can be reckoned with, and everything that cannot.</summary>
internal sealed record FlashComponents(IReadOnlyList<FlashComponent> Known, IReadOnlyList<LeftOut> LeftOut)
{
    /// <summary>
    /// Flash point of pure ethanol the published models were run with, °C (NFPA 497:2008). Other lists say 12; the
    /// mixture method starts from 13.0 so that it can be compared with what is published.
    /// </summary>
    internal const double EthanolCelsius = 13.0;

    internal static FlashComponents Of(Mixture mixture)
    {
        var known = new SortedDictionary<string, (Substance Substance, double Mass)>(StringComparer.Ordinal);
        var leftOut = new List<LeftOut>();
        foreach (MixtureLine line in mixture.Lines)
        {
            double? ownFlash = line.FlashPoint is { } flash ? (double)flash.Degrees : null;
            if (line.Unknown > 0)
            {
                leftOut.Add(new(line.Name, line.MassFraction * line.Unknown, ownFlash, "its composition is not known"));
            }

            foreach (Constituent part in line.Constituents.Where(part => part.MassFraction > 0))
            {
                double mass = line.MassFraction * part.MassFraction;
                Substance? substance = Substances.Find(part.Cas);
                if (WhyNot(substance) is { } why)
                {
                    double? flashOfPart = substance?.FlashPoint?.Value.Celsius ?? ownFlash;
                    leftOut.Add(new($"{part.Name} in {line.Name}", mass, flashOfPart, why));
                }
                else
                {
                    double before = known.TryGetValue(substance!.Cas.Text, out var sum) ? sum.Mass : 0;
                    known[substance.Cas.Text] = (substance, before + mass);
                }
            }
        }

        double moles = known.Values.Sum(part => part.Mass / part.Substance.MolarMass);
        return new(
            [.. known.Values.Select(part => new FlashComponent(
                part.Substance, part.Mass, part.Mass / part.Substance.MolarMass / moles, FlashKelvin(part.Substance)))],
            leftOut);
    }

    private static double? FlashKelvin(Substance substance) => substance switch
    {
        { DoesNotBurn: true } => null,
        { Cas.Text: Substances.EthanolCas } => EthanolCelsius + Antoine.ZeroCelsius,
        _ => substance.FlashPoint!.Value.Celsius + Antoine.ZeroCelsius,
    };

    private static string? WhyNot(Substance? substance)
    {
        if (substance is null)
        {
            return "it is not in the table of substances";
        }

        if (substance.DoesNotBurn)
        {
            return null;
        }

        return substance switch
        {
            { FlashPoint: null } => "no flash point is known for it",
            _ when substance.AntoineNear(Antoine.ZeroCelsius) is null => "no vapour pressure is known for it",
            _ => null,
        };
    }
}
