namespace MakerStudio.Core.Assessing;

/// <summary>The scheme a label follows.</summary>
public enum LabelScheme
{
    /// <summary>CLP in the European Economic Area and Northern Ireland.</summary>
    EuropeanUnion,

    /// <summary>CLP as retained in Great Britain.</summary>
    GreatBritain,

    /// <summary>FHSA and FPLA.</summary>
    UnitedStates,
}

/// <summary>A limit the studio sets for one restricted substance of the fragrance standards, with its amendment.</summary>
/// <param name="Cas">One number, or several of a group whose total counts.</param>
/// <param name="MaxPercent">By category: per cent of the finished product by weight.</param>
/// <param name="IsPhototoxic">Judged together with the other phototoxic ones: Σ(share ÷ limit) ≤ 1.</param>
public sealed record SubstanceLimit(
    string Name, IReadOnlyList<string> Cas, string Amendment, IReadOnlyDictionary<string, decimal> MaxPercent, bool IsPhototoxic = false);

/// <summary>Where the studio sells, and the limits it holds itself to. The studio decides; nothing here is legal advice.</summary>
/// <param name="VocLimits">Keys of rows of the table of VOC limits that apply; empty where none does.</param>
/// <param name="AllergenPercent">Share of the finished product from which a fragrance allergen is declared, per cent by weight; null where the market asks for none.</param>
/// <param name="SubstanceLimits">The studio's own, beside those built in.</param>
/// <param name="On">The day the rules are read for: dated limits and exemptions change.</param>
public sealed record MarketChoices(
    LabelScheme Scheme,
    IReadOnlyList<string> VocLimits,
    decimal? AllergenPercent,
    IReadOnlyList<SubstanceLimit> SubstanceLimits,
    DateOnly On);
