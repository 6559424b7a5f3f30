using MakerStudio.Core.Hazards.Rules;

namespace MakerStudio.Core.Hazards;

/// <summary>Every rule of classification, in the order of CLP Annex I. A new rule is a file and a line here.</summary>
public static class HazardRules
{
    public static IReadOnlyList<HazardRule> All { get; } =
    [
        new FlammableLiquid(),
        new AcuteToxicity(),
        new SkinCorrosionAndIrritation(),
        new EyeDamageAndIrritation(),
        new RespiratorySensitisation(),
        new SkinSensitisation(),
        new Mutagenicity(),
        new Carcinogenicity(),
        new ReproductiveToxicity(),
        new StotSingleExposure(),
        new StotSingleExposure3(),
        new StotRepeatedExposure(),
        new AspirationHazard(),
        new EndocrineDisruption(),
        new AquaticAcute(),
        new AquaticChronic(),
        new PersistentSubstances(),
        new OzoneLayer(),
        new AllergensNamed(),
        new DrySkin(),
    ];
}
