using MakerStudio.Core.Costing;
using MakerStudio.Core.Quantities;
using static MakerStudio.Services.Exchange.SampleNames;

namespace MakerStudio.Services.Exchange;

/// <summary>
/// The invoices of six weeks, all invented. The first one and the packaging carry the prices of the worked batch of
/// 4,000 g, so that RS-1 costs what is worked out by hand for it.
/// </summary>
internal static class SampleDeliveryList
{
    public static IReadOnlyList<SampleDelivery> All { get; } = [.. FirstWeek(), .. Later()];

    private static IEnumerable<SampleDelivery> FirstWeek()
    {
        yield return new(41, 14, false, Alder, "AS-20931", 96.00m, FreightBasis.Weight,
            Kg(FigOil, 5, 310.00m) with { GrossKg = 5.6m, Duty = 20.15m, SupplierLot = "FF-0926-11", RetestIn = 150, Shelf = "2, left", TareMilligrams = 912_000 },
            Kg(Ethanol, 20, 128.00m) with { GrossKg = 22.4m, Surcharge = 18.00m, SupplierLot = "E9-4417", Shelf = "fire cabinet", TareMilligrams = 1_240_000 },
            Pieces(Bottle100, 500, 370.00m) with { GrossKg = 52.0m, SupplierLot = "26-338", Shelf = "6" });
        yield return new(41, 15, false, OldMill, "2026/118", 1.95m, FreightBasis.Value,
            Kg(FigOil, 0.5m, 34.00m) with { SupplierLot = "OM-7", RetestIn = 58, Shelf = "2, left" });
        yield return new(41, 16, true, Wrenfield, "WA 5501", 18.40m, FreightBasis.Value,
            Kg(QuinceOil, 2, 142.00m) with { SupplierLot = "QS-31", Shelf = "2, right" },
            Kg(GreenFigOil, 2, 138.00m) with { SupplierLot = "GF-08", Shelf = "2, right" },
            Kg(LinenOil, 1, 58.00m) with { SupplierLot = "LN-19", Shelf = "2, right" },
            Grams(Bergamot, 250, 21.20m) with { SupplierLot = "BG-2", RetestIn = -1, Shelf = "cold" },
            Grams(CedarLeaf, 215, 13.90m) with { SupplierLot = "CL-5", Shelf = "cold" });
        yield return new(40, 9, true, Brackwater, "B-77120", 0m, FreightBasis.Value,
            Kg(Dpg, 5, 56.00m) with { SupplierLot = "D1182", Shelf = "3" },
            Kg(BenzylBenzoate, 1, 19.80m) with { SupplierLot = "BB-64", Shelf = "3" },
            Kg(Dpm, 5, 41.00m) with { SupplierLot = "M-306", Shelf = "3" });
        yield return new(40, 11, false, Beaker, "10482", 7.50m, FreightBasis.Value,
            Kg(Polysorbate, 2, 24.00m) with { SupplierLot = "T20-3", Shelf = "3" },
            Kg(Preservative, 0.5m, 14.50m) with { SupplierLot = "PX-90", Shelf = "3" },
            new SampleLine(Water, 10, AmountUnit.Litre, 6.00m) with { SupplierLot = "2609", Shelf = "floor" });
        yield return new(39, 10, true, Tallowby, "TB/3316", 14.00m, FreightBasis.Value,
            Kg(SoyWax, 10, 58.00m) with { SupplierLot = "S1-881", Shelf = "5" }, Grams(Dye, 100, 6.40m) with { SupplierLot = "C7-2", Shelf = "5" },
            Pieces(Wick, 200, 16.00m), Pieces(Tin, 60, 63.00m), Pieces(Clamshell, 60, 15.00m));
        yield return new(39, 11, false, Pennel, "PP-90017", 0m, FreightBasis.Value,
            Pieces(Sprayer, 200, 84.00m) with { SupplierLot = "24K-1", Shelf = "6" }, Pieces(LabelFig, 150, 28.50m) with { Shelf = "7" },
            Pieces(Carton, 150, 54.00m) with { Shelf = "7" }, Pieces(LabelHouse, 400, 48.00m) with { Shelf = "7" },
            Pieces(Collar, 60, 27.00m) with { Shelf = "6" }, Pieces(Reed, 300, 21.00m) with { Shelf = "6" },
            Pieces(Bottle50, 100, 61.00m) with { Shelf = "6" });
        yield return new(38, 15, true, Lindenhay, "no. 61", 9.00m, FreightBasis.Value,
            Kg(Lavender, 2, 36.00m) with { ExpiresIn = 6, Shelf = "8" }, Kg(Orris, 0.5m, 27.00m) with { RetestIn = 20, Shelf = "8" }, Pieces(Muslin, 100, 22.00m) with { Shelf = "8" });
    }

    private static IEnumerable<SampleDelivery> Later()
    {
        yield return new(20, 10, true, Tallowby, "TB/3391", 14.50m, FreightBasis.Value,
            Kg(SoyWax, 10, 60.50m) with { SupplierLot = "S1-902", Shelf = "5" }, Pieces(Tin, 36, 38.88m), Pieces(Wick, 100, 8.50m));
        yield return new(17, 9, false, Brackwater, "B-78004", 6.00m, FreightBasis.Value,
            new SampleLine(Ethanol, 25, AmountUnit.Litre, 132.00m) with { SupplierLot = "995-51", Shelf = "fire cabinet" },
            Kg(Dpg, 5, 57.00m) with { SupplierLot = "D1240", Shelf = "3" });
        yield return new(12, 10, true, Wrenfield, "WA 5618", 9.00m, FreightBasis.Value,
            Kg(QuinceOil, 1, 72.50m) with { SupplierLot = "QS-33", Shelf = "2, right" }, Kg(LinenOil, 0.5m, 29.50m) with { SupplierLot = "LN-21", Shelf = "2, right" });
        yield return new(8, 11, false, Pennel, "PP-90544", 12.00m, FreightBasis.Value,
            Pieces(Bottle100, 200, 152.00m) with { Shelf = "6" }, Pieces(Sprayer, 60, 26.40m) with { SupplierLot = "24K-2", Shelf = "6" },
            Pieces(Carton, 200, 74.00m) with { Shelf = "7" }, Pieces(LabelQuince, 150, 28.50m) with { Shelf = "7" });
        yield return new(3, 10, false, Alder, "AS-21377", 11.00m, FreightBasis.Value,
            Kg(FigOil, 5, 318.00m) with { SupplierLot = "FF-1126-02", RetestIn = 180, Shelf = "quarantine shelf", CoaMissing = true });
        yield return new(3, 12, true, Beaker, "10733", 4.00m, FreightBasis.Value,
            Kg(Preservative, 0.5m, 15.00m) with { SupplierLot = "PX-97", Shelf = "quarantine shelf", CoaMissing = true },
            new SampleLine(Water, 10, AmountUnit.Litre, 6.20m) with { SupplierLot = "2611", Shelf = "floor" });
        yield return new(1, 9, true, Lindenhay, "no. 74", 6.00m, FreightBasis.Value,
            Kg(Lavender, 1, 18.60m) with { Shelf = "8" }, Pieces(Muslin, 100, 22.50m) with { Shelf = "8" });
    }

    private static SampleLine Kg(string material, decimal quantity, decimal price) => new(material, quantity, AmountUnit.Kilogram, price);

    private static SampleLine Grams(string material, decimal quantity, decimal price) => new(material, quantity, AmountUnit.Gram, price);

    private static SampleLine Pieces(string material, decimal quantity, decimal price) => new(material, quantity, AmountUnit.Each, price);
}
