namespace MakerStudio.Core.Hazards;

/// <summary>
/// A hazard class, split where the rules judge parts of it apart: acute toxicity by route, STOT SE 3 by effect.
/// </summary>
public enum HazardClass
{
    FlammableLiquid,
    Aerosol,
    FlammableSolid,
    CorrosiveToMetals,
    AcuteOral,
    AcuteDermal,
    AcuteInhalation,
    Skin,
    Eye,
    RespiratorySensitisation,
    SkinSensitisation,
    Mutagenicity,
    Carcinogenicity,
    Reproduction,
    Lactation,
    StotSingle,
    StotRespiratoryIrritation,
    StotNarcotic,
    StotRepeated,
    Aspiration,
    AquaticAcute,
    AquaticChronic,
    OzoneLayer,
    EndocrineHuman,
    EndocrineEnvironment,
    Persistent,
    VeryPersistent,
    Mobile,
    VeryMobile,
}

public enum SignalWord
{
    None,
    Warning,
    Danger,
}

/// <summary>The GHS pictograms that the classes here can ask for.</summary>
public enum Pictogram
{
    /// <summary>Flame.</summary>
    Ghs02 = 2,

    /// <summary>Corrosion.</summary>
    Ghs05 = 5,

    /// <summary>Skull and crossbones.</summary>
    Ghs06 = 6,

    /// <summary>Exclamation mark.</summary>
    Ghs07 = 7,

    /// <summary>Health hazard.</summary>
    Ghs08 = 8,

    /// <summary>Environment.</summary>
    Ghs09 = 9,
}

public static class Pictograms
{
    /// <summary>As it is written: GHS02.</summary>
    public static string Code(Pictogram pictogram) => $"GHS0{(int)pictogram}";

    public static string Name(Pictogram pictogram) => pictogram switch
    {
        Pictogram.Ghs02 => "flame",
        Pictogram.Ghs05 => "corrosion",
        Pictogram.Ghs06 => "skull and crossbones",
        Pictogram.Ghs07 => "exclamation mark",
        Pictogram.Ghs08 => "health hazard",
        _ => "environment",
    };
}
