namespace MakerStudio.Core.Assessing;

/// <summary>
/// Hazards of a substance or a material as a safety data sheet writes them. Everything may be null or empty: what is
/// not stated is not known, which is not the same as not hazardous.
/// </summary>
/// <param name="Classes">As in section 2 or 3: "Flam. Liq. 2 H225; Eye Irrit. 2 H319"; "not classified" where the sheet says so.</param>
/// <param name="Limits">Specific concentration limits in per cent, apart by semicolons: "Skin Sens. 1A 0.01".</param>
/// <param name="OralMgPerKg">Acute toxicity estimate, above 0.</param>
/// <param name="DermalMgPerKg">Acute toxicity estimate, above 0.</param>
/// <param name="VapourMgPerLitre">Acute toxicity estimate, 4 h, above 0.</param>
/// <param name="MistMgPerLitre">Acute toxicity estimate of dust or mist, 4 h, above 0.</param>
/// <param name="AcuteM">M-factor for short-term aquatic toxicity: 1, 10, 100 …</param>
/// <param name="ChronicM">M-factor for long-term aquatic toxicity.</param>
public sealed record StatedHazards(
    string? Classes,
    string? Limits = null,
    decimal? OralMgPerKg = null,
    decimal? DermalMgPerKg = null,
    decimal? VapourMgPerLitre = null,
    decimal? MistMgPerLitre = null,
    int? AcuteM = null,
    int? ChronicM = null);

/// <summary>A substance in a material, from section 3 of the sheet. Per cent of the material by weight.</summary>
/// <param name="Cas">Null where the sheet gives a name only.</param>
/// <param name="LowPercent">Low end of the stated range, 0 to 100.</param>
/// <param name="HighPercent">High end; not below the low one.</param>
/// <param name="StatedPercent">The value the supplier gave the maker; it stands in for the range. Null: the worst end counts.</param>
/// <param name="Hazards">What the sheet says of the substance; null takes the built-in table, else unknown.</param>
public sealed record StatedSubstance(
    string Name, string? Cas, decimal LowPercent, decimal HighPercent, decimal? StatedPercent = null, StatedHazards? Hazards = null);
