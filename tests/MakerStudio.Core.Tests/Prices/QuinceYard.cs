using MakerStudio.Core.Prices;

namespace MakerStudio.Core.Tests.Prices;

/// <summary>Own worked examples: the room spray Fig of an invented studio, and where it is sold.</summary>
internal static class QuinceYard
{
    /// <summary>One saleable bottle of the batch below, as it is quoted.</summary>
    public const decimal Cost = 4.51m;

    public static readonly SalesTax Tax20 = new(0.20m, TaxBasis.InTag);

    public static readonly Channel Direct = new("Direct", Tax20, []);

    public static readonly Channel Web = new(
        "Web", Tax20, [new("Payment", 0.029m, 0.30m, FeeBasis.Paid), new("Marketplace", 0.065m, 0m, FeeBasis.Paid)], 0.55m);

    public static readonly Channel Stall = new("Stall", Tax20, [new("Card", 0.0175m, 0m, FeeBasis.Paid)]);

    public static readonly Guid FirstLot = new("0193f2a0-0000-7000-8000-000000000001");
    public static readonly Guid Alcohol = new("0193f2a0-0000-7000-8000-000000000003");
    public static readonly Guid Bottle = new("0193f2a0-0000-7000-8000-000000000004");

    /// <summary>W2: 4,000 g, 48 bottles of 82.0 g, one rejected and one retained. Both lots are one material.</summary>
    public static ProductPlan Fig(decimal? floor = null) => new(
        new Guid("0193f2a0-0000-7000-8000-0000000000f1"),
        "Fig",
        [
            new(FirstLot, "Fragrance, first lot", 0.300m, 67.374m, LoadRole.Scent),
            new(FirstLot, "Fragrance, second lot", 0.180m, 71.90m, LoadRole.Scent),
            new(Alcohol, "Alcohol", 3.320m, 8.644m, LoadRole.Carrier),
            new(Guid.Empty, "DPG", 0.200m, 11.20m, LoadRole.Other),
        ],
        [
            new(Bottle, "Bottle", 1, 0.8648m),
            new(Guid.Empty, "Sprayer", 1, 0.42m),
            new(Guid.Empty, "Label", 1, 0.19m),
            new(Guid.Empty, "Carton", 1, 0.36m),
        ],
        0.082m, 0.984m, 2, 130m, 18.00m, 9.00m, 0.15m,
        [new(Direct, 22.00m), new(Web, 22.00m)],
        floor);
}
