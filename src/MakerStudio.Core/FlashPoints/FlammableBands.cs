using MakerStudio.Core.Workings;

namespace MakerStudio.Core.FlashPoints;

/// <summary>Categories of flammable liquids, worst first.</summary>
public enum FlammableCategory
{
    Category1,
    Category2,
    Category3,

    /// <summary>Of the UN GHS and US OSHA; the EU has not taken it up.</summary>
    Category4,

    NotClassified,
}

public enum FlammableScheme
{
    EuClp,
    UsOsha,
    Transport,
}

/// <param name="Name">As the text calls it.</param>
/// <param name="HStatement">With the signal word; null where the scheme has none.</param>
public sealed record FlammableBand(string Name, FlammableCategory Category, string? HStatement, Source Source);

/// <summary>
/// The band a flash point and an initial boiling point fall into. Limits in °C. The bands of the US consumer Act are in
/// <see cref="Hazards.Us.FhsaLabel"/>.
/// </summary>
public static class FlammableBands
{
    /// <summary>Below it Category 1 or 2 (CLP Annex I, Table 2.6.1).</summary>
    public const double LowLimit = 23;

    /// <summary>Up to and with it Category 3 (CLP Annex I, Table 2.6.1).</summary>
    public const double HighLimit = 60;

    /// <summary>Up to and with it Category 4 (UN GHS 2.6; from memory).</summary>
    public const double Category4Limit = 93;

    /// <summary>Boiling at it or below makes Category 1 of a flash point below 23 °C.</summary>
    public const double BoilingLimit = 35;

    private static readonly Source Clp = new("Regulation (EC) 1272/2008, Annex I, Table 2.6.1", DataStatus.Read);
    private static readonly Source Osha = new("GHS 2.6; 29 CFR 1910.1200 App. B.6", DataStatus.Memory);
    private static readonly Source Carriage = new("ADR and IMDG 2.2.3.1.3, packing groups of class 3", DataStatus.Secondary);

    /// <param name="flash">Closed cup, °C.</param>
    /// <param name="boiling">Initial boiling point, °C.</param>
    public static FlammableBand Of(FlammableScheme scheme, double flash, double boiling) => scheme switch
    {
        FlammableScheme.Transport => OfTransport(flash, boiling),
        FlammableScheme.UsOsha when flash is > HighLimit and <= Category4Limit =>
            new("Flam. Liq. 4", FlammableCategory.Category4, "H227 Warning", Osha),
        FlammableScheme.UsOsha => OfGhs(flash, boiling, Osha),
        _ => OfGhs(flash, boiling, Clp),
    };

    private static FlammableBand OfGhs(double flash, double boiling, Source source) => (flash, boiling) switch
    {
        ( < LowLimit, <= BoilingLimit) => new("Flam. Liq. 1", FlammableCategory.Category1, "H224 Danger", source),
        ( < LowLimit, _) => new("Flam. Liq. 2", FlammableCategory.Category2, "H225 Danger", source),
        ( <= HighLimit, _) => new("Flam. Liq. 3", FlammableCategory.Category3, "H226 Warning", source),
        _ => new("Not a flammable liquid", FlammableCategory.NotClassified, null, source),
    };

    private static FlammableBand OfTransport(double flash, double boiling) => (flash, boiling) switch
    {
        (_, <= BoilingLimit) => new("Packing group I", FlammableCategory.Category1, null, Carriage),
        ( < LowLimit, _) => new("Packing group II", FlammableCategory.Category2, null, Carriage),
        ( <= HighLimit, _) => new("Packing group III", FlammableCategory.Category3, null, Carriage),
        _ => new("Not class 3", FlammableCategory.NotClassified, null, Carriage),
    };
}
