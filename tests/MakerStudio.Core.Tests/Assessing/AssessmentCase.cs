using MakerStudio.Core.Assessing;
using MakerStudio.Core.Materials;
using MakerStudio.Core.Products;
using MakerStudio.Core.Quantities;

namespace MakerStudio.Core.Tests.Assessing;

/// <summary>An invented studio's spray, Fig v3: fragrance 12 %, DPG 5 %, alcohol 83 %.</summary>
internal static class AssessmentCase
{
    public static MarketChoices Europe { get; } = new(LabelScheme.EuropeanUnion, [], 0.01m, [], new(2026, 11, 25));

    public static MarketChoices States { get; } = new(LabelScheme.UnitedStates, [], null, [], new(2026, 11, 25));

    public static AssessedMaterial Fragrance { get; } = new(
        Id(1), "Fig fragrance", MaterialKind.FragranceOil,
        Density: new(0.98m),
        FlashPoint: new Celsius(85),
        Hazards: new("Skin Sens. 1 H317; Aquatic Chronic 2 H411"),
        Composition:
        [
            new("linalool", "78-70-6", 5, 10),
            new("hexyl cinnamal", "101-86-0", 1, 5),
            new("citral", "5392-40-5", 0.1m, 1, StatedPercent: 0.4m),
        ],
        Certificate: new("51", new(2026, 1, 10), new Dictionary<string, decimal> { ["10A"] = 20, ["10B"] = 30, ["12"] = 100 }),
        VanillinPercent: 0,
        PhthalateFree: true,
        CmrFree: true);

    public static AssessedMaterial Dpg { get; } =
        new(Id(2), "DPG", MaterialKind.Fixative, CasNumber.Of("25265-71-8"), new Density(1.023m), FlashPoint: new Celsius(124));

    public static AssessedMaterial Alcohol { get; } =
        new(Id(3), "Perfumer's alcohol", MaterialKind.Solvent, Density: new Density(0.807m), Strength: new(96, AlcoholBasis.PercentVolume));

    public static AssessedFormula Fig(params decimal[] shares) => Of(new RoomSprayAlcohol(), shares is [] ? [0.12m, 0.05m, 0.83m] : shares);

    public static AssessedFormula Of(ProductKind kind, IReadOnlyList<decimal> shares) => new(
        kind,
        [.. ((AssessedMaterial[])[Fragrance, Dpg, Alcohol]).Zip(shares, (material, share) => new AssessedLine(material.Id, material, share))],
        MeasuredFacts.None,
        PackMillilitres: 100);

    private static Guid Id(int number) => new(number, 0, 0, new byte[8]);
}
