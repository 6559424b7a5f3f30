using MakerStudio.Core.Workings;

namespace MakerStudio.Core.Hazards;

/// <summary>One category of acute toxicity on one route.</summary>
/// <param name="UpTo">Upper end of its range, included; the unit is that of the route.</param>
/// <param name="PointEstimate">Stands for an ingredient of which only the category is known.</param>
public sealed record AcuteRange(AcuteRoute Route, int Category, decimal UpTo, decimal PointEstimate);

/// <summary>Ranges and converted point estimates of acute toxicity. The ranges were read, the point estimates are from memory.</summary>
public static class AcuteRanges
{
    public static Citation Ranges { get; } = new("CLP Annex I, Table 3.1.1", DataStatus.Read);

    public static Citation PointEstimates { get; } = new("CLP Annex I, Table 3.1.2", DataStatus.Memory);

    /// <summary>Category 5 of UN GHS, oral and dermal, in mg/kg; not in CLP nor in the US.</summary>
    public const decimal UnCategory5UpTo = 5000m;

    public static IReadOnlyList<AcuteRange> All { get; } =
    [
        new(AcuteRoute.Oral, 1, 5m, 0.5m),
        new(AcuteRoute.Oral, 2, 50m, 5m),
        new(AcuteRoute.Oral, 3, 300m, 100m),
        new(AcuteRoute.Oral, 4, 2000m, 500m),
        new(AcuteRoute.Dermal, 1, 50m, 5m),
        new(AcuteRoute.Dermal, 2, 200m, 50m),
        new(AcuteRoute.Dermal, 3, 1000m, 300m),
        new(AcuteRoute.Dermal, 4, 2000m, 1100m),
        new(AcuteRoute.InhalationGas, 1, 100m, 10m),
        new(AcuteRoute.InhalationGas, 2, 500m, 100m),
        new(AcuteRoute.InhalationGas, 3, 2500m, 700m),
        new(AcuteRoute.InhalationGas, 4, 20_000m, 4500m),
        new(AcuteRoute.InhalationVapour, 1, 0.5m, 0.05m),
        new(AcuteRoute.InhalationVapour, 2, 2.0m, 0.5m),
        new(AcuteRoute.InhalationVapour, 3, 10.0m, 3m),
        new(AcuteRoute.InhalationVapour, 4, 20.0m, 11m),
        new(AcuteRoute.InhalationDustOrMist, 1, 0.05m, 0.005m),
        new(AcuteRoute.InhalationDustOrMist, 2, 0.5m, 0.05m),
        new(AcuteRoute.InhalationDustOrMist, 3, 1.0m, 0.5m),
        new(AcuteRoute.InhalationDustOrMist, 4, 5.0m, 1.5m),
    ];

    /// <summary>The range an estimate falls in; null above category 4.</summary>
    public static AcuteRange? Of(AcuteRoute route, decimal estimate)
    {
        foreach (AcuteRange range in All)
        {
            if (range.Route == route && estimate <= range.UpTo)
            {
                return range;
            }
        }

        return null;
    }

    public static AcuteRange Of(AcuteRoute route, int category) => All.First(range => range.Route == route && range.Category == category);

    public static HazardClass ClassOf(AcuteRoute route) => route switch
    {
        AcuteRoute.Oral => HazardClass.AcuteOral,
        AcuteRoute.Dermal => HazardClass.AcuteDermal,
        _ => HazardClass.AcuteInhalation,
    };

    public static string UnitOf(AcuteRoute route) => route switch
    {
        AcuteRoute.Oral or AcuteRoute.Dermal => "mg/kg",
        AcuteRoute.InhalationGas => "ppmV",
        _ => "mg/l",
    };

    public static string InWords(AcuteRoute route) => route switch
    {
        AcuteRoute.Oral => "swallowed",
        AcuteRoute.Dermal => "on the skin",
        AcuteRoute.InhalationGas => "inhaled as gas",
        AcuteRoute.InhalationVapour => "inhaled as vapour",
        _ => "inhaled as dust or mist",
    };

    /// <summary>Category 1 to 4 on the route, as a category of the list.</summary>
    public static HazardCategory Category(HazardClass hazardClass, int category) => hazardClass switch
    {
        HazardClass.AcuteOral => HazardCategory.AcuteTox1Oral + (category - 1),
        HazardClass.AcuteDermal => HazardCategory.AcuteTox1Dermal + (category - 1),
        _ => HazardCategory.AcuteTox1Inhalation + (category - 1),
    };

    /// <summary>1 to 4.</summary>
    public static int Number(HazardCategory category) => category - Category(HazardCategories.ClassOf(category), 1) + 1;
}
