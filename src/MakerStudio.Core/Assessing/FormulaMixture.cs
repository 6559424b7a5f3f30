using MakerStudio.Core.Alcoholometry;
using MakerStudio.Core.Blending;
using MakerStudio.Core.Materials;

namespace MakerStudio.Core.Assessing;

/// <summary>
/// A formula's lines as physics sees them. Of a stated range the middle counts here, unless the supplier gave the
/// value: physics wants the likely figure, where classification wants the worst.
/// </summary>
public static class FormulaMixture
{
    private const double Percent = 100;

    private static readonly CasNumber EthanolCas = CasNumber.Of(Substances.EthanolCas);
    private static readonly CasNumber WaterCas = CasNumber.Of(Substances.WaterCas);

    /// <exception cref="ArgumentException">No line has mass, or a share is below zero.</exception>
    public static Mixture Of(AssessedFormula formula)
    {
        ArgumentNullException.ThrowIfNull(formula);
        return Mixture.Of(formula.Lines.Select(Of));
    }

    public static MixtureLine Of(AssessedLine line)
    {
        ArgumentNullException.ThrowIfNull(line);
        return PreparedMaterial.Of(line.Material).Line with { LineId = line.LineId, MassFraction = (double)line.Fraction };
    }

    /// <summary>A line of the material, without its place and share.</summary>
    internal static MixtureLine LineOf(AssessedMaterial material)
    {
        CasNumber? cas = material.Cas ?? (material.Kind == MaterialKind.Water ? WaterCas : null);
        Constituent[] stated = Stated(material);
        IReadOnlyList<Constituent> all = material.Strength is { } strength ? WithAlcohol(stated, strength, IsPropanol(material))
            : cas is not null && (stated.Length == 0 || Substances.Find(cas) is not null) ? WithItself(stated, cas, material.Name)
            : stated;
        // The table's density stands in for a missing one where the line is that substance and nothing else.
        Substance? substance = stated.Length == 0 && material.Strength is null ? Substances.Find(cas) : null;
        return new(
            Guid.Empty,
            material.Name,
            0,
            material.Density ?? substance?.Density.Value.Density,
            all,
            material.FlashPoint,
            ThermalExpansion.Find(cas)?.ExpansionPerKelvin);
    }

    /// <summary>Ethanol and water take what the stated denaturants and the like leave.</summary>
    private static Constituent[] WithAlcohol(Constituent[] stated, AlcoholStrength strength, bool isPropanol)
    {
        CasNumber cas = isPropanol ? Known.Propanol.Cas[0] : EthanolCas;
        double fraction = isPropanol ? PropanolFraction(strength) : EthanolStrength.Of(strength).MassFraction;
        Constituent[] others = [.. stated.Where(part => part.Cas != cas && part.Cas != WaterCas)];
        double alcohol = 1 - others.Sum(part => part.MassFraction);
        return
        [
            new(cas, isPropanol ? "isopropanol" : "ethanol", alcohol * fraction),
            new(WaterCas, "water", alcohol * (1 - fraction)),
            .. others,
        ];
    }

    private static bool IsPropanol(AssessedMaterial material) =>
        Known.Propanol.Is(material.Cas) || (material.Cas is null && Known.Propanol.IsNamedIn(material.Name));

    /// <summary>Isopropanol by weight. The alcohol tables are of ethanol, so volumes are taken as adding up; up to 2 points off.</summary>
    private static double PropanolFraction(AlcoholStrength strength)
    {
        double stated = strength.PercentVolume is { } byVolume ? (double)byVolume / Percent : (double)strength.Value / Percent;
        double alcohol = stated * (double)Substances.Find(Known.Propanol.Cas[0])!.Density.Value.Density.GramsPerMillilitre;
        double water = (1 - stated) * (double)Substances.Water.Density.Value.Density.GramsPerMillilitre;
        return strength.PercentVolume is null ? stated : alcohol / (alcohol + water);
    }

    /// <summary>What is sold as one substance is that substance, save for what else is stated of it.</summary>
    private static Constituent[] WithItself(Constituent[] stated, CasNumber cas, string name)
    {
        double rest = 1 - stated.Sum(part => part.MassFraction);
        return rest <= 0 || stated.Any(part => part.Cas == cas) ? stated : [new(cas, name, rest), .. stated];
    }

    /// <summary>Ranges whose middles come to more than the whole are brought down to it in proportion.</summary>
    private static Constituent[] Stated(AssessedMaterial material)
    {
        Constituent[] parts = [.. material.Composition.Select(part => new Constituent(
            CasNumber.TryParse(part.Cas ?? SubstanceNames.CasOf(part.Name), out CasNumber? cas, out _) ? cas : null,
            part.Name,
            (double)(part.StatedPercent ?? ((part.LowPercent + part.HighPercent) / 2)) / Percent))];
        double sum = parts.Sum(part => part.MassFraction);
        return sum > 1 ? [.. parts.Select(part => part with { MassFraction = part.MassFraction / sum })] : parts;
    }
}
