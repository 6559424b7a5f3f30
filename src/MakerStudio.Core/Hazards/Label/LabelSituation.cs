namespace MakerStudio.Core.Hazards.Label;

public enum LabelMarket
{
    /// <summary>European Economic Area and Northern Ireland.</summary>
    EuropeanUnion,

    /// <summary>Retained CLP: no UFI, no classes of Reg. (EU) 2023/707.</summary>
    GreatBritain,
}

/// <summary>How the product is sold.</summary>
/// <param name="CapacityMillilitres">Of the pack, above 0; null when not decided: then nothing of a small pack applies.</param>
/// <param name="HasSealedSpray">A sealed spray attachment, or a pressurised dispenser: nobody can drink from it.</param>
public sealed record LabelSituation(
    decimal? CapacityMillilitres = null,
    bool ForGeneralPublic = true,
    bool HasSealedSpray = false,
    LabelMarket Market = LabelMarket.EuropeanUnion);
