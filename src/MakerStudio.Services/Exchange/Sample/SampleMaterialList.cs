using MakerStudio.Core.Materials;
using MakerStudio.Core.Quantities;
using MakerStudio.Services.Inventory;
using static MakerStudio.Services.Exchange.SampleNames;

namespace MakerStudio.Services.Exchange;

/// <summary>
/// The materials of the sample studio. Suppliers, codes, lives and reorder points are invented. Where a note says
/// handbook, density, CAS number and flash point are usual handbook values from memory; elsewhere they are invented.
/// </summary>
internal static class SampleMaterialList
{
    private const string FromHandbook = "Density and flash point: usual handbook values.";
    private const string FromSheet = "Density and flash point: the supplier’s sheet, invented for the sample.";

    public static IReadOnlyList<AddMaterial> All { get; } =
    [
        Liquid(FigOil, MaterialKind.FragranceOil, 0.980m, 78, FromSheet) with { ShelfLifeDays = 730, LifeAfterOpeningDays = 365, SafetyStock = 500, ReorderPoint = 1_500, Suppliers = [By(Alder, "AS-FIG-5", 10, "5 kg can"), By(OldMill, "OM 114", 6, "0.5 kg bottle")] },
        Liquid(QuinceOil, MaterialKind.FragranceOil, 0.995m, 85, FromSheet) with { ShelfLifeDays = 730, LifeAfterOpeningDays = 365, ReorderPoint = 800, Suppliers = [By(Wrenfield, "W-2207", 12, "1 kg bottle")] },
        Liquid(GreenFigOil, MaterialKind.FragranceOil, 0.968m, 74, FromSheet) with { ShelfLifeDays = 730, LifeAfterOpeningDays = 365, ReorderPoint = 500, Suppliers = [By(Wrenfield, "W-2230", 12, "1 kg bottle")] },
        Liquid(LinenOil, MaterialKind.FragranceOil, 0.962m, 80, FromSheet) with { ShelfLifeDays = 730, LifeAfterOpeningDays = 365, ReorderPoint = 200, Suppliers = [By(Wrenfield, "W-2251", 12, "0.5 kg bottle")] },
        Liquid(Bergamot, MaterialKind.EssentialOil, 0.880m, 57, "Citrus: keep cold, full and dark. " + FromHandbook) with { Cas = "8007-75-8", ShelfLifeDays = 365, LifeAfterOpeningDays = 180, ReorderPoint = 100, TwentyDropsGrams = 0.62m, Suppliers = [By(Wrenfield, "W-0310", 12, "250 g bottle")] },
        Liquid(CedarLeaf, MaterialKind.EssentialOil, 0.915m, 57, FromHandbook) with { Cas = "8007-20-3", ShelfLifeDays = 540, LifeAfterOpeningDays = 270, ReorderPoint = 100, TwentyDropsGrams = 0.65m, Suppliers = [By(Wrenfield, "W-0342", 12, "by the gram")] },
        Liquid(Ethanol, MaterialKind.Solvent, 0.790m, 13, "Flammable: no flame nearby. " + FromHandbook) with { Cas = "64-17-5", AlcoholValue = 99.5m, AlcoholBasis = AlcoholBasis.PercentVolume, ShelfLifeDays = 1095, ReorderPoint = 8_000, Suppliers = [By(Alder, "AS-ETD-20", 10, "20 kg can"), By(Brackwater, "B/995", 5, "25 L can")] },
        Liquid(Dpg, MaterialKind.Fixative, 1.023m, 124, FromHandbook) with { Cas = "25265-71-8", ShelfLifeDays = 730, ReorderPoint = 1_000, Suppliers = [By(Brackwater, "B/DPG", 5, "5 kg can")] },
        Liquid(Dpm, MaterialKind.CarrierBase, 0.951m, 75, FromHandbook) with { Cas = "34590-94-8", ShelfLifeDays = 730, ReorderPoint = 1_500, Suppliers = [By(Brackwater, "B/DPM", 5, "5 kg can")] },
        Liquid(BenzylBenzoate, MaterialKind.Fixative, 1.118m, 148, FromHandbook) with { Cas = "120-51-4", ShelfLifeDays = 730, ReorderPoint = 200, Suppliers = [By(Brackwater, "B/BB", 5, "1 kg bottle")] },
        Liquid(Polysorbate, MaterialKind.Solubiliser, 1.100m, 150, FromHandbook) with { Cas = "9005-64-5", ShelfLifeDays = 540, ReorderPoint = 500, Suppliers = [By(Beaker, "SB-T20", 7, "2 kg can")] },
        Liquid(Preservative, MaterialKind.Preservative, 1.105m, 120, "0.8 % in sprays with water. " + FromHandbook) with { Cas = "122-99-6", ShelfLifeDays = 730, LifeAfterOpeningDays = 365, ReorderPoint = 100, Suppliers = [By(Beaker, "SB-PX", 7, "0.5 kg bottle")] },
        Liquid(Water, MaterialKind.Water, 0.998m, null, "Density: handbook, 20 °C.") with { Cas = "7732-18-5", ShelfLifeDays = 180, LifeAfterOpeningDays = 60, ReorderPoint = 2_000, Suppliers = [By(Beaker, "SB-H2O-10", 7, "10 L canister")] },
        Liquid(SoyWax, MaterialKind.Wax, 0.900m, null, "Add scent at 65 °C, pour at 55 °C. Density: the supplier’s sheet, invented for the sample.") with { ShelfLifeDays = 730, SafetyStock = 1_000, ReorderPoint = 4_000, Suppliers = [By(Tallowby, "TB-S1", 8, "10 kg carton")] },
        Dry(Dye, MaterialKind.Colourant) with { ShelfLifeDays = 1095, Suppliers = [By(Tallowby, "TB-C7", 8, "100 g bag")] },
        Dry(Orris, MaterialKind.DryBotanical) with { ShelfLifeDays = 365, ReorderPoint = 100, Suppliers = [By(Lindenhay, "orris", 14, "0.5 kg bag")] },
        Dry(Lavender, MaterialKind.DryBotanical) with { ShelfLifeDays = 365, ReorderPoint = 1_000, Suppliers = [By(Lindenhay, "lav", 14, "1 kg bag")] },
        Each(Bottle100, MaterialKind.Bottle, 100, By(Alder, "AS-B100A", 10, "carton of 100", 100), By(Pennel, "4410-100", 10, "carton of 50", 50)),
        Each(Bottle50, MaterialKind.Bottle, 30, By(Pennel, "4410-050", 10, "carton of 50", 50)),
        Each(Sprayer, MaterialKind.Sprayer, 41, By(Pennel, "5524-K", 10, "bag of 50", 50)),
        Each(Collar, MaterialKind.Closure, 15, By(Pennel, "5528-C", 10, "bag of 20", 20)),
        Each(Reed, MaterialKind.Reed, 40, By(Pennel, "7025", 10, "bundle of 100", 100)),
        Each(LabelFig, MaterialKind.Label, 50, By(Pennel, "printed", 15, "sheet of 10")),
        Each(LabelQuince, MaterialKind.Label, 50, By(Pennel, "printed", 15, "sheet of 10")),
        Each(LabelHouse, MaterialKind.Label, 50, By(Pennel, "printed", 15, "sheet of 10")),
        Each(Carton, MaterialKind.Carton, 60, By(Pennel, "8100", 10, "flat, bundle of 50", 50)),
        Each(Tin, MaterialKind.Bottle, 24, By(Tallowby, "TB-T200", 12, "carton of 12", 12)),
        Each(Wick, MaterialKind.Wick, 30, By(Tallowby, "TB-W10", 8, "bag of 100", 100)),
        Each(Muslin, MaterialKind.OtherPackaging, 40, By(Lindenhay, "bag 10", 14, "bundle of 50", 50)),
        Each(Clamshell, MaterialKind.OtherPackaging, 24, By(Tallowby, "TB-M6", 8, "sleeve of 30", 30)),
    ];

    private static AddMaterial Liquid(string name, MaterialKind kind, decimal density, decimal? flash, string notes) => new()
    {
        Name = name, Kind = kind, Density = density, DensityAtCelsius = 20, FlashPointCelsius = flash, Notes = notes,
        RequiredPapers = [.. MaterialKinds.DefaultPapers(kind)],
    };

    private static AddMaterial Dry(string name, MaterialKind kind) =>
        new() { Name = name, Kind = kind, RequiredPapers = [.. MaterialKinds.DefaultPapers(kind)] };

    private static AddMaterial Each(string name, MaterialKind kind, decimal reorder, params SupplierLine[] by) =>
        new() { Name = name, Kind = kind, StockedIn = StockUnit.Each, ReorderPoint = reorder, Suppliers = [.. by] };

    private static SupplierLine By(string name, string code, int leadDays, string note, decimal? pack = null) =>
        new() { Name = name, Code = code, LeadTimeDays = leadDays, PackNote = note, Minimum = pack, Pack = pack };
}
