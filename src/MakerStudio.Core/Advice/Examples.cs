using MakerStudio.Core.Assessing;
using MakerStudio.Core.Blending;
using MakerStudio.Core.Materials;
using MakerStudio.Core.Products;
using MakerStudio.Core.Quantities;

namespace MakerStudio.Core.Advice;

/// <summary>The makings of the worked examples: invented materials with all papers. Amounts are % by weight.</summary>
internal static class Examples
{
    private const decimal Whole = 100m;
    private static readonly StatedHazards NotClassified = new("not classified");

    internal static AssessedFormula Spray(params AssessedLine[] lines) => Of(new RoomSprayAlcohol(), lines);

    internal static AssessedFormula Of(ProductKind kind, params AssessedLine[] lines) => new(kind, lines, MeasuredFacts.None);

    internal static AssessedLine Line(AssessedMaterial material, decimal percent, LineBasis basis = LineBasis.PercentByWeight) =>
        new(LineIdOf(material), material, percent / Whole, basis);

    internal static AssessedLine Water(decimal percent) => Line(Material("Water", MaterialKind.Water, Substances.WaterCas), percent);

    /// <param name="percentVolume">As bought.</param>
    internal static AssessedLine Alcohol(decimal percent, decimal percentVolume = 96m) => Line(
        Material("Alcohol", MaterialKind.Solvent) with { Strength = new(percentVolume, AlcoholBasis.PercentVolume) }, percent);

    internal static AssessedLine Oil(decimal percent) => Line(OilMaterial, percent);

    internal static AssessedLine Wax(decimal percent) => Line(Material("Soy wax", MaterialKind.Wax) with { Density = new(0.9m) }, percent);

    internal static AssessedLine Petals(decimal percent) => Line(Material("Petals", MaterialKind.DryBotanical), percent);

    internal static AssessedLine Dpm(decimal percent) => Line(Material("DPM", MaterialKind.CarrierBase, "34590-94-8"), percent);

    internal static AssessedLine Solubiliser(decimal percent) =>
        Line(Material("Solubiliser", MaterialKind.Solubiliser) with { Density = new(1.05m) }, percent);

    internal static AssessedLine Preservative(decimal percent) =>
        Line(Material("Preservative", MaterialKind.Preservative) with { Density = new(1.05m) }, percent);

    /// <summary>A fragrance oil with every paper and statement, no citrus and no vanillin.</summary>
    internal static AssessedMaterial OilMaterial { get; } = Material("Fig oil", MaterialKind.FragranceOil) with
    {
        Density = new(0.98m),
        FlashPoint = new Celsius(95m),
        PhthalateFree = true,
        CmrFree = true,
        VanillinPercent = 0m,
    };

    internal static AssessedMaterial Material(string name, MaterialKind kind, string? cas = null) => new(
        IdOf(name), name, kind, cas is null ? null : CasNumber.Of(cas), Hazards: NotClassified);

    private static Guid LineIdOf(AssessedMaterial material) => IdOf("line " + material.Name);

    /// <summary>The same name has the same id every time.</summary>
    private static Guid IdOf(string name) => new(System.Security.Cryptography.SHA256.HashData(System.Text.Encoding.UTF8.GetBytes(name)).AsSpan(0, 16));
}
