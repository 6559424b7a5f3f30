using MakerStudio.Core.FlashPoints;
using MakerStudio.Core.Quantities;
using MakerStudio.Core.Workings;

namespace MakerStudio.Core.Stock;

/// <summary>
/// Published limits a studio may start from. None of them is known to hold for it: fire codes differ by place, and a
/// lease or an insurer may ask for less.
/// </summary>
public static class FlammableLimitSuggestions
{
    /// <summary>Litres as 29 CFR 1910.106 prints them beside US gallons.</summary>
    private const decimal MillilitresPerLitre = 1000m;

    private static readonly FlammableCategory[] UpTo3 = [FlammableCategory.Category1, FlammableCategory.Category2, FlammableCategory.Category3];

    public static IReadOnlyList<FlammableLimit> All { get; } =
    [
        Litres("US, outside a storage room or cabinet, Category 1", [FlammableCategory.Category1], 95, "29 CFR 1910.106(e)(2)(ii)(b)", DataStatus.Read),
        Litres("US, outside a storage room or cabinet, Category 2, 3 and 4", [FlammableCategory.Category2, FlammableCategory.Category3, FlammableCategory.Category4], 454, "29 CFR 1910.106(e)(2)(ii)(b)", DataStatus.Read),
        Litres("US, one storage cabinet, Category 1 to 3", UpTo3, 227, "29 CFR 1910.106(d)(3)(i)", DataStatus.Read),
        Litres("UK, workroom cabinet, extremely and highly flammable", [FlammableCategory.Category1, FlammableCategory.Category2], 50, "DSEAR 2002, HSE ACOP L138", DataStatus.Memory),
        Litres("UK, workroom cabinet, other flammable liquids up to 55 °C", [FlammableCategory.Category3], 250, "DSEAR 2002, HSE ACOP L138", DataStatus.Memory),
        Litres("US dwelling, for own use", UpTo3, 37.85411784m, "IFC 5704.3.4, about 10 US gallons; low confidence", DataStatus.Memory),
    ];

    private static FlammableLimit Litres(string name, IReadOnlyList<FlammableCategory> counts, decimal litres, string citation, DataStatus status) =>
        FlammableLimit.ByVolume(name, counts, Volume.FromMillilitres(litres * MillilitresPerLitre), new(citation, status));
}
