using MakerStudio.Core.Materials;
using MakerStudio.Core.Quantities;

namespace MakerStudio.Core.Assessing;

/// <summary>A fragrance certificate: how much of the material a finished product may hold.</summary>
/// <param name="Amendment">Of the standards it was reckoned by, as on the paper: "51".</param>
/// <param name="MaxPercent">By category ("10A", "10B", "12" …): per cent of the finished product by weight, 0 to 100. A category that is missing is not certified.</param>
public sealed record FragranceCertificate(string Amendment, DateOnly? IssuedOn, IReadOnlyDictionary<string, decimal> MaxPercent);

/// <summary>
/// Everything the program may know of a material, from its papers and from what the maker measured. Null is "not known".
/// </summary>
/// <param name="Cas">Of a material that is one substance.</param>
/// <param name="Density">At 20 °C.</param>
/// <param name="Strength">Of an alcohol: the rest of it is water.</param>
/// <param name="FlashPoint">Closed cup, from the sheet.</param>
/// <param name="Hazards">Of the material as a whole, section 2 of the sheet.</param>
/// <param name="Composition">Section 3 of the sheet, and substances the supplier declared; may be empty.</param>
/// <param name="VolatilePercent">Volatile organic compounds by weight as the supplier states them, low-vapour-pressure ones left out, 0 to 100.</param>
/// <param name="VanillinPercent">Vanillin and ethyl vanillin by weight, 0 to 100.</param>
/// <param name="HoldsCitrus">Citrus oil, or much limonene.</param>
/// <param name="PhthalateFree">True where the supplier's statement is at hand; null where there is none.</param>
/// <param name="CmrFree">True where the supplier states that nothing carcinogenic, mutagenic or toxic for reproduction was added.</param>
/// <param name="MissingPapers">Papers the material asks for and does not have.</param>
/// <param name="ScentShare">Of a pre-blend: how much of it is scent, 0 to 1; null counts the whole of it.</param>
public sealed record AssessedMaterial(
    Guid Id,
    string Name,
    MaterialKind Kind,
    CasNumber? Cas = null,
    Density? Density = null,
    AlcoholStrength? Strength = null,
    Celsius? FlashPoint = null,
    StatedHazards? Hazards = null,
    IReadOnlyList<StatedSubstance>? Composition = null,
    FragranceCertificate? Certificate = null,
    decimal? VolatilePercent = null,
    decimal? VanillinPercent = null,
    bool HoldsCitrus = false,
    bool? PhthalateFree = null,
    bool? CmrFree = null,
    IReadOnlyList<PaperKind>? MissingPapers = null,
    decimal? ScentShare = null)
{
    public IReadOnlyList<StatedSubstance> Composition { get; init; } = Composition ?? [];

    public IReadOnlyList<PaperKind> MissingPapers { get; init; } = MissingPapers ?? [];
}
