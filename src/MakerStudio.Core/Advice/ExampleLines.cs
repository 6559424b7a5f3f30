using MakerStudio.Core.Assessing;
using MakerStudio.Core.Blending;
using MakerStudio.Core.Materials;
using MakerStudio.Core.Products;
using MakerStudio.Core.Quantities;

namespace MakerStudio.Core.Advice;

/// <summary>The makings of the worked examples: invented materials with all papers. Amounts are % by weight.</summary>
public static class ExampleLines
{
    private const decimal Whole = 100m;
    private static readonly StatedHazards NotClassified = new("not classified");

    public static AssessedFormula Spray(params AssessedLine[] lines) => Of(new RoomSprayAlcohol(), lines);

    public static AssessedFormula Of(ProductKind kind, params AssessedLine[] lines) => new(kind, lines, MeasuredFacts.None);

    public static AssessedLine Line(AssessedMaterial material, decimal percent, LineBasis basis = LineBasis.PercentByWeight) =>
        new(LineIdOf(material), material, percent / Whole, basis);

    public static AssessedLine Water(decimal percent) => Line(Material("Water", MaterialKind.Water, Substances.WaterCas), percent);

    /// <param name="percentVolume">As bought.</param>
    public static AssessedLine Alcohol(decimal percent, decimal percentVolume = 96m) => Line(
        Material("Alcohol", MaterialKind.Solvent) with { Strength = new(percentVolume, AlcoholBasis.PercentVolume) }, percent);

    public static AssessedLine Oil(decimal percent) => Line(OilMaterial, percent);

    public static AssessedLine Wax(decimal percent) => Line(Material("Soy wax", MaterialKind.Wax) with { Density = new(0.9m) }, percent);

    public static AssessedLine Petals(decimal percent) => Line(Material("Petals", MaterialKind.DryBotanical), percent);

    public static AssessedLine Dpm(decimal percent) => Line(Material("DPM", MaterialKind.CarrierBase, "34590-94-8"), percent);

    public static AssessedLine Solubiliser(decimal percent) =>
        Line(Material("Solubiliser", MaterialKind.Solubiliser) with { Density = new(1.05m) }, percent);

    public static AssessedLine Preservative(decimal percent) =>
        Line(Material("Preservative", MaterialKind.Preservative) with { Density = new(1.05m) }, percent);

    /// <summary>A fragrance oil with every paper and statement, no citrus and no vanillin.</summary>
    public static AssessedMaterial OilMaterial { get; } = Material("Fig oil", MaterialKind.FragranceOil) with
    {
        Density = new(0.98m),
        FlashPoint = new Celsius(95m),
        PhthalateFree = true,
        CmrFree = true,
        VanillinPercent = 0m,
    };

    /// <summary>An essential oil of citrus, every paper and statement there.</summary>
    public static AssessedMaterial Orange { get; } = OilMaterial with
    {
        Id = IdOf("Orange oil"), Name = "Orange oil", Kind = MaterialKind.EssentialOil, HoldsCitrus = true, FlashPoint = new Celsius(46m),
    };

    public static AssessedMaterial Lavender { get; } = OilMaterial with
    {
        Id = IdOf("Lavender oil"), Name = "Lavender oil", Kind = MaterialKind.EssentialOil, FlashPoint = new Celsius(71m),
    };

    public static AssessedMaterial Material(string name, MaterialKind kind, string? cas = null) => new(
        IdOf(name), name, kind, cas is null ? null : CasNumber.Of(cas), Hazards: NotClassified);

    private static Guid LineIdOf(AssessedMaterial material) => IdOf("line " + material.Name);

    /// <summary>The same name has the same id every time.</summary>
    private static Guid IdOf(string name) => new(System.Security.Cryptography.SHA256.HashData(System.Text.Encoding.UTF8.GetBytes(name)).AsSpan(0, 16));
}
