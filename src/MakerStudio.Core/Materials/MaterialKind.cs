namespace MakerStudio.Core.Materials;

/// <summary>What a material is for. Decides its lot letter, its papers and how it is stocked, all of which can be changed per material.</summary>
public enum MaterialKind
{
    FragranceOil,
    EssentialOil,
    Solvent,
    CarrierBase,
    Fixative,
    Solubiliser,
    Preservative,
    Water,
    Wax,
    Colourant,
    DryBotanical,
    PreBlend,
    Bottle,
    Sprayer,
    Closure,
    Reed,
    Wick,
    Label,
    Carton,
    OtherPackaging,
}
