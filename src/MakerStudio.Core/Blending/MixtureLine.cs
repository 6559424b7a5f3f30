using MakerStudio.Core.Alcoholometry;
using MakerStudio.Core.Materials;
using MakerStudio.Core.Quantities;

namespace MakerStudio.Core.Blending;

/// <summary>A substance in a material.</summary>
/// <param name="Cas">Null where only a name is known.</param>
/// <param name="MassFraction">Share of the material by weight, 0 to 1.</param>
public sealed record Constituent(CasNumber? Cas, string Name, double MassFraction);

/// <summary>A formula line as physics sees it.</summary>
/// <param name="Name">The material, as a sentence can call it.</param>
/// <param name="MassFraction">Share by weight, 0 or more; a mixture takes the shares of its own sum.</param>
/// <param name="Density">At 20 °C; null where not known.</param>
/// <param name="Constituents">What is known of what it is made of; together at most 1. The rest is unknown, not absent.</param>
/// <param name="FlashPoint">Of the material as a whole, closed cup, from its safety data sheet.</param>
/// <param name="ExpansionPerKelvin">Of volume, near room temperature; null where not known. Mostly 0.0007 to 0.0014.</param>
public sealed record MixtureLine(
    Guid LineId,
    string Name,
    double MassFraction,
    Density? Density,
    IReadOnlyList<Constituent> Constituents,
    Celsius? FlashPoint = null,
    double? ExpansionPerKelvin = null)
{
    /// <summary>Constituents may sum to a little over 1 from rounding on a data sheet.</summary>
    internal const double RoundingShare = 1e-6;

    private static readonly CasNumber EthanolCas = CasNumber.Of(Substances.EthanolCas);
    private static readonly CasNumber WaterCas = CasNumber.Of(Substances.WaterCas);

    /// <summary>Ethanol of a stated strength, the rest water.</summary>
    public static MixtureLine OfAlcohol(Guid lineId, string name, double massFraction, EthanolStrength strength) => new(
        lineId, name, massFraction, null,
        [new(EthanolCas, "ethanol", strength.MassFraction), new(WaterCas, "water", 1 - strength.MassFraction)]);

    /// <summary>A single substance of the built-in table, with its density there.</summary>
    public static MixtureLine OfSubstance(Guid lineId, Substance substance, double massFraction)
    {
        ArgumentNullException.ThrowIfNull(substance);
        return new(
            lineId, substance.Name, massFraction, substance.Density.Value.Density, [new(substance.Cas, substance.Name, 1)],
            ExpansionPerKelvin: ThermalExpansion.Find(substance.Cas)?.ExpansionPerKelvin);
    }

    /// <summary>Share of ethanol in the line by weight.</summary>
    public double Ethanol => ShareOf(EthanolCas);

    /// <summary>Share of water in the line by weight.</summary>
    public double Water => ShareOf(WaterCas);

    /// <summary>Share of the line nothing is known about, by weight; 0 within rounding.</summary>
    public double Unknown => 1 - Constituents.Sum(part => part.MassFraction) is var rest && rest > RoundingShare ? rest : 0;

    public double ShareOf(CasNumber cas) => Constituents.Where(part => part.Cas == cas).Sum(part => part.MassFraction);
}

/// <summary>Lines with their shares of one total. Sums run in one order, so the order of lines changes no digit.</summary>
public sealed record Mixture
{
    private Mixture(IReadOnlyList<MixtureLine> lines) => Lines = lines;

    /// <summary>With mass in them, in the order of their ids, shares summing to 1.</summary>
    public IReadOnlyList<MixtureLine> Lines { get; }

    /// <summary>Share of ethanol by weight.</summary>
    public double Ethanol => Lines.Sum(line => line.MassFraction * line.Ethanol);

    /// <summary>Share of water by weight.</summary>
    public double Water => Lines.Sum(line => line.MassFraction * line.Water);

    /// <summary>The strength of the ethanol and water by themselves; null where there is no ethanol.</summary>
    public EthanolStrength? AlcoholPart => Ethanol is > 0 and var ethanol
        ? EthanolStrength.FromMassFraction(Math.Min(1, ethanol / (ethanol + Water)))
        : null;

    /// <exception cref="ArgumentException">No line has mass, a share is below zero, or a line's constituents come to more than the line.</exception>
    public static Mixture Of(IEnumerable<MixtureLine> lines)
    {
        ArgumentNullException.ThrowIfNull(lines);
        MixtureLine[] all = [.. lines];
        foreach (MixtureLine line in all)
        {
            Check(line);
        }

        MixtureLine[] present = [.. all.Where(line => line.MassFraction > 0).OrderBy(line => line.LineId)];
        double total = present.Sum(line => line.MassFraction);
        return total > 0
            ? new([.. present.Select(line => line with { MassFraction = line.MassFraction / total })])
            : throw new ArgumentException("A mixture needs at least one line with mass.", nameof(lines));
    }

    private static void Check(MixtureLine line)
    {
        bool sound = line.MassFraction is >= 0 and <= double.MaxValue
            && line.Constituents.All(part => part.MassFraction is >= 0 and <= 1 + MixtureLine.RoundingShare)
            && line.Constituents.Sum(part => part.MassFraction) <= 1 + MixtureLine.RoundingShare;
        if (!sound)
        {
            throw new ArgumentException($"{line.Name}: shares lie between 0 and 1, and constituents come to no more than their line.");
        }
    }
}
